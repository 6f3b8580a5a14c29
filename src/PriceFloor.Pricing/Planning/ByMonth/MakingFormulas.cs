using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// When the pieces of a plan are made: as late as the hours allow, so that least money is tied up. A month that needs more than it has is prepared
/// in the months before it.
/// </summary>
internal sealed class MakingFormulas<T> where T : IFigure<T>
{
    public MakingFormulas(Plan plan, SoldByMonthFormulas<T> sold, OpeningStockFormulas<T> stock, T hoursAvailable)
    {
        Needed = Monthly.Of("hoursToMake", month => stock.Hours[month].Value == 0 ? sold.Hours[month] : sold.Hours[month] - stock.Hours[month]);
        MaterialsNeeded = Monthly.Of("materialsToMake", month =>
            stock.Materials[month].Value == 0 ? sold.Materials[month] : sold.Materials[month] - stock.Materials[month]);
        var work = plan.Work is { } weights ? Season.Of(weights)! : Season.Even;
        Available = T.Named("hoursToWork", T.Max(0, hoursAvailable));
        Capacity = Monthly.Of("capacity", month => Available * work.Weights[month] / work.Sum);
        (NeedsInAll, CanInAll) = (Formulas.Sum(Needed), Formulas.Sum(Capacity));
        WithinCapacity = CanInAll.Value.Reaches(NeedsInAll.Value);
        GoesRound = plan.Steady && WithinCapacity;
        FirstPass = GoesRound ? Ready("firstPassReady", 0) : null;
        AtEnd = FirstPass is null ? 0 : FirstPass[0];
        Stock = Ready("stockHours", AtEnd);
        StockAtMost = T.Named("stockAtMost", Stock.Aggregate(T.Max));
        Made = Monthly.Of("madeHours", month => month == 0 && !GoesRound ? Needed[0] + Stock[1]
            : Needed[month] + (month < 11 ? Stock[month + 1] : AtEnd) - Stock[month]);
        Served = InOrder();
        Materials = Monthly.Sum("materialsPaid", Served, (served, month) => served.Made == month,
            (served, _) => served.Hours * MaterialsNeeded[served.For] / Needed[served.For]);
    }

    /// <summary>Bench hours of each month's sales that are still to be worked.</summary>
    public T[] Needed { get; }

    /// <summary>The materials of the same, less what seconds bring.</summary>
    public T[] MaterialsNeeded { get; }

    /// <summary>The year's hours less those kept back; at least 0.</summary>
    public T Available { get; }

    public T[] Capacity { get; }

    public T NeedsInAll { get; }

    public T CanInAll { get; }

    /// <summary>Whether the year has hours enough; if not, no plan can help.</summary>
    public bool WithinCapacity { get; }

    /// <summary>Whether making ahead goes round from the year's end to its start.</summary>
    public bool GoesRound { get; }

    /// <summary>In a year that goes round: what would lie ready if nothing had to lie ready at its end.</summary>
    public T[]? FirstPass { get; }

    /// <summary>Hours of work that lie ready when the year ends.</summary>
    public T AtEnd { get; }

    /// <summary>Hours of work that must lie ready when each month begins.</summary>
    public T[] Stock { get; }

    /// <summary>The most of them.</summary>
    public T StockAtMost { get; }

    public T[] Made { get; }

    /// <summary>Which sales the hours of each month are for: first made, first sold.</summary>
    public IReadOnlyList<(int Made, int For, T Hours)> Served { get; }

    /// <summary>Materials paid in each month: with the hours that work them.</summary>
    public T[] Materials { get; }

    private T[] Ready(string symbol, T atEnd)
    {
        var ready = new T[12];
        for (var month = 11; month >= 0; month--)
            ready[month] = T.Named(symbol, month + 1, T.Max(0, Needed[month] + (month < 11 ? ready[month + 1] : atEnd) - Capacity[month]));
        return ready;
    }

    private List<(int Made, int For, T Hours)> InOrder()
    {
        var (waiting, served) = (Waiting(), new List<(int, int, T)>(24));
        for (var month = 0; month < 12; month++)
        {
            var left = Made[month];
            while (left.Value > 0 && waiting.TryDequeue(out var next))
            {
                var hours = T.Named("worked", served.Count + 1, T.Min(left, next.Hours));
                served.Add((month, next.Month, hours));
                if (next.Hours.Value > left.Value)
                    waiting = new([(next.Month, next.Hours - hours), .. waiting]);
                left -= hours;
            }
        }

        return served;
    }

    /// <summary>
    /// The months whose sales wait for work, in order. In a year that goes round what lies ready serves the first months, and is made again at the
    /// end.
    /// </summary>
    private Queue<(int Month, T Hours)> Waiting()
    {
        var waiting = new Queue<(int, T)>(24);
        List<(int, T)> again = [];
        var ready = GoesRound ? Stock[0] : 0;
        for (var month = 0; month < 12; month++)
        {
            var served = T.Min(ready, Needed[month]);
            if (Needed[month].Value > served.Value)
                waiting.Enqueue((month, served.Value == 0 ? Needed[month] : Needed[month] - served));
            if (served.Value > 0)
                again.Add((month, served));
            ready -= served;
        }

        foreach (var one in again)
            waiting.Enqueue(one);
        return waiting;
    }
}
