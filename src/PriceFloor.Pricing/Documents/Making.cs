using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>
/// The bench time of a piece: exactly one of <c>piecesPerDay</c>, <c>piecesPerBenchDay</c>, <c>minutesPerPiece</c> and <c>steps</c>.
/// </summary>
public sealed record Making
{
    /// <summary>Pieces started a working day, averaged over all working days, packing and book-keeping days included.</summary>
    /// <example>4</example>
    [Quantity(Above = true)]
    public decimal? PiecesPerDay { get; init; }

    /// <summary>Pieces started in a day spent wholly at the bench.</summary>
    /// <example>6</example>
    [Quantity(Above = true)]
    public decimal? PiecesPerBenchDay { get; init; }

    /// <summary>Bench minutes for each piece started.</summary>
    /// <example>45</example>
    [Quantity]
    public decimal? MinutesPerPiece { get; init; }

    /// <summary>The steps in order; time that nobody attends is not bench time.</summary>
    [MinLength(1), MaxLength(Limits.Steps)]
    public IReadOnlyList<Step>? Steps { get; init; }

    /// <summary>Of the pieces started, the share that comes out good. Not with <c>steps</c>, which have their own. At least 0.0001.</summary>
    /// <example>0.95</example>
    [Share(Minimum = "0.0001")]
    public decimal GoodShare { get; init; } = 1;

    /// <summary>Bench minutes to set up one run.</summary>
    /// <example>15</example>
    [Quantity]
    public decimal SetupMinutes { get; init; }

    /// <summary>Pieces started in one run; needed with <c>setupMinutes</c>.</summary>
    /// <example>12</example>
    [Quantity(Minimum = "1")]
    public decimal? RunSize { get; init; }

    /// <summary>The index of the step of that name, from 0; -1 if there is none.</summary>
    internal int StepNamed(string name)
    {
        var steps = Steps ?? [];
        for (var i = 0; i < steps.Count; i++)
            if (steps[i].Name == name)
                return i;
        return -1;
    }
}
