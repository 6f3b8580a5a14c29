using System.Globalization;

namespace PriceFloor.Evidence.Findings;

/// <summary>A number of a drafted document and how far it may be off: the range of its finding.</summary>
/// <param name="At">JSON pointer of the number.</param>
/// <param name="Low">Its lower end.</param>
/// <param name="Likely">What the draft has.</param>
/// <param name="High">Its upper end.</param>
/// <param name="Together">A name that numbers have which move together; null for one that moves alone.</param>
public sealed record DoubtedNumber(string At, decimal Low, decimal Likely, decimal High, string? Together)
{
    private const string WholeMinutes = "making minutes";

    /// <summary>The numbers that a finding doubts: one, or the minutes of several steps that move together.</summary>
    internal static IEnumerable<DoubtedNumber> Of<T>(Found<T> found, Design? design = null)
    {
        if (found.Change is null || found.Finding is not { Says: not Says.TooFew, Estimate: { Low: { } low, High: { } high, Value: var value } })
            return [];
        if (found.Finding.Pointer != BenchFindings.OfSteps)
            return [new(found.Finding.Pointer, low, value, high, null)];
        return OfSteps(design!, low, value, high);
    }

    /// <summary>Steps that would take no time at all at the lower end are held at none.</summary>
    private static IEnumerable<DoubtedNumber> OfSteps(Design design, decimal low, decimal value, decimal high)
    {
        var (drafted, longest) = (Minutes(value), Minutes(high));
        var shortest = HurriedSteps.Taking(design, low) is null ? [.. drafted.Select(_ => 0m)] : Minutes(low);
        for (var i = 0; i < drafted.Count; i++)
            if (shortest[i] < longest[i])
                yield return new(string.Create(CultureInfo.InvariantCulture, $"/making/steps/{i}/handsOnMinutes"),
                    decimal.Min(shortest[i], drafted[i]), drafted[i], decimal.Max(longest[i], drafted[i]), WholeMinutes);

        List<decimal> Minutes(decimal ofPiece) =>
            [.. (HurriedSteps.Taking(design, ofPiece)?.Invoke(design) ?? design).Making.Steps!.Select(step => step.HandsOnMinutes)];
    }
}
