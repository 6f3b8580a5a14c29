namespace PriceFloor.Pricing;

/// <summary>A way to mend a price that does not carry its part of the year.</summary>
public enum RemedyKind
{
    /// <summary>The channel's floor price.</summary>
    RaiseThePrice,

    /// <summary>Bench minutes a sold piece; time that is not mayBeHurried stays as it is.</summary>
    WorkFaster,

    /// <summary>Less for bench time to recover in the year.</summary>
    SpendLess,

    /// <summary>Materials a sold piece.</summary>
    CheaperMaterials,

    /// <summary>The good share; with steps that of the step that loses most.</summary>
    LoseFewer,

    /// <summary>Further taxable income a year that takes no bench days.</summary>
    EarnTaxableElsewhere,

    /// <summary>Further income a year that is already taxed and takes no bench days.</summary>
    EarnNetElsewhere,

    /// <summary>A new design for this price: the bench minutes it may take with these materials.</summary>
    NewDesignMinutes,

    /// <summary>A new design for this price: the materials it may use with these minutes.</summary>
    NewDesignMaterials,

    /// <summary>Working hours a week; over 48 flagged, never offered as the answer.</summary>
    MoreHours,
}

/// <summary>What a remedy's figures count.</summary>
public enum RemedyMeasure
{
    /// <summary>A listed price in the channel's currency.</summary>
    Price,

    /// <summary>Bench minutes a sold piece.</summary>
    BenchMinutesAPiece,

    /// <summary>Money a year in the profile's currency.</summary>
    MoneyAYear,

    /// <summary>Money a sold piece.</summary>
    MoneyAPiece,

    /// <summary>The share of pieces that come out good.</summary>
    GoodShare,

    /// <summary>Working hours a week.</summary>
    HoursAWeek,
}

/// <summary>One way, alone, as a figure before and after; or the reason why it cannot be.</summary>
/// <param name="Kind">Which way.</param>
/// <param name="Before">The figure today.</param>
/// <param name="After">The figure that is enough, rounded to the safe side; null where the way is not possible.</param>
/// <param name="InWords">The change in the maker's words, or why it cannot be.</param>
/// <param name="Reason">A stable word where it is not possible.</param>
public sealed record Remedy(RemedyKind Kind, decimal? Before, decimal? After, string InWords, string? Reason)
{
    public bool Possible => Reason is null;

    /// <summary>What both figures count.</summary>
    public RemedyMeasure Measure => Kind switch
    {
        RemedyKind.RaiseThePrice => RemedyMeasure.Price,
        RemedyKind.WorkFaster or RemedyKind.NewDesignMinutes => RemedyMeasure.BenchMinutesAPiece,
        RemedyKind.CheaperMaterials or RemedyKind.NewDesignMaterials => RemedyMeasure.MoneyAPiece,
        RemedyKind.LoseFewer => RemedyMeasure.GoodShare,
        RemedyKind.MoreHours => RemedyMeasure.HoursAWeek,
        _ => RemedyMeasure.MoneyAYear,
    };

    /// <summary>With spend-less: what the year's costs must fall by, rounded up; the value to feed back.</summary>
    public decimal? Cut { get; init; }

    /// <summary>"long-week" where the figure is there to be seen, not to be followed.</summary>
    public string? Flag { get; init; }
}
