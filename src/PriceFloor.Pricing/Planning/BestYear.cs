using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Planning.Solver;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>The best plan of a year: how many of each line, found by <see cref="BestMix"/> and computed like any other plan.</summary>
public sealed class BestYear
{
    private BestYear(YearPlan plan, BestMix mix, MixGoal goal, IReadOnlyList<ScarceResource> resources) =>
        (Plan, Mix, Goal, Resources) = (plan, mix, goal, resources);

    public YearPlan Plan { get; }

    public BestMix Mix { get; }

    public MixGoal Goal { get; }

    /// <summary>What is limited beside the hours, in the order in which the mix's uses have it after them.</summary>
    public IReadOnlyList<ScarceResource> Resources { get; }

    /// <summary>The season of each line; null for one that is sold evenly.</summary>
    public IReadOnlyList<Season?> Seasons { get; private init; } = [];

    /// <summary>If optimality is not proven: no plan leaves more than this surplus, or takes fewer hours than this.</summary>
    public decimal? Bound => Mix.AtMost is { } most ? most - Plan.BenchMustEarn : Mix.AtLeast;

    /// <summary>Refused as <see cref="BestMix.Of(ProductMixProblem)"/> is.</summary>
    /// <param name="year">The year to plan.</param>
    /// <param name="lines">What may be made; its order is kept in the plan.</param>
    /// <param name="surplus">What the year should leave beyond the need.</param>
    /// <param name="hoursKeptBack">Bench hours for work that is not planned here.</param>
    /// <param name="goal">What is optimised.</param>
    /// <param name="work">How the year's hours are spread over its months; null if it does not matter when what is sold.</param>
    public static Outcome<BestYear> Of(StudioYear year, IReadOnlyList<OfferedLine> lines, Surplus? surplus, decimal hoursKeptBack, MixGoal goal,
        Season? work = null) => Outcome<BestYear>.Guard(() =>
    {
        var inOrder = lines.Index().OrderBy(line => line.Item.Key, StringComparer.Ordinal).ToList();
        var hours = year.BenchHours - hoursKeptBack;
        List<ScarceResource> scarce =
        [
            .. ScarceResource.Of(year, [.. lines.Select(line => line.Check)]),
            .. work is null ? [] : ScarceResource.OfMonths(hours, work, lines),
        ];
        var activities = inOrder.Select(line => ActivityOf(line.Item, line.Index, scarce)).ToList();
        var mix = BestMix.Of(new ProductMixProblem(activities, year.BenchMustEarnWith(surplus), hours,
            [.. scarce.Select(one => one.Resource)], goal));
        if (mix.Found is null)
            return mix.Faults.ToList();

        var units = new decimal[lines.Count];
        foreach (var (place, line) in inOrder.Index())
            units[line.Index] = mix.Value.Units[place];
        var plan = YearPlan.Of(year, [.. lines.Zip(units, (line, made) => new PlannedLine(line.Check, made))], surplus, hoursKeptBack);
        return plan.Found is null
            ? plan.Faults.ToList()
            : new BestYear(plan.Value, mix.Value, goal, scarce) { Seasons = [.. lines.Select(line => line.Season)] };
    });

    /// <summary>Bench hours of what is sold from the first month through one.</summary>
    internal T HoursThrough<T>(int month) where T : IFigure<T> => T.Named("hoursThroughMonth", month, Formulas.Sum(Plan.Lines.Select((line, i) =>
        T.Named("lineHours", i + 1, line.BenchHours) * (Seasons[i] ?? Season.Even).ShareThrough(month))));

    private static Activity ActivityOf(OfferedLine line, int index, IReadOnlyList<ScarceResource> scarce)
    {
        var piece = line.Check.Prices.Floor.UnitCost;
        return new Activity(BreakEven.ContributionOf(piece, line.Check.Sale), piece.BenchHours,
            [.. scarce.Select(one => one.TakenBy(line.Check, index))], line.Minimum, line.Maximum);
    }
}

/// <summary>A piece at a price that may be made between a minimum and what the market takes.</summary>
/// <param name="Key">Decides between equally good plans: the earlier key gets more.</param>
/// <param name="Check">The piece at its price.</param>
/// <param name="Minimum">Least whole pieces.</param>
/// <param name="Maximum">Most whole pieces; null if the market takes any number.</param>
/// <param name="Season">When it is sold; null if evenly over the year.</param>
public sealed record OfferedLine(string Key, PriceCheck Check, decimal Minimum, decimal? Maximum, Season? Season = null);
