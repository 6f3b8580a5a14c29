using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

public sealed class RemedyWorkingsTests
{
    [Property(MaxTest = 400, EndSize = 1_000_000)]
    public void Every_way_can_be_redone_from_its_workings(NonNegativeInt seed, NonNegativeInt part)
    {
        var studio = new RandomStudio(seed.Get);
        var profile = studio.Profile();
        var piece = UnitCost.Of(WithFixedTime(studio.Design(), seed.Get), StudioYear.Of(profile, default).Value).Value;
        var channel = studio.Channel();
        var prices = ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value).Value;
        // From a fifth over the floor price down to next to nothing.
        var check = prices.Check(decimal.Max(0.01m, decimal.Round(prices.FloorPrice * (1.2m - part.Get % 120 / 100m), 2))).Value;
        var remedies = Remedies.Of(check).Value;
        var known = Redone.From(All(check, channel).Concat(Workings.Of(remedies)));

        foreach (var remedy in remedies.All.Where(remedy => remedy is { Possible: true, Kind: <= RemedyKind.MoreHours } && !check.CarriesItsShare))
            Assert.Equal(remedy.After, remedy.Kind switch
            {
                RemedyKind.RaiseThePrice => known["floorPrice"],
                RemedyKind.WorkFaster or RemedyKind.NewDesignMinutes => Rounding.Down(known["enoughMinutes"], 2),
                RemedyKind.SpendLess => Rounding.Up(known["benchMustEarn"], 2) - Rounding.Up(known["cut"], 2),
                RemedyKind.CheaperMaterials => Rounding.Down(known["enoughMaterials"], 2),
                RemedyKind.LoseFewer => decimal.Min(1, Rounding.Up(known["enoughGoodShare"], 6)),
                RemedyKind.EarnTaxableElsewhere => Rounding.Up(known["moreTaxableIncome"], 2),
                RemedyKind.EarnNetElsewhere => Rounding.Up(known["moreNetIncome"], 2),
                RemedyKind.NewDesignMaterials => Rounding.Down(known["newMaterials"], 2),
                _ => Rounding.Up(known["weekHours"], 2),
            });
        if (remedies.Balanced is { Parts.Count: > 0 } balanced)
        {
            Near.Equal(known["gap"], balanced.Parts.Sum(one => one.Part));
            Assert.Equal(balanced.BenchMinutes, known.TryGetValue("balancedHours", out var hours) ? Rounding.Down(hours * 60, 2) : null);
            Assert.Equal(balanced.Materials, known.TryGetValue("balancedMaterials", out var materials) ? Rounding.Down(materials, 2) : null);
            Assert.Equal(balanced.Cut, known.TryGetValue("balancedCut", out var cut) ? Rounding.Up(cut, 2) : null);
        }
    }

    [Fact]
    public void The_balanced_proposal_says_each_part()
    {
        // 24.00 of time and 6.00 of materials against 24.00: a gap of 6.00. 2.00 is 5 min; 2.00 of materials; 2.00 x 2,000 h / 0.916667 h = 4,363.64.
        var year = StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = 48000, Per = Per.Year }],
        }, default).Value;
        var piece = UnitCost.Of(
            new Design { Profile = "main", Making = new Making { MinutesPerPiece = 60 }, Materials = [new MaterialLine { Amount = 6 }] }, year).Value;
        var channel = new Channel { Sells = Sells.Wholesale, Currency = "USD" };
        var check = ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value).Value.Check(24).Value;
        var lines = Workings.Of(Remedies.Of(check).Value).TakeLast(6).ToList();
        Assert.Equal(
            ["part1 = gap / 3", "balancedHours = benchHours - part1 / perBenchHour", "part2 = (gap - part1) / 2",
                "balancedMaterials = materials - part2", "part3 = (gap - part1 - part2) / 1",
                "balancedCut = part3 * carryingHours / balancedHours"],
            lines.Select(line => $"{line.Symbol} = {line.Formula}"));
        Assert.Equal([2m, 0.916667m, 2m, 4m, 2m, 4363.636364m], lines.Select(line => Rounding.Nearest(line.Value, 6)));
    }

    [Fact]
    public void A_price_that_costs_money_is_only_worked_out_to_what_it_is_short_of()
    {
        var channel = new Channel { Sells = Sells.Retail, Currency = "USD", CostPerPiece = 5 };
        var year = StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = 48000, Per = Per.Year }],
        }, default).Value;
        var piece = UnitCost.Of(new Design { Profile = "main", Making = new Making { MinutesPerPiece = 60 } }, year).Value;
        var check = ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value).Value.Check(1).Value;
        // 24 - (1 - 5) = 28
        Assert.Equal([("room", -4m), ("sellingCost", 0m), ("gap", 28m)],
            Workings.Of(Remedies.Of(check).Value).Select(line => (line.Symbol, line.Value)));
    }

    private static IEnumerable<Working> All(PriceCheck check, Channel channel) => Workings.Of(check.Prices.Floor.UnitCost.Year)
        .Concat(Workings.Of(check.Prices.Floor.UnitCost)).Concat(Workings.Of(check.Prices.Floor)).Concat(Workings.Of(check.Prices))
        .Concat(Workings.Of(check.Sale)).Concat(Workings.Of(check));

    /// <summary>Some steps that must not be hurried.</summary>
    private static Design WithFixedTime(Design design, int seed) => design.Making.Steps is { } steps
        ? design with { Making = design.Making with { Steps = [.. steps.Select((step, i) => step with { MayBeHurried = (seed >> i) % 3 != 0 })] } }
        : design;
}
