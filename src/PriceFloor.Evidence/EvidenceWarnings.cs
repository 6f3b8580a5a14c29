using System.Globalization;
using PriceFloor.Evidence.Findings;

namespace PriceFloor.Evidence;

/// <summary>What may make findings wrong without making them impossible.</summary>
public static class EvidenceWarnings
{
    private const int OldDays = 90, FewPieces = 10;
    private const decimal ThinShare = 0.8m, QuickerBy = 0.95m, BigShare = 0.25m;

    /// <summary>Of a design; pointers are into its answer.</summary>
    public static IEnumerable<Warning> In(DesignEvidence design, EvidenceChoices choices)
    {
        foreach (var (index, finding) in design.Findings.Index().Where(finding => finding.Item.Says == Says.TooFew))
            yield return new(EvidenceWarningCodes.TooFew, "Too little was seen for this; nothing is drafted from it.", Text($"/findings/{index}"));
        if (design.Bench.FailsInLots)
            yield return new(EvidenceWarningCodes.FailsInLots, "Pieces fail together: the average hides whole loads that went wrong.",
                At(design, "goodShare"));
        if (design.SoldShare is { IsYoung: true })
            yield return new(EvidenceWarningCodes.YoungStock, "Too few pieces are two years old; at least this share sells.",
                At(design, "soldShare"));
        foreach (var warning in OfStock(design).Concat(OfBench(design, choices)))
            yield return warning;
        if (design.Log.LeftOut is > 0 and var leftOut)
            yield return new(EvidenceWarningCodes.OtherMoney,
                Text($"{leftOut} sold lines are not in the take: their money is not {design.Known.Stored.Year.Currency.Code}, ")
                + "or their channel is gone.",
                "/take");
        var sold = design.Sales.Sum(line => line.Line.Pieces);
        if (sold >= FewPieces && design.Sales.GroupBy(line => line.Order).Max(order => order.Sum(line => line.Line.Pieces)) > BigShare * sold)
            yield return new(EvidenceWarningCodes.OneBigOrder, "One order has more than a quarter of the pieces sold.", "/take/pieces");
    }

    /// <summary>Of a channel; pointers are into its answer.</summary>
    public static IEnumerable<Warning> In(ChannelEvidence channel)
    {
        if (channel.LeftOut > 0)
            yield return new(EvidenceWarningCodes.OtherMoney,
                Text($"{channel.LeftOut} sold lines are left out: their money is not {channel.Stored.Currency}."), "/findings");
        foreach (var (index, finding) in channel.Findings.Index())
            if (finding.Says == Says.TooFew)
                yield return new(EvidenceWarningCodes.TooFew, "Too little was seen for this; nothing is drafted from it.",
                    Text($"/findings/{index}"));
            else if (finding.Fees is { Differs: true })
                yield return new(EvidenceWarningCodes.FeesDiffer, "What was charged is more than 1 % away from what the channel's fees come to.",
                    Text($"/findings/{index}"));
            else if (finding is { Pointer: "/usualDiscount", Says: Says.StoredTooLow, Stored: 0 })
                yield return new(EvidenceWarningCodes.DiscountNotInChannel, "Buyers paid less than was listed, and the channel has no usual "
                    + "discount.",
                    Text($"/findings/{index}"));
    }

    /// <summary>Of the whole log.</summary>
    public static IEnumerable<Warning> In(StudioEvidence studio)
    {
        foreach (var warning in OfAge(studio.Newest, studio.Choices.To).Concat(OfMadeTwice(studio, "/accounted")))
            yield return warning;
        if (studio.Profile is { IsYoung: true })
            yield return new(EvidenceWarningCodes.YoungStock, "Too few pieces are two years old; at least this share sells.", "/profile/findings/0");
    }

    /// <summary>Of a log whose newest line is old.</summary>
    /// <param name="newest">Its day; null: there is none.</param>
    /// <param name="to">The last day asked for.</param>
    public static IEnumerable<Warning> OfAge(DateOnly? newest, DateOnly to) => newest is { } day && to.DayNumber - day.DayNumber > OldDays
        ? [new(EvidenceWarningCodes.OldLog, Text($"The newest line is of {day:yyyy-MM-dd}."), "")] : [];

    /// <summary>Of pieces that both lists would make.</summary>
    public static IEnumerable<Warning> OfMadeTwice(StudioEvidence studio, string pointer) => studio.MadeTwice.Count == 0 ? []
        : [new(EvidenceWarningCodes.MadeTwice,
            Text($"{studio.MadeTwice.Count} bench entries are of days on which movements say what was made."), pointer)];

    /// <summary>Of a profile; pointers are into its answer.</summary>
    public static IEnumerable<Warning> In(ProfileEvidence profile)
    {
        foreach (var (index, finding) in profile.Findings.Index())
            if (finding.Says == Says.TooFew)
                yield return new(EvidenceWarningCodes.TooFew, "Too little was seen for this; nothing is drafted from it.",
                    Text($"/findings/{index}"));
        if (profile.IsYoung)
            yield return new(EvidenceWarningCodes.YoungStock, "Too few pieces are two years old; at least this share sells.", "/findings/0");
    }

    private static IEnumerable<Warning> OfStock(DesignEvidence design)
    {
        if (design.Shelf.Unmatched > 0)
            yield return new(EvidenceWarningCodes.StockUnknown,
                Text($"{design.Shelf.Unmatched} pieces were sold that no line says were made."), "/days");
        if (design.Shelf.Differs)
            yield return new(EvidenceWarningCodes.StockDiffers, "A count found another number of pieces than the lines say.", "/days/onHand");
        var started = design.Log.Bench.Where(entry => entry.Step is null || entry.Step == design.Known.Stored.Design.Making.Steps?[0].Name)
            .Sum(entry => (long)(entry.Started ?? 0));
        if (design.Log.HasMade && started > 0 && started < ThinShare * design.Shelf.Made)
            yield return new(EvidenceWarningCodes.LogThin,
                Text($"The bench log has {started} starts; {design.Shelf.Made} pieces were made."), "/findings");
    }

    private static IEnumerable<Warning> OfBench(DesignEvidence design, EvidenceChoices choices)
    {
        if (design.Learning is { } learning && learning.MeanOfNext(choices.Run) < QuickerBy * learning.Today.Value)
            yield return new(EvidenceWarningCodes.StillLearning, "The next run will be more than 5 % quicker than a piece takes today.", "/learning");
        var bench = design.Log.Bench;
        for (var i = 1; i < bench.Count; i++)
            if (bench[i].On.DayNumber - bench[i - 1].On.DayNumber >= OldDays)
            {
                yield return new(EvidenceWarningCodes.LongPause,
                    Text($"Nothing was made between {bench[i - 1].On:yyyy-MM-dd} and {bench[i].On:yyyy-MM-dd}."),
                    "/findings");
                break;
            }

        if (bench.Count > 0 && bench[0].On < design.Known.MadeSoSince)
            yield return new(EvidenceWarningCodes.MixedMaking,
                Text($"The way of making changed on {design.Known.MadeSoSince:yyyy-MM-dd}."), "/findings");
    }

    private static string At(DesignEvidence design, string field)
    {
        var index = design.Findings.Index().First(finding => finding.Item.Pointer.EndsWith(field, StringComparison.Ordinal)).Index;
        return Text($"/findings/{index}");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
