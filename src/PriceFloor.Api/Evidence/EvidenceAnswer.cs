using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.LogLines;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Api.Evidence;

/// <summary>What was sold and made, against what is stored.</summary>
public sealed record EvidenceAnswer
{
    /// <summary>Designs with a line, by sku.</summary>
    public required IReadOnlyList<DesignEvidenceAnswer> Designs { get; init; }

    /// <summary>Channels with an order, by key.</summary>
    public required IReadOnlyList<ChannelEvidenceAnswer> Channels { get; init; }

    /// <summary>The profile; null if designs of several were sold and made, and none was named.</summary>
    public required ProfileEvidenceAnswer? Profile { get; init; }

    /// <summary>The fewest designs that together bring 70 % of the contribution, largest first.</summary>
    public required IReadOnlyList<string> Carriers { get; init; }

    /// <summary>Names that lead to no design or channel, largest first: add an alias, or correct them.</summary>
    public required IReadOnlyList<UnplacedNameAnswer> Unplaced { get; init; }

    /// <summary>Lines that cannot be used.</summary>
    public required IReadOnlyList<RefusedLineAnswer> Refused { get; init; }

    /// <summary>Every line in exactly one place.</summary>
    public required EvidenceAccountedAnswer Accounted { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required IReadOnlyDictionary<string, string> Basis { get; init; }

    /// <summary>What may make the findings wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }
}

/// <summary>What a channel's orders say of it.</summary>
/// <param name="Channel" example="web">The channel's key.</param>
/// <param name="Findings">The findings.</param>
/// <param name="Draft">The channel with all that was found, ready to be stored.</param>
/// <param name="Warnings">What may make the findings wrong.</param>
public sealed record ChannelEvidenceAnswer(string Channel, IReadOnlyList<FindingAnswer> Findings,
    [property: JsonConverter(typeof(DraftText<Channel>))] Channel Draft, IReadOnlyList<WarningAnswer> Warnings)
{
    public static ChannelEvidenceAnswer Of(ChannelEvidence channel)
    {
        var money = Currency.Of(channel.Stored.Currency);
        return new(channel.Channel, [.. channel.Findings.Select(finding => FindingAnswer.From(finding, money))], channel.Draft,
            WarningAnswer.Of(EvidenceWarnings.In(channel)));
    }
}

/// <summary>What all designs and days say of the profile.</summary>
/// <param name="Profile" example="main">The profile's key.</param>
/// <param name="Findings">The findings.</param>
/// <param name="Draft">The profile with all that was found, ready to be stored.</param>
public sealed record ProfileEvidenceAnswer(string Profile, IReadOnlyList<FindingAnswer> Findings,
    [property: JsonConverter(typeof(DraftText<CostProfile>))] CostProfile Draft)
{
    public static ProfileEvidenceAnswer Of(string key, ProfileEvidence profile)
    {
        var money = Currency.Of(profile.Draft.Currency);
        return new(key, [.. profile.Findings.Select(finding => FindingAnswer.From(finding, money))], profile.Draft);
    }
}

/// <summary>A line that cannot be used.</summary>
/// <param name="Sheet" example="movements">Its sheet.</param>
/// <param name="Line" example="12">Its line there, from 1.</param>
/// <param name="Code" example="bad-date">Why.</param>
public sealed record RefusedLineAnswer(string Sheet, int Line, string Code);

/// <summary>Where lines ended up; lines and money add up to what was read.</summary>
public sealed record EvidenceAccountedAnswer(LineCountAnswer Read, LineCountAnswer Used, LineCountAnswer Cancelled, LineCountAnswer Duplicate,
    LineCountAnswer Outside, LineCountAnswer Unplaced, LineCountAnswer Refused)
{
    public static EvidenceAccountedAnswer Of(SettledLines<Movement> movements, SettledLines<BenchEntry> bench) => new(
        LineCountAnswer.Of(movements.Read + bench.Read), LineCountAnswer.Of(movements.UsedCount + bench.UsedCount),
        LineCountAnswer.Of(movements.CancelledCount + bench.CancelledCount), LineCountAnswer.Of(movements.Duplicate + bench.Duplicate),
        LineCountAnswer.Of(movements.Outside + bench.Outside), LineCountAnswer.Of(movements.UnplacedCount + bench.UnplacedCount),
        LineCountAnswer.Of(movements.RefusedCount + bench.RefusedCount));
}
