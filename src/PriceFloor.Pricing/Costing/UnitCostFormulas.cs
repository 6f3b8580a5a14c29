using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Costing;

/// <summary>The formulas of a <see cref="UnitCost"/>.</summary>
internal readonly struct UnitCostFormulas<T> where T : IFigure<T>
{
    private readonly Design _design;
    private readonly T _soldShare;

    public UnitCostFormulas(Design design, StudioYear year, BenchTimeFormulas<T> time)
    {
        T soldShare = design.SoldShare ?? year.Profile.SoldShare;
        (_design, _soldShare, Time) = (design, soldShare, time);
        DevelopmentHours = design.Development is { Hours: > 0 } work ? T.Named("developmentHours", (T)work.Hours / work.Pieces) : 0;
        DevelopmentCost = design.Development is { Cost: > 0 } paid ? T.Named("developmentCost", (T)paid.Cost / paid.Pieces) : 0;
        BenchHours = T.Named("benchHours", WithDevelopment(Time.Hours / soldShare, DevelopmentHours));
        MaterialCosts = new T[design.Materials.Count];
        for (var i = 0; i < MaterialCosts.Length; i++)
            MaterialCosts[i] = T.Named("material", i + 1, CostOf(design.Materials[i], year) * Time.PiecesAt(design.Materials[i].At, design.Making));
        Materials = T.Named("materials", WithDevelopment(Formulas.Sum(MaterialCosts) / soldShare, DevelopmentCost));
        var credit = design.Seconds is { } seconds ? (T)seconds.Share * seconds.Price * (Time.Starts - 1) / soldShare : 0;
        SecondsCredit = T.Named("secondsCredit", credit);
        BenchCost = T.Named("benchCost", T.Named("perBenchHour", year.PerBenchHour) * BenchHours);
        Cost = BenchCost + Materials - SecondsCredit;
        Floor = T.Named("floor", T.Max(0, Cost));
    }

    public BenchTimeFormulas<T> Time { get; }

    /// <summary>One-off bench hours of the design a sold piece; 0 if it has none.</summary>
    public T DevelopmentHours { get; }

    /// <summary>One-off cost of the design a sold piece; 0 if it has none.</summary>
    public T DevelopmentCost { get; }

    public T BenchHours { get; }

    public T[] MaterialCosts { get; }

    public T Materials { get; }

    public T SecondsCredit { get; }

    public T BenchCost { get; }

    /// <summary>What the floor is taken of, below zero too; without a symbol.</summary>
    public T Cost { get; }

    public T Floor { get; }

    /// <summary>Bench hours a sold piece that must not be shortened: what safety depends on, and one-off work, which is spent.</summary>
    public T FixedHours => T.Named("fixedHours", WithDevelopment(Time.FixedHours(_design.Making) / _soldShare, DevelopmentHours));

    /// <summary>Bench hours a sold piece in which pieces are worked over.</summary>
    public T ReworkHours => T.Named("reworkHours", Time.ReworkHours(_design.Making) / _soldShare);

    /// <summary>Loads of a scarce thing that one sold piece takes.</summary>
    /// <param name="resource">The thing.</param>
    /// <param name="number">Its number among those that the piece takes, 1 first.</param>
    public T LoadsOf(string resource, int number) => T.Named("loadsAPiece", number, Time.LoadsOf(resource, _design.Making) / _soldShare);

    /// <summary>One material line for one piece at its point.</summary>
    public static T CostOf(MaterialLine line, StudioYear year) => line.Material is { } material
        ? (T)year.PriceOf(material)!.Value * (line.Quantity ?? 0) / (1 - (T)line.WasteShare) / line.BatchSize
        : line.Amount ?? 0;

    private static T WithDevelopment(T making, T development) => development.Value == 0 ? making : making + development;
}
