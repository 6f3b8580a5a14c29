using System.Globalization;
using PriceFloor.Api.Http;
using PriceFloor.Api.Plans;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.WhatIfs;

/// <summary>What holding the plan's prices costs in a scenario, and the steps in which listed prices rise.</summary>
internal sealed class PriceReview
{
    private readonly WhatIfRequest _request;
    private readonly PlanInQuestion _now;
    private readonly Currency _money;

    private PriceReview(WhatIfRequest request, PlanInQuestion now)
    {
        (_request, _now, _money) = (request, now, now.Months.Year.Currency);
        From = request.From ?? First;
    }

    /// <summary>The day on which costs rise.</summary>
    public DateOnly From { get; }

    private DateOnly First => _now.Months.Months[0].From;

    private DateOnly After => First.Year == DateOnly.MaxValue.Year ? DateOnly.MaxValue : First.AddYears(1);

    /// <summary>The review that a what-if asks for; null if it asks for none.</summary>
    public static Outcome<PriceReview>? Of(WhatIf asked)
    {
        var request = asked.Request;
        if (asked.Now.Plan is not { } plan || (request.From ?? request.Notice ?? request.Phases as object) is null)
            return null;
        var review = new PriceReview(request, plan);
        var faults = review.Faults(asked).ToList();
        return faults.Count > 0 ? faults : review;
    }

    /// <summary>Notice that would have had to begin before today.</summary>
    public IEnumerable<Warning> WarningsOn(DateOnly today) => (_request.Notice ?? new Dictionary<string, decimal>())
        .Where(notice => AnnounceBy(notice.Value) < today)
        .Select(notice => new Warning(WarningCodes.TooLateToAnnounce, string.Create(CultureInfo.InvariantCulture,
            $"{Rounding.Trim(notice.Value)} weeks before {From:yyyy-MM-dd} was {AnnounceBy(notice.Value):yyyy-MM-dd}; on \"{notice.Key}\" prices "
            + $"can rise on {today.AddDays(7 * (int)notice.Value):yyyy-MM-dd} at the earliest."), $"/notice/{DocumentPointer.Escape(notice.Key)}"));

    /// <summary>The costs of holding prices in a scenario, and its phases.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="rises">Listed prices that are to rise there.</param>
    public Outcome<ScenarioReview> In(WhatIfScenario scenario, IReadOnlyList<PriceRise> rises)
    {
        var held = new HeldPrices(_now.Months, scenario.Year);
        var unchanged = LinesIn(scenario, new Dictionary<(string, string), decimal>());
        if (unchanged.Found is not { } lines)
            return unchanged.Faults.ToList();
        var phases = PhasesIn(scenario, held, rises, lines);
        if (phases.Found is not { } steps)
            return phases.Faults.ToList();
        return new ScenarioReview(
            new HeldAnswer
            {
                Year = _money.RoundUp(held.Cost(lines, First, After)),
                FromOn = _money.RoundUp(held.Cost(lines, From, After)),
                ByNotice = [.. (_request.Notice ?? new Dictionary<string, decimal>()).Select(notice => new NoticeAnswer(notice.Key,
                    Rounding.Trim(notice.Value), _money.RoundUp(held.Cost(OnChannel(lines, notice.Key), From, Until(notice.Value))),
                    AnnounceBy(notice.Value)))],
                Phased = _request.Phases is null ? null : _money.RoundUp(held.Cost(lines, From, StartOf(0)) + steps.Sum(step => step.Cost)),
            },
            _request.Phases is null ? null : [.. steps.Select(step => step.Answer)]);
    }

    private IEnumerable<Fault> Faults(WhatIf asked)
    {
        var within = string.Create(CultureInfo.InvariantCulture, $"within the profile's year, {First:yyyy-MM-dd} to {After.AddDays(-1):yyyy-MM-dd}.");
        if (From < First || From >= After)
            yield return RequestFault.Invalid(Place.Body.Error("from", FaultCodes.OutOfRange, $"from must be {within}"));
        foreach (var (i, phase) in (_request.Phases ?? []).Index())
            if (phase.On < First || phase.On >= After)
                yield return RequestFault.Invalid(Place.In(FormattableString.Invariant($"#/phases/{i}")).Error("on", FaultCodes.OutOfRange,
                    $"on must be {within}"));
        foreach (var (channel, _) in _request.Notice ?? new Dictionary<string, decimal>())
            if (asked.Now.Catalogue.Channel(channel) is null)
                yield return RequestFault.Unknown(Place.In("#/notice").Error(DocumentPointer.Escape(channel), InputCodes.UnknownChannel,
                    $"There is no channel \"{channel}\"; case counts."));
    }

