using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

/// <summary>The best mix of a year whose pieces are sold in seasons: what is sold by a month must be made by then.</summary>
public sealed class BestInSeasonTests
{
    private static readonly Season s_easter = Season.Of([0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0])!;
    private static readonly Season s_christmas = Season.Of([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1])!;

    [Fact]
    public void What_is_sold_in_March_has_the_hours_of_three_months()
    {
        // 1,200 hours, 100 a month. An egg of 1 h leaves 40.00 and is sold in March, an ornament of 1 h leaves 30.00 and is sold in December.
        // Through March there are 300 hours: 300 eggs, and 900 ornaments in the other 900. Without months it would be 1,200 eggs.
        var lines = new[] { Line("egg", 60, 40, s_easter), Line("ornament", 60, 30, s_christmas) };
        var best = Best(lines, Season.Even);
        Assert.Equal([300m, 900m], best.Plan.Lines.Select(line => line.Units));
        Assert.True(best.Mix.Proven);
        var march = Use(best, 3);
        // One hour more through March is an egg for an ornament: 40 - 30. One hour more in December is an ornament.
        Assert.Equal((300m, 300m, true, 10m), (march.Used, march.Available, march.Binds, march.WorthOfOneMore));
        Assert.Equal((1200m, 30m), (best.Mix.Uses[0].Used, best.Mix.Uses[0].WorthOfOneMore));
        Assert.Equal((0m, false), (Use(best, 2).Used, Use(best, 2).Binds));
        Assert.Equal([1200m, 0m], Best(lines, null).Plan.Lines.Select(line => line.Units));
        var redone = Redone.From(Workings.Of(best.Plan.Year).Concat(Workings.Of(best)));
        Assert.Equal((0m, 300m, 300m), (redone["hoursThroughMonth2"], redone["hoursThroughMonth3"], redone["hoursThroughMonth11"]));
    }

    [Fact]
    public void A_holiday_leaves_no_hours_and_a_minimum_past_them_is_named()
    {
        // Work only from June on: nothing can be made for March.
        var fromJune = Season.Of([0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1])!;
        Assert.Equal([0m, 1200m], Best([Line("egg", 60, 40, s_easter), Line("ornament", 60, 30, s_christmas)], fromJune)
            .Plan.Lines.Select(line => line.Units));
        var fault = Assert.Single(BestYear.Of(Year, [Line("egg", 60, 40, s_easter, least: 1)], null, 0, MixGoal.MaximumSurplus, fromJune).Faults);
        Assert.Equal("infeasible", fault.Code);
        Assert.Contains("bench hours through month 3", fault.Detail, StringComparison.Ordinal);
    }

    [Property(MaxTest = 150, EndSize = 1_000_000)]
    public void No_other_mix_that_the_months_of_its_plan_allow_leaves_more(NonNegativeInt seed)
    {
        var random = new Random(seed.Get);
        Season? SomeSeason() => random.Next(4) == 0 ? null
            : Season.Of([.. Enumerable.Range(0, 12).Select(month => (decimal)random.Next(month == 11 ? 1 : 0, 4))]);
        var work = SomeSeason() ?? Season.Even;
        var lines = Enumerable.Range(0, 3).Select(i => Line($"{(char)('a' + i)}", random.Next(1800, 15_000), random.Next(-200, 3000), SomeSeason(),
            most: random.Next(5))).ToArray();
        var best = Best(lines, work);
        Assert.True(best.Mix.Proven);
        Assert.True(CanBeMade(lines, work, [.. best.Plan.Lines.Select(line => line.Units)]));
        var most = (from a in Pieces(lines[0]) from b in Pieces(lines[1]) from c in Pieces(lines[2]) select new[] { a, b, c })
            .Where(units => CanBeMade(lines, work, units)).Max(units => lines.Zip(units, (line, made) => Leaves(line) * made).Sum());
        Assert.Equal(Rounding.Settle(most), Rounding.Settle(best.Plan.Contribution));
    }

    private static StudioYear Year { get; } = StudioYear.Of(ByMonth.SmallYear.Profile, default).Value;

    private static decimal Leaves(OfferedLine line) => line.Check.Sale.Net - line.Check.Prices.Floor.UnitCost.Materials;

    private static IEnumerable<decimal> Pieces(OfferedLine line) => Enumerable.Range(0, (int)line.Maximum! + 1).Select(pieces => (decimal)pieces);

    /// <summary>Asks the months of a plan, which know nothing of the solver.</summary>
    private static bool CanBeMade(OfferedLine[] lines, Season work, decimal[] units)
    {
        var plan = new Plan
        {
            Profile = "main",
            Lines = [.. lines.Zip(units, (line, made) => new PlanLine
            {
                Sku = line.Key,
                Channel = "stall",
                Units = made,
                Season = line.Season is null ? null : line.Key,
            })],
            Seasons = lines.Where(line => line.Season is not null).ToDictionary(line => line.Key, line => line.Season!.Weights),
            Work = work.Weights,
        };
        var months = YearByMonth.Of(Year, plan, [.. lines.Zip(units, (line, made) => new PlannedLine(line.Check, made))]).Value;
        return months.WithinCapacity && !months.NeedsStockAtStart;
    }

    private static ConstraintUsage Use(BestYear best, int month) =>
        best.Mix.Uses[1 + best.Resources.Index().Single(one => one.Item.Month == month).Index];

    private static BestYear Best(OfferedLine[] lines, Season? work) => BestYear.Of(Year, lines, null, 0, MixGoal.MaximumSurplus, work).Value;

    /// <summary>A piece of so many minutes that leaves so much, sold where nothing is taken.</summary>
    private static OfferedLine Line(string key, decimal minutes, decimal leaves, Season? season, decimal least = 0, decimal? most = null)
    {
        var materials = decimal.Max(1, 1 - leaves); // a price is above zero
        var piece = UnitCost.Of(new Design
        {
            Profile = "main",
            Making = new Making { MinutesPerPiece = minutes },
            Materials = [new MaterialLine { Amount = materials }],
        }, Year).Value;
        var check = ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(ByMonth.SmallYear.Stall).Value).Value
            .Check(leaves + materials).Value;
        return new OfferedLine(key, check, least, most, season);
    }
}
