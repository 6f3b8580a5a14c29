namespace PriceFloor.Evidence.Statistics;

/// <summary>How a piece's time on the shelf ended.</summary>
public enum ShelfEnd { Sold, Gone, OnShelf }
