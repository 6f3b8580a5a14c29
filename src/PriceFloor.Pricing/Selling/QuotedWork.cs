using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Selling;

/// <summary>The work that a quote offers: its lines as runs, its extra hours, and what is bought for it.</summary>
public static class QuotedWork
{
    /// <summary>
    /// The work of a quote whose shape is valid. Refused: more than <see cref="Run.MostStarts"/> pieces to start in all lines together
    /// (<c>too-large</c>), and what <see cref="Run.Of"/> and <see cref="MadeToOrder.Of"/> refuse.
    /// </summary>
    /// <param name="terms">What is offered.</param>
    /// <param name="pieces">What one piece of each line takes.</param>
    /// <param name="year">The year that pays for the hours.</param>
    /// <param name="channel">The channel, in the year's currency.</param>
    public static Outcome<MadeToOrder> Of(QuoteTerms terms, IReadOnlyList<UnitCost> pieces, StudioYear year, Channel channel)
    {
        var starts = terms.Lines.Zip(pieces, (line, piece) =>
            line.Quantity + line.TrialPieces + decimal.Min(Run.MostStarts, piece.Time.Starts) * line.Quantity);
        if (starts.Sum() > Run.MostStarts)
            return new Fault("/lines", FaultCodes.TooLarge,
                $"The lines would start more than {Run.MostStarts} pieces together; quote for fewer, or check the good shares for a slipped decimal "
                + "point.");
        var curves = terms.Lines.Select(line => line.Learning).OfType<Learning>().Distinct().ToDictionary(one => one, one => new LearningCurve(one));
        var runs = terms.Lines.Zip(pieces, (line, piece) => Run.Of(piece, TermsOf(line, curves))).ToList();
        var faults = runs.SelectMany((run, i) => run.Faults.Select(fault =>
            fault with { Pointer = FormattableString.Invariant($"/lines/{i}{fault.Pointer}") })).ToList();
        return faults.Count > 0 ? faults : MadeToOrder.Of(year, channel, [.. runs.Select(run => run.Value)], ExtraOf(terms));
    }

    private static RunTerms TermsOf(QuoteLine line, Dictionary<Learning, LearningCurve> curves) => new((int)line.Quantity)
    {
        Learning = line.Learning,
        Curve = line.Learning is { } learning ? curves[learning] : null,
        TrialPieces = (int)line.TrialPieces,
        Sure = line.Sure,
        Runs = (int)line.Runs,
    };

    private static ExtraWork ExtraOf(QuoteTerms terms) => new()
    {
        Hours = [.. terms.Extra.Select(extra => extra.Hours)],
        RevisionsIncluded = terms.RevisionsIncluded,
        RevisionHours = terms.RevisionHours,
        Bought =
        [
            .. terms.Bought.Select(bought => bought.Amount is { } amount
                ? new BoughtWork(amount)
                : new BoughtWork(bought.Distance!.Value, bought.Rate!.Value)),
            .. terms.Rights is { Amount: > 0 } rights ? new[] { new BoughtWork(rights.Amount) } : [],
        ],
    };
}
