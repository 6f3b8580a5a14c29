using PriceFloor.Api.Documents;
using PriceFloor.Api.PriceLists;

namespace PriceFloor.Api.WhatIfs;

/// <summary>A what-if as an answer: all rounding, by name.</summary>
internal sealed class WhatIfText
{
    private readonly WhatIf _asked;
    private readonly Currency _money;
    private readonly WhatIfYearAnswer _now;
    private readonly int[] _fallen;
    private readonly IReadOnlyList<WhatIfLine> _lines;

    private WhatIfText(WhatIf asked)
    {
        (_asked, _money, _now) = (asked, asked.Now.Year.Currency, YearOf(asked.Now.Year));
        (_lines, _fallen) = WhatIfLines.Of(asked.Now.Catalogue, [.. asked.All.Select(one => one.Catalogue)], asked.Profile, asked.Wanted);
    }

    public static WhatIfAnswer Of(WhatIf asked) => new WhatIfText(asked).Answer();

    private WhatIfAnswer Answer()
    {
        var scenarios = _asked.Scenarios.Select((scenario, i) => ScenarioOf(scenario, _fallen[i])).ToList();
        var combined = _asked.Combined is { } together ? ScenarioOf(together, _fallen[^1]) : null;
        return new WhatIfAnswer
        {
            Currency = _money.Code,
            Now = _now,
            Scenarios = scenarios,
            Combined = combined,
            List = [.. _lines.Select(LineOf)],
            Basis = new WhatIfBasisAnswer
            {
                Profile = _asked.Profile.Basis,
                Changed = _asked.ChangedDocuments,
                Scenarios = _asked.StoredScenarios,
                List = _asked.Wanted == WhatIfList.None ? null : new PriceListBasisAnswer([_asked.Profile.Basis],
                    [.. _asked.Now.Catalogue.Channels.Where(channel => channel.Sound is not null).Select(channel => channel.Basis)]),
            },
            Warnings = WarningAnswer.Of(WhatIfWarnings.Of(_asked, _lines, combined is null ? null : IsAdditive(scenarios, combined))),
            Assumed = AssumptionAnswer.Of(Assumed.In(_asked.Profile.Document)),
        };
    }

    private static WhatIfYearAnswer YearOf(StudioYear year) => new()
    {
        RequiredRevenue = year.Currency.RoundUp(year.RequiredRevenue),
        BenchMustEarn = year.Currency.RoundUp(year.BenchMustEarn),
        BenchHours = Answers.Hours(year.BenchHours),
        PerBenchHour = year.Currency.RoundUp(year.PerBenchHour),
        TakeHomePerHour = year.Currency.Round(year.TakeHomePerHour),
    };

    private WhatIfScenarioAnswer ScenarioOf(WhatIfScenario scenario, int fallen)
    {
        var year = YearOf(scenario.Year);
        return new WhatIfScenarioAnswer
        {
            Name = scenario.Name,
            RequiredRevenue = year.RequiredRevenue,
            BenchMustEarn = year.BenchMustEarn,
            BenchHours = year.BenchHours,
            PerBenchHour = year.PerBenchHour,
            TakeHomePerHour = year.TakeHomePerHour,
            Differences = new WhatIfYearAnswer
            {
                RequiredRevenue = year.RequiredRevenue - _now.RequiredRevenue,
                BenchMustEarn = year.BenchMustEarn - _now.BenchMustEarn,
                BenchHours = Answers.Hours(year.BenchHours - _now.BenchHours),
                PerBenchHour = year.PerBenchHour - _now.PerBenchHour,
                TakeHomePerHour = year.TakeHomePerHour - _now.TakeHomePerHour,
            },
            VerdictsFallen = fallen,
        };
    }

    /// <summary>Whether the scenarios' differences add up to those of all changes together.</summary>
    private static bool IsAdditive(IReadOnlyList<WhatIfScenarioAnswer> scenarios, WhatIfScenarioAnswer combined)
    {
        Func<WhatIfYearAnswer, decimal>[] figures =
        [
            year => year.RequiredRevenue, year => year.BenchMustEarn, year => year.BenchHours, year => year.PerBenchHour,
            year => year.TakeHomePerHour,
        ];
        return figures.All(figure => scenarios.Sum(scenario => figure(scenario.Differences)) == figure(combined.Differences));
    }

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
