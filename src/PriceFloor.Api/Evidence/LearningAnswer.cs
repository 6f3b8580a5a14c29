using System.Text.Json.Serialization;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Findings;

namespace PriceFloor.Api.Evidence;

/// <summary>How the work got quicker with each piece.</summary>
public sealed record LearningAnswer
{
    /// <summary>What each doubling leaves of the time that can be learned: 0.93 is 7 % less.</summary>
    public required decimal Rate { get; init; }

    /// <summary>The lower end of its range.</summary>
    public required decimal RateLow { get; init; }

    /// <summary>The upper end.</summary>
    public required decimal RateHigh { get; init; }

    /// <summary>Minutes of the first piece.</summary>
    public required decimal First { get; init; }

    /// <summary>Minutes of a piece today.</summary>
    public required decimal Today { get; init; }

    /// <summary>Mean minutes of the next run.</summary>
    public required decimal NextRun { get; init; }

    /// <summary>What all pieces so far took beyond what they would take today, in money.</summary>
    public required decimal Cost { get; init; }

    /// <summary>With at: a piece so many pieces from now.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LearningAtAnswer? At { get; init; }

    public static LearningAnswer? Of(DesignEvidence design, EvidenceChoices choices)
    {
        if (design.Learning is not { } fit)
            return null;
        var year = design.Known.Stored.Year;
        return new LearningAnswer
        {
            Rate = fit.Rate.Value,
            RateLow = fit.Rate.Low!.Value,
            RateHigh = fit.Rate.High!.Value,
            First = fit.First,
            Today = fit.Today.Value,
            NextRun = fit.MeanOfNext(choices.Run),
            Cost = year.Currency.Round(fit.ExtraMinutes * year.PerBenchHour / 60),
            At = choices.At is { } pieces ? LearningAtAnswer.Of(design, pieces, fit.MinutesOf(fit.Pieces + pieces)) : null,
        };
    }
}

/// <summary>A piece so many pieces from now.</summary>
/// <param name="Pieces">How many from now.</param>
/// <param name="Minutes">Its minutes by the curve.</param>
/// <param name="Floor">The floor with them, rounded up; null where the curve is of one step.</param>
public sealed record LearningAtAnswer(int Pieces, decimal Minutes, decimal? Floor)
{
    public static LearningAtAnswer Of(DesignEvidence design, int pieces, decimal minutes) =>
        new(pieces, minutes, design.Taking(minutes) is { } piece ? piece.Year.Currency.RoundUp(piece.Floor) : null);
}
