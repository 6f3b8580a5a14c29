using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>Another channel of the same currency on which the piece could be sold.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Prices">The piece's prices there.</param>
/// <param name="Listed">What is listed there; null if nothing is.</param>
public sealed record OtherChannel(string Key, ChannelPrices Prices, decimal? Listed);
