using System.Reflection;
using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

public sealed class WorkingsTests
{
    private static readonly string[] s_yearsOfTheMachine =
        ["lost1Year1", "book1Year1", "lost1Year2", "book1Year2", "lost1Year3", "book1Year3", "depreciation1"];

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void Every_line_can_be_redone_from_the_lines_above_it(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        CanBeRedone(studio.Profile(), studio.Design(), studio.Channel(), 41.37m);
    }

    [Fact]
    public void The_documented_studio_can_be_redone_line_by_line() =>
        CanBeRedone(ExampleStudio.Profile, ExampleStudio.Pendant, ExampleStudio.WebShop, 58);

    [Fact]
    public void The_workings_read_like_a_sum()
    {
        var year = StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = 540, Per = Per.Month }, new Expense { Amount = 150, Per = Per.Time, Times = 8 }],
        }, default).Value;
        var line = Workings.Of(year).First();
        Assert.Equal(("allocatedExpenses", "540 * 12 + 150 * 8", 7680m), (line.Symbol, line.Formula, line.Value));
    }

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void Every_plan_and_mix_can_be_redone_with_and_without_a_surplus(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var year = StudioYear.Of(studio.Profile(), default).Value;
        var checks = Enumerable.Range(0, 3)
            .Select(_ => Check(UnitCost.Of(studio.Design(), year).Value, studio.Channel(), 90 + seed.Get % 90)).ToList();
        foreach (var surplus in new[]
        {
            null,
            new Surplus { Amount = 1234.56m, Tax = SurplusTax.After },
            new Surplus { Amount = 500, Tax = SurplusTax.Before },
        })
        {
            var plan = YearPlan.Of(year, [.. checks.Select((check, i) => new PlannedLine(check, 100 * i + 900))], surplus, 12.5m).Value;
            var known = Redone.From(Workings.Of(year).Concat(WithTwelveDecimals(Workings.Of(plan))));
            Assert.Equal((plan.BenchMustEarn, plan.Contribution, plan.SurplusBeforeTax),
                (known["benchMustEarnWithSurplus"], known["contribution"], known["surplusBeforeTax"]));
            Assert.Equal((plan.Revenue, plan.Proceeds, plan.Materials, plan.BenchHours),
                (known["revenue"], known["proceeds"], known["planMaterials"], known["planHours"]));
            Assert.True(!plan.Closes || plan.SurplusAfterTax == known["surplusAfterTax"]);
            if (MixBreakEven.Of(year, [.. checks.Select((check, i) => new MixLine(check.Prices.Floor.UnitCost, check.Sale, i + 0.5m))],
                    surplus).Found is not { } mix)
                continue;
            known = Redone.From(Workings.Of(year).Concat(WithTwelveDecimals(Workings.Of(mix))));
            Assert.Equal((mix.MixUnits, mix.BenchHours, mix.Revenue, mix.ShareOfYear),
                (known["mixUnits"], known["unitsHours"], known["revenue"], known["shareOfYear"]));
            Assert.Equal(mix.Units, mix.Lines.Select((_, i) => known[$"units{i + 1}"]));
        }
    }

    [Theory]
    [InlineData(0.25, 10, 7, 0.62)] // seven months of 10, then three years
    [InlineData(0, 3, 12, 0)] // nothing is lost
    [InlineData(1, 3, 12, 0)] // all of it in the first year
    public void A_machine_of_declining_balance_is_followed_year_by_year(double rate, int month, int months, double left)
    {
        // 3,000 with 500 salvage. At 25 %: 3,000 x 0.25 x 7 / 12 = 437.50; 2,562.50: 640.625; 1,921.875: 480.46875; 1,441.40625: 360.3515625.
        var thing = new Equipment
        {
            Name = "Concentrator",
            Cost = 3000,
            Salvage = 500,
            InService = new DateOnly(2024, month == 10 ? 6 : 1, 1),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.DecliningBalance, Rate = (decimal)rate },
        };
        var year = StudioYear.Of(Plain with { YearStart = new DateOnly(2027, 1, 1), Equipment = [thing] }, default).Value;
        var lines = Workings.Of(year).ToList();
        var known = Redone.From(lines);
        Assert.Equal(year.Depreciation, known["depreciation1"]);
        if (left == 0)
        {
            Assert.Equal(0m, known["depreciation1"]);
            return;
        }

        Assert.Equal([437.5m, 2562.5m, 640.625m, 1921.875m, 480.46875m, 1441.40625m, 360.3515625m],
            s_yearsOfTheMachine.Select(symbol => known[symbol]));
        Assert.Equal($"min(3000 * 0.25 * {months} / 12, 3000 - 500)", lines.Single(line => line.Symbol == "lost1Year1").Formula);
        Assert.Equal("what machine 1 (Concentrator) lost in year 2 of its use", lines.Single(line => line.Symbol == "lost1Year2").Label);
    }

    [Fact]
    public void Each_machine_has_its_own_line()
    {
        // (3,200 - 200) x 12 of 96 months; a fifth of 1,000; the life of the third is over.
        Equipment[] things =
        [
            new()
            {
                Cost = 3200,
                Salvage = 200,
                InService = new DateOnly(2025, 4, 1),
                Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 8 },
            },
            new()
            {
                Cost = 1000,
                InService = new DateOnly(2027, 4, 1),
                Depreciation = new DepreciationRule { Method = DepreciationMethod.Percentages, Percentages = [0.2m, 0.8m] },
            },
            new()
            {
                Cost = 1000,
                InService = new DateOnly(2010, 4, 1),
                Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 5 },
            },
        ];
        var year = StudioYear.Of(Plain with { YearStart = new DateOnly(2027, 1, 1), Equipment = things }, default).Value;
        Assert.Equal(
            ["depreciation1 = (3200 - 200) * 12 / (8 * 12)", "depreciation2 = 1000 * 0.2", "depreciation3 = (1000 - 0) * 0 / (5 * 12)",
                "depreciation = depreciation1 + depreciation2 + depreciation3"],
            Workings.Of(year).Where(line => line.Symbol.StartsWith("depreciation", StringComparison.Ordinal))
                .Select(line => $"{line.Symbol} = {line.Formula}"));
        Assert.Equal(575m, Redone.From(Workings.Of(year))["depreciation"]);
    }

    [Fact]
    public void The_profit_is_found_from_the_piece_of_the_tax_that_it_lies_in()
    {
        // 10 % to 10,000, 20 % to 30,000, 40 % beyond. 10,000 leaves 9,000; each unit more 0.80. 20,000 must be left: 10,000 +
        // 11,000 / 0.8 = 23,750, taxed 1,000 + 2,750.
        Levy levy = new() { Bands = [new Band { UpTo = 10000, Rate = 0.1m }, new Band { UpTo = 30000, Rate = 0.2m }, new Band { Rate = 0.4m }] };
        var year = StudioYear.Of(Plain with
        {
            Household = [new HouseholdLine { Amount = 20000, Per = Per.Year }],
            Tax = new TaxRules { Kind = TaxKind.Levies, Levies = [levy] },
        }, default).Value;
        var known = Redone.From(Workings.Of(year));
        Assert.Equal((10000m, 1000m, 9000m, 0.8m, 23750m),
            (known["pieceStart"], known["pieceStartTax"], known["keptAtStart"], known["keptOfOneMore"], known["profitBeforeTax"]));
        Assert.Equal((3750m, 20000m), (known["tax"], known["profitAfterTax"]));
        Assert.Equal(
            ["the tax is a line of 3 straight pieces: the profit at which piece 2 starts, in which the one that is sought lies",
                "from there on, of each further unit, levy 1"],
            Workings.Of(year).Where(line => line.Symbol is "pieceStart" or "ofOneMore1").Select(line => line.Label));
    }

    [Fact]
    public void Where_the_first_piece_of_the_tax_is_enough_it_is_said_shortly()
    {
        string FormulaAt(TaxRules tax) =>
            Workings.Of(StudioYear.Of(Plain with { Household = [new HouseholdLine { Amount = 8000, Per = Per.Year }], Tax = tax }, default).Value)
                .Single(line => line.Symbol == "profitBeforeTax").Formula;
        Assert.Equal("need", FormulaAt(new TaxRules { Kind = TaxKind.None }));
        Assert.Equal("need / keptOfOneMore", FormulaAt(new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m }));
    }

    /// <summary>A formula stands once: what the workings would compute themselves could differ from what is answered.</summary>
    [Fact]
    public void Nothing_is_computed_in_the_workings()
    {
        const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static
            | BindingFlags.DeclaredOnly;
        string[] arithmetic = ["op_Addition", "op_Subtraction", "op_Multiply", "op_Division", "op_UnaryNegation", "Max", "Min", "Sum",
            "RoundUp", "RoundDown"];
        var methods = typeof(Workings).GetNestedTypes(All).Append(typeof(Workings)).SelectMany(type => type.GetMethods(All))
            .Where(method => method.GetMethodBody() is not null).ToList();
        Assert.True(methods.Count > 40);
        foreach (var method in methods)
            Assert.DoesNotContain(Calls(method), called => arithmetic.Contains(called.Name) && called.DeclaringType != typeof(string));
    }

    /// <summary>What a method calls: the operand of each call in its code (28 and 6F), found loosely, since a chance match names no method.</summary>
    private static IEnumerable<MethodBase> Calls(MethodInfo method)
    {
        var code = method.GetMethodBody()!.GetILAsByteArray()!;
        for (var i = 0; i + 4 < code.Length; i++)
            if (code[i] is 0x28 or 0x6F && BitConverter.ToInt32(code, i + 1) is var token && (token >> 24) is 0x06 or 0x0A or 0x2B
                    && Resolved(method, token) is { } called)
                yield return called;
    }

    private static MethodBase? Resolved(MethodInfo method, int token)
    {
        try
        {
            return method.Module.ResolveMethod(token, method.DeclaringType!.GetGenericArguments(), method.GetGenericArguments());
        }
        catch (Exception e) when (e is ArgumentException or BadImageFormatException)
        {
            return null;
        }
    }

    private static CostProfile Plain { get; } = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
    };

    private static void CanBeRedone(CostProfile profile, Design design, Channel channel, decimal price)
    {
        var year = StudioYear.Of(profile, default).Value;
        var piece = UnitCost.Of(design, year).Value;
        var check = Check(piece, channel, price);
        var prices = check.Prices;
        var lines = Workings.Of(year).Concat(Workings.Of(piece)).Concat(Workings.Of(prices.Floor)).Concat(Workings.Of(prices))
            .Concat(Workings.Of(check.Sale)).Concat(Workings.Of(check)).Concat(Workings.Of(PriceParts.Of(check).Value));
        if (BreakEven.Of(piece, check.Sale).Found is { } breakEven)
            lines = lines.Concat(Workings.Of(breakEven)).Concat(Workings.Of(breakEven.At(1234).Value));
        var known = Redone.From(WithTwelveDecimals(lines));

        Assert.Equal((year.RequiredRevenue, year.Profit, year.Depreciation, year.PerWeek),
            (known["requiredRevenue"], known["profitBeforeTax"], known["depreciation"], known["perWeek"]));
        Near.Equal(year.Need, known["profitAfterTax"]);
        Assert.Equal((piece.Floor, piece.PiecesPerYear, prices.Floor.Wholesale, prices.Floor.Retail),
            (known["floor"], known["piecesPerYear"], known["wholesale"], known["retail"]));
        Assert.Equal((check.Sale.Net, check.AboveFloor, check.EarnedPerBenchHour), (known["net"], known["aboveFloor"], known["earnedPerBenchHour"]));
        Assert.Equal((prices.FloorPrice, prices.TargetPrice), (known["floorPrice"], known["targetPrice"]));
        var floorOnChannel = known.GetValueOrDefault("channelFloor", known["floor"]);
        Assert.True(known["atFloorPriceNet"].Reaches(floorOnChannel));
        Assert.True(!known.TryGetValue("oneStepLowerNet", out var lower) || !lower.Reaches(floorOnChannel));
        Assert.True(prices.ReachingTarget is null || known["reachingTargetBeforeTax"].Reaches(known["target"]));
        Assert.True(!known.TryGetValue("belowTargetBeforeTax", out var below) || !below.Reaches(known["target"]));
    }

    private static PriceCheck Check(UnitCost piece, Channel channel, decimal price) =>
        ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value).Value.Check(price).Value;

    /// <summary>The same lines, none of which shows a number of more than 12 decimals.</summary>
    private static IEnumerable<Working> WithTwelveDecimals(IEnumerable<Working> lines) => lines.Select(line =>
    {
        Assert.DoesNotMatch("[.][0-9]{13}", line.Formula);
        return line;
    });
}
