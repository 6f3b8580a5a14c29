using System.ComponentModel.DataAnnotations;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Documents;

/// <summary>A studio of a host.</summary>
[ReadOnlyFields("key", "revision", "savedAt")]
public sealed record HostedStudio
{
    /// <summary>Whose it is, for the host.</summary>
    /// <example>Harbour studio</example>
    [MaxLength(Pricing.Documents.Limits.NameLength)]
    public required string Name { get; init; }

    /// <summary>How much it may store; without limits as much as there is room for.</summary>
    public StudioLimitsRequest? Limits { get; init; }
}
