using System.Text.RegularExpressions;
using PriceFloor.Pricing.Planning;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    /// <summary>After the workings of the check: what each way to mend the price is computed from, then what the balanced proposal gives to each.</summary>
    public static IEnumerable<Working> Of(Remedies remedies)
    {
        var figures = remedies.Figures;
        yield return new("room", "what the price leaves for bench time", "net - materials + secondsCredit", figures.Room);
        yield return new("gap", "what the price is short of", "max(0, benchCost + materials - secondsCredit - net)", figures.Gap);
        yield return new("enoughPrice", "the channel's smallest allowed price whose net reaches the floor", Number(figures.Check.Prices.FloorPrice), figures.Check.Prices.FloorPrice);
        if (!figures.CanBeHelped)
            yield break;
        foreach (var line in OfTime(figures).Concat(OfCosts(figures)).Concat(OfYield(figures)).Concat(OfIncome(figures)).Concat(OfWeek(figures)).Concat(OfBalance(remedies.Balanced)))
            yield return line;
    }

    private static IEnumerable<Working> OfTime(RemedyFigures figures)
    {
        var steps = (figures.Piece.Design.Making.Steps ?? []).Index().Where(step => !step.Item.MayBeHurried).Select(step => $"entering{step.Index + 1} * {Number(step.Item.HandsOnMinutes)} / {Number(step.Item.BatchSize)}");
        yield return new("fixedHours", "bench hours a sold piece that must not be shortened", $"({Sum(steps)}) / 60 / {Number(figures.Piece.SoldShare)}", figures.FixedHours);
        if (figures.EnoughHours is not { } hours)
            yield break;
        yield return new("enoughHours", "bench hours a sold piece that the price pays for", "room / perBenchHour", hours);
        yield return new("enoughMinutes", "the same in minutes", "enoughHours * 60", hours * 60);
    }

    private static IEnumerable<Working> OfCosts(RemedyFigures figures)
    {
        yield return new("cut", "less for bench time to recover, a year", "max(0, benchMustEarn - room * benchHoursOfTheYear / benchHours)", figures.Cut);
        yield return new("enoughForBench", "what the price lets bench time recover, a year", "benchMustEarn - cut", figures.Year.Pool - figures.Cut);
        yield return new("enoughMaterials", "materials a sold piece that the price allows", "materials - gap", figures.EnoughMaterials);
        yield return new("newMaterials", "materials that a new design with these minutes may use", "net + secondsCredit - benchCost", figures.NewMaterials);
    }

    private static IEnumerable<Working> OfYield(RemedyFigures figures)
    {
        if (figures.BetterYield is not { } better)
            yield break;
        foreach (var line in Prefixed("flawless", "with no such loss: ", Of(better.Flawless).TakeWhile(line => line.Symbol != "floor")))
            yield return line;
        yield return new("flawlessCost", $"what a piece must bring in where nothing is lost{(figures.WorstStep is { } step ? $" in step {step + 1}" : "")}", "flawlessBenchCost + flawlessMaterials - flawlessSecondsCredit", better.FlawlessCost);
        yield return new("costPerStart", "what each further start there costs", $"(benchCost + materials - secondsCredit - flawlessCost) / (1 / {Number(figures.WorstShare)} - 1)", better.PerStart);
        if (better.Starts is not { } starts)
            yield break;
        yield return new("enoughStarts", "starts there for each good piece that the price pays for", "1 + (net - flawlessCost) / costPerStart", starts);
        yield return new("enoughGoodShare", "the good share that is enough", "1 / enoughStarts", 1 / starts);
    }

    private static IEnumerable<Working> OfIncome(RemedyFigures figures)
    {
        yield return new("moreTaxableIncome", "further taxable income, a year", "cut", figures.Cut);
        yield return new("profitLeft", "the profit that is still needed after the cut", "max(0, profitBeforeTax - cut)", figures.ProfitLeft);
        foreach (var line in Prefixed("lower", "on the lower profit: ", OfLevies(figures.Year, figures.ProfitLeft, "profitLeft")))
            yield return line;
        yield return new("leftAfterTax", "what that profit leaves after tax", "profitLeft - lowerTax", figures.LeftAfterTax);
        yield return new("moreNetIncome", "further income already taxed, a year", figures.Cut == 0 ? "0"
            : figures.Year.Profile.Pay is null ? "need - leftAfterTax + max(0, netIncome - household)" : "need - leftAfterTax", figures.MoreNetIncome);
    }

    private static IEnumerable<Working> OfWeek(RemedyFigures figures)
    {
        var calendar = figures.Year.Profile.Calendar;
        var needed = figures.HelperHours > 0 ? $"(benchMustEarn * benchHours / room - {Number(figures.HelperHours)})" : "benchMustEarn * benchHours / room";
        if (figures.WeekHours is { } week)
            yield return new("weekHours", "working hours a week, with the same weeks", $"{needed} * {Number(calendar.DaysPerWeek)} / (workdays * {Number(calendar.BenchShare)})", week);
    }

    private static IEnumerable<Working> OfBalance(BalancedRemedy? balanced)
    {
        var parts = balanced?.Parts ?? [];
        foreach (var (i, part) in parts.Index())
        {
            var left = i == 0 ? "gap" : $"(gap{string.Concat(Enumerable.Range(1, i).Select(earlier => $" - part{earlier}"))})";
            var name = $"part{i + 1}";
            yield return new(name, $"of the gap closed by {part.Way switch { RemedyKind.WorkFaster => "faster work", RemedyKind.CheaperMaterials => "cheaper materials", _ => "lower costs" }}",
                $"{left} / {parts.Count - i}", part.Part);
            yield return part.Way switch
            {
                RemedyKind.WorkFaster => new("balancedHours", "bench hours a sold piece in the balanced proposal", $"benchHours - {name} / perBenchHour", part.Figure),
                RemedyKind.CheaperMaterials => new("balancedMaterials", "materials a sold piece in the balanced proposal", $"materials - {name}", part.Figure),
                _ => new("balancedCut", "less for bench time to recover in the balanced proposal", $"{name} * benchHoursOfTheYear / {(parts.Any(one => one.Way == RemedyKind.WorkFaster) ? "balancedHours" : "benchHours")}", part.Figure),
            };
        }
    }

    /// <summary>The same lines of another case: their own symbols get a prefix, those of lines before them stay.</summary>
    private static IEnumerable<Working> Prefixed(string prefix, string words, IEnumerable<Working> lines)
    {
        var own = new HashSet<string>();
        foreach (var line in lines.ToList())
        {
            var formula = Symbols().Replace(line.Formula, symbol => own.Contains(symbol.Value) ? WithPrefix(symbol.Value) : symbol.Value);
            own.Add(line.Symbol);
            yield return line with { Symbol = WithPrefix(line.Symbol), Label = words + line.Label, Formula = formula };
        }

        string WithPrefix(string symbol) => $"{prefix}{char.ToUpperInvariant(symbol[0])}{symbol[1..]}";
    }

    [GeneratedRegex("[A-Za-z][A-Za-z0-9]*", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Symbols();
}
