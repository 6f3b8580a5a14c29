using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// Bench hours that are enough, spread over the design's own figures: one factor on all time that may be hurried. A factor of 0.5 makes a step
/// of 48 minutes one of 24, and 4 pieces a day 8.
/// </summary>
internal static class FasterWork
{
    /// <param name="making">How the piece is made.</param>
    /// <param name="factor">What the time that may be hurried is multiplied by, above 0 and at most 1.</param>
    public static IReadOnlyList<DesignFigure> Of(Making making, decimal factor)
    {
        var figures = new List<DesignFigure>();
        foreach (var (i, step) in (making.Steps ?? []).Index().Where(step => step.Item.MayBeHurried))
            figures.AddRange(OfStep(step, string.Create(CultureInfo.InvariantCulture, $"/making/steps/{i}"),
                step.Name ?? string.Create(CultureInfo.InvariantCulture, $"step {i + 1}"), factor));
        if (making.MinutesPerPiece is { } minutes)
            figures.Add(Less("/making/minutesPerPiece", "minutes a piece", minutes, factor));
        if (making.PiecesPerDay is { } aDay)
            figures.Add(More("/making/piecesPerDay", "pieces a day", aDay, factor));
        if (making.PiecesPerBenchDay is { } aBenchDay)
            figures.Add(More("/making/piecesPerBenchDay", "pieces a day at the bench", aBenchDay, factor));
        if (making.SetupMinutes > 0)
            figures.Add(Less("/making/setupMinutes", "minutes of setting up", making.SetupMinutes, factor));
        return figures;
    }

    /// <summary>Such as "blow in 24 minutes instead of 48".</summary>
    public static string InWords(DesignFigure figure) => figure.At switch
    {
        "/making/minutesPerPiece" or "/making/setupMinutes" or "/making/piecesPerDay" or "/making/piecesPerBenchDay" =>
            $"{RemedyWords.Plain(figure.After)} {figure.What} instead of {RemedyWords.Plain(figure.Before)}",
        _ => $"{figure.What} in {RemedyWords.Plain(figure.After)} minutes instead of {RemedyWords.Plain(figure.Before)}",
    };

    private static IEnumerable<DesignFigure> OfStep(Step step, string at, string name, decimal factor)
    {
        if (step.HandsOnMinutes > 0)
            yield return Less($"{at}/handsOnMinutes", name, step.HandsOnMinutes, factor);
        if (step.Rework is { Share: > 0, Minutes: > 0 } rework)
            yield return Less($"{at}/rework/minutes", $"working over after {name}", rework.Minutes, factor);
    }

    private static DesignFigure Less(string at, string what, decimal before, decimal factor) =>
        new(at, what, before, Rounding.Down(before * factor, RemedyCase.MinuteDecimals));

    private static DesignFigure More(string at, string what, decimal before, decimal factor) =>
        new(at, what, before, Rounding.Up(before / factor, RemedyCase.MinuteDecimals));
}
