using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.PriceLists;

namespace PriceFloor.Api.WhatIfs;

/// <summary>A what-if as an answer: all rounding, by name.</summary>
internal sealed class WhatIfText
{
    private readonly WhatIf _asked;
    private readonly PriceReview? _review;
    private readonly Currency _money;
    private readonly IReadOnlyList<WhatIfLine> _lines;
    private readonly IReadOnlyList<WhatIfLine> _fallen;

    private WhatIfText(WhatIf asked, PriceReview? review)
    {
        (_asked, _review, _money) = (asked, review, asked.Now.Year.Currency);
        (_lines, _fallen) = WhatIfLines.Of(asked.Now.Catalogue, [.. asked.All.Select(one => one.Catalogue)], asked.Profile, asked.Wanted);
    }

    public static Outcome<WhatIfAnswer> Of(WhatIf asked)
    {
        var review = PriceReview.Of(asked);
        return review is null || review.Found is not null ? new WhatIfText(asked, review?.Found).Answer() : review.Faults.ToList();
    }

    private Outcome<WhatIfAnswer> Answer()
    {
        var now = WhatIfYears.Of(_asked.Now, _asked.Request.Remedies);
        var scenarios = _asked.All.Select((scenario, i) => ScenarioOf(scenario, i, now.Found)).ToList();
        var faults = now.Faults.Concat(scenarios.SelectMany(one => one.Faults)).ToList();
        return faults.Count > 0 ? faults : Answer(now.Value, [.. scenarios.Take(_asked.Scenarios.Count).Select(one => one.Value)],
            _asked.Combined is null ? null : scenarios[^1].Value);
    }

    private WhatIfAnswer Answer(WhatIfYearAnswer now, IReadOnlyList<WhatIfScenarioAnswer> scenarios, WhatIfScenarioAnswer? combined) => new()
    {
        Currency = _money.Code,
        Now = now,
        Scenarios = scenarios,
        Combined = combined,
        List = new ShownAsRead<WhatIfLine, WhatIfLineAnswer>(_lines, LineOf),
        Basis = new WhatIfBasisAnswer
        {
            Profile = _asked.Profile.Basis,
            Plan = _asked.Now.Plan?.Plan.Basis,
            Changed = _asked.ChangedDocuments,
            Scenarios = _asked.StoredScenarios,
            List = _asked.Wanted == WhatIfList.None ? null : new PriceListBasisAnswer([_asked.Profile.Basis],
                [.. _asked.Now.Catalogue.Channels.Where(channel => channel.Sound is not null).Select(channel => channel.Basis)]),
        },
        Warnings = WarningAnswer.Of(WhatIfWarnings.Of(_asked, _lines, combined is null ? null : WhatIfYears.AreAdditive(scenarios, combined))
            .Concat(_review?.WarningsOn(_asked.Now.Catalogue.Today) ?? [])),
        Assumed = AssumptionAnswer.Of(Assumed.In(_asked.Profile.Document).Concat(_asked.Now.Plan is { } plan
            ? PlanWarnings.Assumed(plan.Months).Select(one => one with { Pointer = WhatIfWarnings.InPlan(one.Pointer) })
            : [])),
    };

    private Outcome<WhatIfScenarioAnswer> ScenarioOf(WhatIfScenario scenario, int place, WhatIfYearAnswer? now)
    {
        var year = WhatIfYears.Of(scenario, _asked.Request.Remedies);
        var fallen = _fallen.Where(line => line.HasFallen(place)).ToList();
        var review = _review?.In(scenario, [.. fallen.Select(line => RiseOf(line, scenario, place)).OfType<PriceRise>()]);
        var faults = year.Faults.Concat(review?.Faults ?? []).ToList();
        if (faults.Count > 0 || now is null)
            return faults;
        var shown = year.Value;
        return new WhatIfScenarioAnswer
        {
            Name = scenario.Name,
            RequiredRevenue = shown.RequiredRevenue,
            BenchMustEarn = shown.BenchMustEarn,
            BenchHours = shown.BenchHours,
            PerBenchHour = shown.PerBenchHour,
            TakeHomePerHour = shown.TakeHomePerHour,
            Plan = shown.Plan,
            Remedies = shown.Remedies,
            Differences = WhatIfYears.Less(shown, now),
            VerdictsFallen = fallen.Count,
            Held = review?.Value.Held,
            Phased = review?.Value.Phased,
        };
    }

    private static PriceRise? RiseOf(WhatIfLine line, WhatIfScenario scenario, int place) =>
        line.SuggestedIn(place) is { } suggested && line.Scenarios[place].ListedPrice is { } listed
            ? new PriceRise(line.Design.Key, line.Channel.Key, listed, suggested,
                PriceGrid.Of(scenario.Catalogue.Channel(line.Channel.Key)!.Document))
            : null;

    private WhatIfLineAnswer LineOf(WhatIfLine line) => new()
    {
        Sku = line.Design.Key,
        Channel = line.Channel.Key,
        ListedPrice = Price(line.Now.ListedPrice),
        Now = new WhatIfPriceAnswer
        {
            FloorPrice = Price(line.Now.FloorPrice),
            TargetPrice = Price(line.Now.TargetPrice),
            Verdict = line.Now.Verdict,
            Reason = line.Now.Reason,
        },
        Scenarios = [.. Enumerable.Range(0, _asked.Scenarios.Count).Select(i => PriceOf(line, i))],
        Combined = _asked.Combined is null ? null : PriceOf(line, _asked.Scenarios.Count),
    };

    private WhatIfScenarioPriceAnswer PriceOf(WhatIfLine line, int scenario)
    {
        var priced = line.Scenarios[scenario];
        return new WhatIfScenarioPriceAnswer
        {
            ListedPrice = Price(priced.ListedPrice),
            FloorPrice = Price(priced.FloorPrice),
            TargetPrice = Price(priced.TargetPrice),
            Verdict = priced.Verdict,
            SuggestedPrice = Price(line.SuggestedIn(scenario)),
            Reason = priced.Reason,
        };
    }

    private decimal? Price(decimal? price) => price is { } exact ? Rounding.WithDecimals(exact, _money.Decimals) : null;
}
