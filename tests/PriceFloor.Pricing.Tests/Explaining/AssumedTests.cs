using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>Each default that lowers a floor is owned up to where an answer leaned on it, and not where the studio said better.</summary>
public sealed class AssumedTests
{
    private static readonly CostProfile s_careful = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 48, DaysPerWeek = 5, HoursPerDay = 8, BenchShare = 0.6m, NormalUse = 0.85m },
        Expenses = [new Expense { Amount = 24000, Per = Per.Year }],
        Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m },
        SoldShare = 0.95m,
        Materials = [new StockMaterial { Material = "rod", Price = 38 }],
    };

    private static readonly Design s_carefulPiece = new()
    {
        Profile = "main",
        Making = new Making { MinutesPerPiece = 45, GoodShare = 0.95m },
        Materials = [new MaterialLine { Material = "rod", Quantity = 1, WasteShare = 0.08m }, new MaterialLine { Name = "gift box", Amount = 1.55m }],
    };

    private static readonly Channel s_carefulShop = new()
    {
        Sells = Sells.Retail,
        Currency = "USD",
        UsualDiscount = 0.05m,
        LossShare = 0.01m,
        SalesTax = new SalesTax { Rate = 0.2m },
        Returns = new Returns { Share = 0.03m },
        Selling = new SellingTime { MinutesPerOrder = 10 },
    };

    [Fact]
    public void A_studio_that_says_everything_leaned_on_nothing()
    {
        Assert.Empty(Assumed.In(s_careful));
        Assert.Empty(Of(s_careful, s_carefulPiece));
        Assert.Empty(Assumed.In(s_carefulShop, "/channel"));
    }

    [Fact]
    public void All_day_at_the_bench_is_an_assumption() =>
        Assert.Equal([new Assumption("/profile/calendar/benchShare", 1m)],
            Assumed.In(s_careful with { Calendar = s_careful.Calendar with { BenchShare = 1 } }));

    [Fact]
    public void Work_for_every_hour_is_an_assumption() =>
        Assert.Equal([new Assumption("/profile/calendar/normalUse", 1m)],
            Assumed.In(s_careful with { Calendar = s_careful.Calendar with { NormalUse = 1 } }));

    [Fact]
    public void Paying_no_tax_is_an_assumption() =>
        Assert.Equal([new Assumption("/profile/tax", "none")], Assumed.In(s_careful with { Tax = new TaxRules { Kind = TaxKind.None } }));

    [Fact]
    public void Selling_every_piece_is_an_assumption_unless_the_design_says_so_itself()
    {
        Assert.Equal([new Assumption("/profile/soldShare", 1m)], Of(s_careful with { SoldShare = 1 }, s_carefulPiece));
        Assert.Empty(Of(s_careful with { SoldShare = 1 }, s_carefulPiece with { SoldShare = 0.9m }));
        Assert.Empty(Of(s_careful with { SoldShare = 1 }, s_carefulPiece with { SoldShare = 1 })); // said, not assumed
    }

    [Fact]
    public void Losing_no_piece_is_an_assumption_in_every_step()
    {
        Assert.Equal([new Assumption("/design/making/goodShare", 1m)],
            Of(s_careful, s_carefulPiece with { Making = new Making { PiecesPerDay = 4 } }));
        var steps = new Making
        {
            Steps = [new Step { HandsOnMinutes = 1 }, new Step { HandsOnMinutes = 1, GoodShare = 0.9m }, new Step { HandsOnMinutes = 1 }],
        };
        Assert.Equal([new Assumption("/design/making/steps/0/goodShare", 1m), new Assumption("/design/making/steps/2/goodShare", 1m)],
            Of(s_careful, s_carefulPiece with { Making = steps }));
    }

    [Fact]
    public void Wasting_nothing_is_an_assumption_about_what_comes_from_stock_only() =>
        Assert.Equal([new Assumption("/design/materials/1/wasteShare", 0m)],
            Of(s_careful, s_carefulPiece with
            {
                Materials = [new MaterialLine { Name = "gift box", Amount = 1 }, new MaterialLine { Material = "rod", Quantity = 1 }],
            }));

    [Fact]
    public void No_sales_tax_and_no_returns_are_assumptions_of_the_channel_that_they_stand_in()
    {
        Assert.Equal([new Assumption("/channels/2/salesTax", 0m)], Assumed.In(s_carefulShop with { SalesTax = new SalesTax() }, "/channels/2"));
        Assert.Equal([new Assumption("/channels/2/returns", 0m)], Assumed.In(s_carefulShop with { Returns = new Returns() }, "/channels/2"));
        Assert.Equal([new Assumption("/channels/2/usualDiscount", 0m)], Assumed.In(s_carefulShop with { UsualDiscount = 0 }, "/channels/2"));
        Assert.Equal([new Assumption("/channels/2/lossShare", 0m)], Assumed.In(s_carefulShop with { LossShare = 0 }, "/channels/2"));
    }

    [Fact]
    public void Selling_in_no_time_is_an_assumption_unless_minutes_or_a_stalls_hours_are_given()
    {
        var quick = s_carefulShop with { Selling = new SellingTime() };
        Assert.Equal([new Assumption("/channel/selling", 0m)], Assumed.In(quick, "/channel"));
        Assert.Equal([new Assumption("/channel/selling", 0m)], Assumed.In(quick with { Stall = new Stall { Cost = 10, Pieces = 5 } }, "/channel"));
        Assert.Empty(Assumed.In(quick with { Stall = new Stall { Hours = 8, Pieces = 5 } }, "/channel"));
        Assert.Empty(Assumed.In(quick with { Selling = new SellingTime { MinutesPerPiece = 1 } }, "/channel"));
    }

    private static IEnumerable<Assumption> Of(CostProfile profile, Design design) =>
        Assumed.In(UnitCost.Of(design, StudioYear.Of(profile, default).Value).Value);
}
