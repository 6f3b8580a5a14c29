namespace PriceFloor.Storage;

/// <summary>How many lines of the log name a design.</summary>
/// <param name="Design">Its number.</param>
/// <param name="Lines">How many.</param>
public sealed record LinesOfDesign(long Design, long Lines);
