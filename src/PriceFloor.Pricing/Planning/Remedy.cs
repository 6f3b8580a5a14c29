using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>One way, alone, as a figure before and after; or the reason why it cannot be.</summary>
/// <param name="Kind">Which way.</param>
/// <param name="Before">The figure today; null if the way has no figure.</param>
/// <param name="After">The figure that is enough, rounded to the safe side; null if the way is not possible or has no figure.</param>
/// <param name="InWords">The change in the maker's words, or why it cannot be.</param>
/// <param name="Reason">A stable word if it is not possible.</param>
public sealed record Remedy(RemedyKind Kind, decimal? Before, decimal? After, string InWords, Code? Reason)
{
    private const int ByDecimals = 6;

    public bool Possible => Reason is null;

    /// <summary>What both figures count.</summary>
    public RemedyMeasure Measure => Kind switch
    {
        RemedyKind.RaiseThePrice => RemedyMeasure.Price,
        RemedyKind.WorkFaster or RemedyKind.NewDesignMinutes => RemedyMeasure.BenchMinutesAPiece,
        RemedyKind.CheaperMaterials or RemedyKind.NewDesignMaterials => RemedyMeasure.MoneyAPiece,
        RemedyKind.LoseFewer => RemedyMeasure.GoodShare,
        RemedyKind.MoreHours => RemedyMeasure.HoursAWeek,
        RemedyKind.ChargeMoreShipping => RemedyMeasure.MoneyAnOrder,
        RemedyKind.MorePiecesAnOrder => RemedyMeasure.PiecesAnOrder,
        RemedyKind.LowerShopShare => RemedyMeasure.ShopShare,
        RemedyKind.FullerStall => RemedyMeasure.PiecesAStall,
        RemedyKind.LessDiscount => RemedyMeasure.UsualDiscount,
        RemedyKind.SellElsewhere => RemedyMeasure.Channels,
        _ => RemedyMeasure.MoneyAYear,
    };

    /// <summary>The relative change from before to after: 48 minutes to 24 is -0.5. To 6 decimals; null from 0 and without figures.</summary>
    public decimal? By => Before is { } before and not 0 && After is { } after ? Rounding.Nearest((after - before) / before, ByDecimals) : null;

    /// <summary>With spend-less: what the year's costs must fall by, rounded up; the value to feed back.</summary>
    public decimal? Cut { get; init; }

    /// <summary>With work-faster: the design's own figures before and after.</summary>
    public IReadOnlyList<DesignFigure> InTheDesign { get; init; } = [];

    /// <summary>With sell-elsewhere: where, and at what price.</summary>
    public IReadOnlyList<SoldElsewhere> Channels { get; init; } = [];

    /// <summary>"long-week" if the figure is shown only and is no advice.</summary>
    public Code? Flag { get; init; }
}

/// <summary>A figure of a design before a change and after it.</summary>
/// <param name="At">Its place in the document, as a JSON Pointer.</param>
/// <param name="What">What it is, in words: the name of its step, or what the figure counts.</param>
/// <param name="Before">Today.</param>
/// <param name="After">What is enough, rounded to the safe side.</param>
public sealed record DesignFigure(string At, string What, decimal Before, decimal After);

/// <summary>Another channel on which a piece holds.</summary>
/// <param name="Channel">Its key.</param>
/// <param name="Price">The price listed there, or the lowest that holds.</param>
/// <param name="Listed">Whether it is listed.</param>
public sealed record SoldElsewhere(string Channel, decimal Price, bool Listed);
