using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>How much a studio may store. What is absent has no limit; what is there already stays.</summary>
public sealed record StudioLimitsRequest
{
    /// <summary>Documents that are not deleted: profiles, designs, channels, listed prices and all others.</summary>
    /// <example>5000</example>
    [Pieces]
    public decimal? Documents { get; init; }

    /// <summary>Megabytes (1,048,576 bytes) of its store on the disk, histories included.</summary>
    /// <example>200</example>
    [Pieces]
    public decimal? Megabytes { get; init; }

    /// <summary>Access keys.</summary>
    /// <example>20</example>
    [Pieces]
    public decimal? Keys { get; init; }

    public StoreLimits OfStore() => new((long?)Documents, (long?)Megabytes * 1024 * 1024, (long?)Keys);
}