    private DateOnly AnnounceBy(decimal weeks) => From.AddDays(-7 * (int)weeks);

    private DateOnly Until(decimal weeks) => From.AddDays(int.Min(7 * (int)weeks, After.DayNumber - From.DayNumber));

    /// <summary>When a phase begins to count: not before costs rise.</summary>
    private DateOnly StartOf(int phase) =>
        phase >= _request.Phases!.Count ? After : _request.Phases[phase].On is var on && on > From ? on : From;

    private List<PlannedLine?> OnChannel(IReadOnlyList<PlannedLine> lines, string channel) =>
        [.. lines.Select((line, i) => _now.Months.Plan.Lines[i].Channel == channel ? line : null)];

    private Outcome<List<(PhaseAnswer Answer, decimal Cost)>> PhasesIn(WhatIfScenario scenario, HeldPrices held, IReadOnlyList<PriceRise> rises,
        List<PlannedLine> unchanged)
    {
        var steps = new List<(PhaseAnswer, decimal)>();
        foreach (var (i, phase) in (_request.Phases ?? []).Index())
        {
            var prices = rises.ToDictionary(rise => (rise.Sku, rise.Channel), rise => rise.At(phase.Share));
            Outcome<List<PlannedLine>> lines = rises.Count == 0 ? unchanged : LinesIn(scenario, prices);
            if (lines.Found is not { } risen)
                return lines.Faults.ToList();
            var cost = held.Cost(risen, StartOf(i), StartOf(i + 1));
            steps.Add((new PhaseAnswer
            {
                On = phase.On,
                Share = Rounding.Trim(phase.Share),
                Held = _money.RoundUp(cost),
                Prices = [.. prices.Select(price => new PhasedPriceAnswer(price.Key.Sku, price.Key.Channel,
                    Rounding.WithDecimals(price.Value, _money.Decimals)))],
            }, cost));
        }

        return steps;
    }

    /// <summary>The plan's lines as it is, after the scenario's changes: at their prices now, but for those that have risen.</summary>
    private Outcome<List<PlannedLine>> LinesIn(WhatIfScenario scenario, IReadOnlyDictionary<(string, string), decimal> risen)
    {
        var lines = _now.Months.Plan.Lines.Zip(_now.Months.Totals.Lines, (line, now) => new HeldLine(line.Sku, line.Channel,
            risen.TryGetValue((line.Sku, line.Channel), out var price) ? price : now.Sale.Price)).ToList();
        var sold = SaleLines.Of(scenario.Catalogue, scenario.Catalogue.Profile(_now.Profile.Key)!, lines, "#/lines", anyDecimals: true);
        return sold.Found is { } found
            ? found.Sales.Zip(_now.Months.Totals.Lines, (sale, now) => new PlannedLine(sale.Check, now.Units)).ToList()
            : sold.Faults.ToList();
    }

    private sealed record HeldLine(string Sku, string Channel, decimal? Price) : ISaleLine;
}

/// <summary>A listed price that is to rise.</summary>
/// <param name="Sku">Key of the design.</param>
/// <param name="Channel">Key of the channel.</param>
/// <param name="Old">The listed price.</param>
/// <param name="New">The suggested one.</param>
/// <param name="Grid">The prices that the channel allows.</param>
internal sealed record PriceRise(string Sku, string Channel, decimal Old, decimal New, PriceGrid Grid)
{
    /// <summary>The smallest allowed price that has risen by a share; at 1 the new one.</summary>
    public decimal At(decimal share)
    {
        var least = Old + share * (New - Old);
        return Grid.First(least, price => price.Reaches(least)) ?? New;
    }
}

/// <summary>What a scenario says of held prices.</summary>
internal sealed record ScenarioReview(HeldAnswer Held, IReadOnlyList<PhaseAnswer>? Phased);
