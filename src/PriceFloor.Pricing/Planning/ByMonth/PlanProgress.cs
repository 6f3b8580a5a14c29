using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// Whether a planned year is on its way: what was planned by a day, what has come, and what each week and bench hour that is left must bring. It
/// moves no floor. Nothing here is rounded.
/// </summary>
public sealed class PlanProgress
{
    private readonly PlanProgressFormulas<Figure> _formulas;

    private PlanProgress(YearByMonth year, DateOnly through, IReadOnlyList<SoldSoFar> sold, IReadOnlyList<StockOfPieces> stock)
    {
        (Year, Through, Sold, Stock) = (year, through, sold, stock);
        _formulas = new PlanProgressFormulas<Figure>(year, year.Formulas, through, sold, stock);
        Pace = new Pace(_formulas.Pace);
        Months = [.. year.Months.Where(month => _formulas.Left[month.Number - 1].Value > 0).Select(MonthLeft)];
    }

    public YearByMonth Year { get; }

    public DateOnly Through { get; }

    /// <summary>What was sold so far.</summary>
    public IReadOnlyList<SoldSoFar> Sold { get; }

    /// <summary>Finished pieces that lie ready.</summary>
    public IReadOnlyList<StockOfPieces> Stock { get; }

    public Pace Pace { get; }

    /// <summary>What finished pieces are expected to leave, at the first line of their design: their hours are spent.</summary>
    public decimal StockExpected => _formulas.StockExpected.Value;

    /// <summary>Bench hours that are left, the running month's by its days.</summary>
    public decimal HoursLeft => _formulas.HoursLeft.Value;

    /// <summary>What each bench hour that is left must bring; null if none is. It never becomes a floor: a floor stays at normal capacity.</summary>
    public decimal? PerBenchHourLeft => _formulas.HasHours ? _formulas.PerBenchHourLeft.Value : null;

    /// <summary>The months of which something is left.</summary>
    public IReadOnlyList<MonthToBring> Months { get; }

    /// <summary>What the rest of the plan, as it is, will not bring.</summary>
    public decimal Missing => _formulas.Missing.Value;

    /// <summary>The rest of the plan times this; 1 if it brings enough. Null if nothing of the plan is left, or it leaves nothing.</summary>
    public decimal? SellMore => _formulas.Pace.HasRest ? _formulas.SellMore.Value : null;

    /// <summary>Refused with <c>too-large</c> if figures pass exactness.</summary>
    /// <param name="year">The plan.</param>
    /// <param name="through">The last day that has passed; within the profile's year.</param>
    /// <param name="sold">What was sold so far.</param>
    /// <param name="stock">Finished pieces that lie ready, by the keys of their designs.</param>
    public static Outcome<PlanProgress> Of(YearByMonth year, DateOnly through, IReadOnlyList<SoldSoFar> sold, IReadOnlyList<StockOfPieces> stock) =>
        Outcome<PlanProgress>.Guard(() => new PlanProgress(year, through, sold, stock));

    internal PlanProgressFormulas<T> FormulasOf<T>(ByMonthFormulas<T> year) where T : IFigure<T> => new(Year, year, Through, Sold, Stock);

    private MonthToBring MonthLeft(PlanMonth month)
    {
        var i = month.Number - 1;
        return new MonthToBring(month, _formulas.Pace.HasRest ? _formulas.ToBring(i).Value : null,
            _formulas.Pace.HasRest && _formulas.HasWeeks(i) ? _formulas.PerWeek(i).Value : null);
    }
}

/// <summary>What a month, or what is left of it, must bring.</summary>
/// <param name="Month">The month.</param>
/// <param name="ToBring">Its part of what is still to bring, as the plan spreads it; null if nothing of the plan is left.</param>
/// <param name="PerWeek">The same for each of its working weeks that are left; null if none is.</param>
public sealed record MonthToBring(PlanMonth Month, decimal? ToBring, decimal? PerWeek);
