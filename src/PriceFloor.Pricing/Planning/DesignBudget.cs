using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// What a piece that is not yet designed may take at a price that the market pays: bench minutes with these materials, or materials
/// with these minutes. All of it a sold piece, unrounded. A sale that leaves 56.00 at 30.00 an hour with 8.00 of materials allows
/// (56 - 8) / 30 = 1.6 hours, 96 minutes.
/// </summary>
public sealed class DesignBudget
{
    private DesignBudget(StudioYear year, Sale sale, decimal? minutes, decimal? materials)
    {
        (Year, Sale, AskedByMaterials, Given) = (year, sale, materials is not null, materials ?? minutes!.Value);
        var formulas = new DesignBudgetFormulas<Figure>(year, sale, Given, AskedByMaterials);
        Room = formulas.Room.Value;
        if (Rounding.Settle(sale.Net) <= 0)
            Reason = RemedyReasons.NothingReachesTheStudio;
        else if (materials is not null)
            (Minutes, Materials, Reason) = MinutesFor(materials.Value, formulas);
        else
            (Minutes, Materials, Reason) = (minutes, Room.Reaches(0) ? Room : null, Room.Reaches(0) ? null : RemedyReasons.TimeTakesItAll);
    }

    public StudioYear Year { get; }

    public Sale Sale { get; }

    /// <summary>True if the materials are given and the minutes asked for.</summary>
    public bool AskedByMaterials { get; }

    /// <summary>The materials, or else the bench minutes, that were given; also if there is no figure for the other.</summary>
    public decimal Given { get; }

    /// <summary>What is left of the net for what is asked about; negative if nothing is.</summary>
    public decimal Room { get; }

    /// <summary>Bench minutes a sold piece; null if none are left, or if any number is paid for.</summary>
    public decimal? Minutes { get; }

    /// <summary>Materials a sold piece; null if nothing is left for them.</summary>
    public decimal? Materials { get; }

    /// <summary>
    /// Why there is no figure: <c>nothing-reaches-the-studio</c>, <c>price-below-materials</c>, <c>time-takes-it-all</c>,
    /// <c>selling-takes-it-all</c>, or <c>bench-must-earn-nothing</c>: bench time has nothing to recover, so any time is paid for.
    /// </summary>
    public Code? Reason { get; }

    private (decimal? Minutes, decimal? Materials, Code? Reason) MinutesFor(decimal materials, DesignBudgetFormulas<Figure> formulas) =>
        Rounding.Settle(Room) <= 0 ? (null, materials, RemedyReasons.PriceBelowMaterials)
        : Year.BenchMustEarn == 0 ? (null, materials, RemedyReasons.BenchMustEarnNothing)
        : Rounding.Settle(formulas.Minutes.Value) <= 0 ? (null, materials, RemedyReasons.SellingTakesItAll)
        : (formulas.Minutes.Value, materials, null);

    /// <summary>What a piece may take; exactly one of minutes and materials is given, each a sold piece.</summary>
    public static Outcome<DesignBudget> Of(StudioYear year, Sale sale, decimal? minutes, decimal? materials) =>
        Outcome<DesignBudget>.Guard(() => new DesignBudget(year, sale, minutes, materials));
}
