using System.Globalization;

namespace PriceFloor.Api.WhatIfs;

/// <summary>What a what-if must not keep silent about.</summary>
internal static class WhatIfWarnings
{
    /// <summary>Those of the stored year, then those that a scenario adds, then those of its prices.</summary>
    /// <param name="asked">The what-if.</param>
    /// <param name="lines">The lines that are shown.</param>
    /// <param name="isAdditive">Whether the scenarios add up to all of them together; null if that is not asked.</param>
    public static IEnumerable<Warning> Of(WhatIf asked, IReadOnlyList<WhatIfLine> lines, bool? isAdditive)
    {
        var stored = In(asked.Now, asked.Now.Catalogue.Today).ToList();
        foreach (var one in stored)
            yield return one;
        foreach (var (scenario, at) in asked.All.Select((scenario, i) => (scenario, PlaceOf(asked, i))))
        {
            foreach (var one in In(scenario, asked.Now.Catalogue.Today).Where(one => !stored.Exists(known => known.Code == one.Code)))
                yield return one with { Pointer = at };
            if (TracedSpend.StaysBehind(asked.Profile.Document, scenario.Year.Profile) is { } detail)
                yield return new Warning(WarningCodes.TracedSpendNotMoved, detail, at);
        }

        if (isAdditive == false)
            yield return new Warning(WarningCodes.NotAdditive,
                "The scenarios' differences do not add up to those of all changes together; look at combined for the whole.", "/combined");
        foreach (var (index, line) in lines.Index())
            foreach (var one in OfLine(asked, line, string.Create(CultureInfo.InvariantCulture, $"/list/{index}")))
                yield return one;
    }

    /// <summary>A pointer into a plan, as one into the answer about it.</summary>
    public static string InPlan(string pointer) => pointer.StartsWith("/profile", StringComparison.Ordinal) ? pointer : $"/plan{pointer}";

    private static IEnumerable<Warning> In(WhatIfScenario scenario, DateOnly today) => Warnings.In(scenario.Year, today).Concat(
        scenario.Plan is { } plan ? PlanWarnings.In(plan.Months).Select(one => one with { Pointer = InPlan(one.Pointer) }) : []);

    private static IEnumerable<Warning> OfLine(WhatIf asked, WhatIfLine line, string at)
    {
        if (line.Now.NotAllowed)
            yield return Warnings.NotAllowed($"{at}/listedPrice");
        for (var i = 0; i < line.Scenarios.Count; i++)
            if (line.Scenarios[i] is { NotAllowed: true } priced && priced.ListedPrice != line.Now.ListedPrice)
                yield return Warnings.NotAllowed($"{at}{PlaceOf(asked, i)}/listedPrice");
    }

    private static string PlaceOf(WhatIf asked, int scenario) => scenario == asked.Scenarios.Count ? "/combined"
        : string.Create(CultureInfo.InvariantCulture, $"/scenarios/{scenario}");
}
