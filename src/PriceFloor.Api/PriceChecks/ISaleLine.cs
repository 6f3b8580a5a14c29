namespace PriceFloor.Api.PriceChecks;

/// <summary>A line of a request that sells a design on a channel, at the listed price if it gives none.</summary>
public interface ISaleLine
{
    string Sku { get; }
    string Channel { get; }
    decimal? Price { get; }
}
