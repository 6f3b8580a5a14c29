using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Costing;

/// <summary>The formulas of a <see cref="Run"/>.</summary>
internal readonly struct RunFormulas<T> where T : IFigure<T>
{
    public RunFormulas(Design design, StudioYear year, RunTerms terms, int startsToBeSure)
    {
        Time = new RunTimeFormulas<T>(design.Making, year.Profile.Calendar, terms, startsToBeSure);
        DevelopmentHours = design.Development is { Hours: > 0 } work ? T.Named("runDevelopmentHours", Time.Quantity * work.Hours / work.Pieces) : 0;
        DevelopmentCost = design.Development is { Cost: > 0 } paid ? T.Named("runDevelopmentCost", Time.Quantity * paid.Cost / paid.Pieces) : 0;
        BenchHours = T.Named("runHours", With(Time.Minutes / 60, DevelopmentHours));
        MaterialCosts = new T[design.Materials.Count];
        for (var i = 0; i < MaterialCosts.Length; i++)
            MaterialCosts[i] = T.Named("runMaterial", i + 1, CostOf(design.Materials[i], design.Making, year));
        TrialMaterials = terms.TrialPieces > 0 ? T.Named("trialMaterials", terms.TrialPieces
            * Formulas.Sum(design.Materials.Select(line => UnitCostFormulas<T>.CostOf(line, year)))) : 0;
        Materials = T.Named("runMaterials", With(With(Formulas.Sum(MaterialCosts), TrialMaterials), DevelopmentCost));
        var seconds = design.Seconds is { } sold ? (T)sold.Share * sold.Price * (Time.Starts - Time.Quantity) : 0;
        Seconds = T.Named("runSeconds", seconds);
    }

    public RunTimeFormulas<T> Time { get; }

    /// <summary>0 without a symbol if the design has none.</summary>
    public T DevelopmentHours { get; }

    /// <summary>0 without a symbol if the design has none.</summary>
    public T DevelopmentCost { get; }

    public T BenchHours { get; }

    public T[] MaterialCosts { get; }

    /// <summary>0 without a symbol if there are no trial pieces.</summary>
    public T TrialMaterials { get; }

    public T Materials { get; }

    public T Seconds { get; }

    /// <summary>Whole loads that a line of material is used for; without a symbol.</summary>
    public T LoadsOf(MaterialLine line, Making making) => T.RoundUp(Time.PiecesAt(line.At, making) / line.BatchSize, 0);

    private static T With(T figure, T more) => more.Value == 0 ? figure : figure + more;

    private T CostOf(MaterialLine line, Making making, StudioYear year) => line.BatchSize > 1
        ? UnitCostFormulas<T>.CostOf(line with { BatchSize = 1 }, year) * LoadsOf(line, making)
        : UnitCostFormulas<T>.CostOf(line, year) * Time.PiecesAt(line.At, making);
}
