using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;

namespace PriceFloor.Api.RunPrices;

/// <summary>What runs of one design, made to order, must sell for on one channel. Money in the profile's currency.</summary>
public sealed record RunPricesAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>One run for each quantity, in the order asked for.</summary>
    public required IReadOnlyList<RunPriceAnswer> Runs { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that lower it.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity of the year and of each run, in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
