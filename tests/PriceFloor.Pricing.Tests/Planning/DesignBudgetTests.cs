using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

public sealed class DesignBudgetTests
{
    [Fact]
    public void A_price_pays_for_so_many_minutes_or_so_much_material()
    {
        // 60,000 over 2,000 hours is 30.00 an hour. 56.00 less 8.00 of materials: 48 / 30 = 1.6 h, 96 min. 96 min cost 48.00: 8.00 are left.
        Assert.Equal(96m, Of(56, null, 8).Minutes);
        Assert.Equal(8m, Of(56, 96, null).Materials);
    }

    [Fact]
    public void What_cannot_be_says_why()
    {
        Assert.Equal((null, "price-below-materials"), (Of(8, null, 8).Minutes, Of(8, null, 8).Reason?.Word));
        Assert.Equal((null, "time-takes-it-all"), (Of(56, 113, null).Materials, Of(56, 113, null).Reason?.Word)); // 113 min are 56.50
        Assert.Equal((0m, null), (Of(56, 112, null).Materials, Of(56, 112, null).Reason));
        Assert.Equal("nothing-reaches-the-studio",
            DesignBudget.Of(Year(60000), Sale.Of(5, new Channel { Sells = Sells.Retail, Currency = "USD", CostPerPiece = 6 }), null, 0).Value.Reason);
        Assert.Equal((null, "bench-must-earn-nothing"),
            (DesignBudget.Of(Year(0), Wholesale(5), null, 1).Value.Minutes, DesignBudget.Of(Year(0), Wholesale(5), null, 1).Value.Reason?.Word));
    }

    [Fact]
    public void Selling_time_is_paid_for_before_any_time_to_make_it_in()
    {
        // 30.00 an hour, 24 minutes of selling are 12.00: 56 - 8 - 12 = 36 are 72 min; 72 min and selling leave 8.00; 12.00 for selling leave none.
        var slow = new Channel { Sells = Sells.Retail, Currency = "USD", Selling = new SellingTime { MinutesPerPiece = 24 } };
        Assert.Equal(72m, DesignBudget.Of(Year(60000), Sale.Of(56, slow), null, 8).Value.Minutes);
        Assert.Equal(8m, DesignBudget.Of(Year(60000), Sale.Of(56, slow), 72, null).Value.Materials);
        Assert.Equal("selling-takes-it-all", DesignBudget.Of(Year(60000), Sale.Of(20, slow), null, 8).Value.Reason!.Word);
        Assert.Equal(["sellingHours = (0 / 1 + 24) / 60 = 0.4", "room = net - 8 = 48", "minutes = (room / perBenchHour - sellingHours) * 60 = 72"],
            Workings.Of(DesignBudget.Of(Year(60000), Sale.Of(56, slow), null, 8).Value)
                .Select(line => $"{line.Symbol} = {line.Formula} = {Rounding.Trim(Rounding.Settle(line.Value))}"));
    }

    [Fact]
    public void A_net_of_just_nothing_does_not_reach_the_studio()
    {
        var atCost = Sale.Of(6, new Channel { Sells = Sells.Retail, Currency = "USD", CostPerPiece = 6 });
        var (byMaterials, byMinutes) = (DesignBudget.Of(Year(60000), atCost, null, 0).Value, DesignBudget.Of(Year(60000), atCost, 0, null).Value);
        Assert.Equal((null, 0m, "nothing-reaches-the-studio"), (byMaterials.Minutes, byMaterials.Room, byMaterials.Reason?.Word));
        Assert.Equal((null, 0m, "nothing-reaches-the-studio"), (byMinutes.Materials, byMinutes.Room, byMinutes.Reason?.Word));
    }

    [Fact]
    public void The_workings_take_what_was_given_from_the_net()
    {
        // 30.00 an hour: 56 - 8 = 48 are 96 min; 90 min take 45 of 56: 11.
        Assert.Equal(["room = net - 8 = 48", "minutes = room / perBenchHour * 60 = 96"], WorkingsOf(56, 0, null, 8));
        Assert.Equal(["room = net - perBenchHour * 90 / 60 = 11"], WorkingsOf(56, 0, 90, null));
    }

    [Fact]
    public void The_workings_do_so_too_where_nothing_is_left()
    {
        Assert.Equal(["room = net - 8 = 0"], WorkingsOf(8, 0, null, 8));
        // A net of 5 - 6 = -1; 8 of materials make it -9; 90 min at 30.00 are 45 and make it -46.
        Assert.Equal(["room = net - 8 = -9"], WorkingsOf(5, 6, null, 8));
        Assert.Equal(["room = net - perBenchHour * 90 / 60 = -46"], WorkingsOf(5, 6, 90, null));
    }

    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void A_piece_that_takes_just_its_budget_has_the_net_for_its_floor_and_a_hair_more_is_too_much(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var (profile, channel) = (studio.Profile(), studio.Channel());
        var year = StudioYear.Of(profile, default).Value;
        var sale = Sale.Of(40 + seed.Get % 50, channel);
        var budget = DesignBudget.Of(year, sale, null, 5.25m).Value;
        if (budget.Minutes is not { } minutes || Rounding.Down(minutes, 2) == 0)
            return;

        var down = Rounding.Down(minutes, 2);
        Assert.True(sale.Net.Reaches(FloorOf(sale, year, down, 5.25m)));
        Assert.False(sale.Net.Reaches(FloorOf(sale, year, down + 0.01m, 5.25m)));
        var materials = DesignBudget.Of(year, sale, down, null).Value.Materials!.Value;
        Assert.True(sale.Net.Reaches(FloorOf(sale, year, down, Rounding.Down(materials, 2))));
        Assert.False(sale.Net.Reaches(FloorOf(sale, year, down, Rounding.Down(materials, 2) + 0.01m)));
    }

    /// <summary>The floor of a design that takes so much a sold piece: of a finished one the sold share of it.</summary>
    private static decimal FloorOf(Sale sale, StudioYear year, decimal minutes, decimal materials) => new ChannelFloor(UnitCost.Of(new Design
    {
        Profile = "main",
        Making = new Making { MinutesPerPiece = minutes * year.Profile.SoldShare },
        Materials = [new MaterialLine { Amount = materials * year.Profile.SoldShare }],
    }, year).Value, sale.Channel).Floor;

    /// <summary>The lines of the budget itself, each redone from those of the year and the sale above it.</summary>
    private static IEnumerable<string> WorkingsOf(decimal price, decimal packing, decimal? minutes, decimal? materials)
    {
        var channel = new Channel { Sells = Sells.Wholesale, Currency = "USD", CostPerPiece = packing };
        var budget = DesignBudget.Of(Year(60000), Sale.Of(price, channel), minutes, materials).Value;
        Redone.From(Workings.Of(budget.Year).Concat(Workings.Of(budget.Sale)).Concat(Workings.Of(budget)));
        return Workings.Of(budget).Select(line => $"{line.Symbol} = {line.Formula} = {Rounding.Trim(line.Value)}");
    }

    private static DesignBudget Of(decimal price, decimal? minutes, decimal? materials) =>
        DesignBudget.Of(Year(60000), Wholesale(price), minutes, materials).Value;

    private static Sale Wholesale(decimal price) => Sale.Of(price, new Channel { Sells = Sells.Wholesale, Currency = "USD" });

    private static StudioYear Year(decimal expenses) => StudioYear.Of(new CostProfile
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = expenses, Per = Per.Year }],
    }, default).Value;
}
