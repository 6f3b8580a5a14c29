using System.Globalization;
using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

public sealed class FloorPriceTests
{
    /// <summary>Three bench hours a year, so that what they must recover is divided by three.</summary>
    private static readonly CostProfile s_threeHours = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 1, DaysPerWeek = 1, HoursPerDay = 3 },
    };

    [Theory]
    [InlineData(1, "1.00")] // 1.00 / 3 h x 3 h comes out a hair below one
    [InlineData(2, "2.00")] // 2.00 / 3 h x 3 h comes out a hair above two, and must not quote 2.01
    [InlineData(100, "100.00")]
    public void The_dust_of_division_never_costs_a_cent(int mustEarn, string wholesale)
    {
        var profile = s_threeHours with { Expenses = [new Expense { Amount = mustEarn, Per = Per.Year }] };
        Assert.Equal(wholesale, Text(Of(profile, new Making { MinutesPerPiece = 180 }).Wholesale));
    }

    [Fact]
    public void One_good_piece_of_three_carries_all_three()
    {
        // 1.00 to recover in 3 h; three starts of 20 min for one good piece: a whole hour, a third of it: 0.3333, up to 0.34.
        var profile = s_threeHours with { Expenses = [new Expense { Amount = 1, Per = Per.Year }] };
        var piece = Of(profile, new Making { MinutesPerPiece = 20, GoodShare = 1m / 3 });
        Assert.Equal((0.34m, 3m), (piece.Wholesale, Rounding.Settle(piece.UnitCost.PiecesPerYear)));
        // 1.00 of material in each of three starts is 3.00, not 3.01.
        Assert.Equal(3.00m, Of(s_threeHours, new Making { MinutesPerPiece = 20, GoodShare = 1m / 3 }, new MaterialLine { Amount = 1 }).Wholesale);
    }

    [Fact]
    public void A_year_that_holds_1440_pieces_is_not_said_to_hold_1439()
    {
        // 960 h at 40 min a piece; 40 / 60 is a hair above two thirds.
        var profile = s_threeHours with { Calendar = new StudioCalendar { WeeksPerYear = 48, DaysPerWeek = 4, HoursPerDay = 5 } };
        Assert.Equal(1440m, Rounding.Down(Of(profile, new Making { MinutesPerPiece = 40 }).UnitCost.PiecesPerYear, 0));
    }

    [Theory]
    [InlineData("2", "68.58", "68.58")] // 2 x 34.29
    [InlineData("2.5", "85.73", "85.725")] // 2.5 x 34.29 = 85.725: a price is rounded up, a target is compared with as it is
    [InlineData("1", "34.29", "34.29")]
    public void Retail_is_a_multiple_of_the_rounded_wholesale_price(string multiple, string retail, string target)
    {
        var floor = Of(s_threeHours with { PriceRule = new PriceRule { RetailMultiple = Number(multiple) } }, new Making { MinutesPerPiece = 1 },
            new MaterialLine { Amount = 34.285714m });
        Assert.Equal((34.29m, Number(retail), Number(target)), (floor.Wholesale, floor.Retail, floor.Target));
    }

    [Fact]
    public void A_listed_wholesale_price_lifts_the_target_and_nothing_else()
    {
        var piece = Of(s_threeHours, new Making { MinutesPerPiece = 1 }, new MaterialLine { Amount = 30 }).UnitCost;
        var dearer = FloorPrice.Of(piece, 41.5m).Value;
        Assert.Equal((30m, 60m, 41.5m, 83m), (dearer.Wholesale, dearer.Retail, dearer.WholesaleBase, dearer.Target));
        var cheaper = FloorPrice.Of(piece, 29.99m).Value;
        Assert.Equal((30m, 60m), (cheaper.WholesaleBase, cheaper.Target));
    }

    [Theory]
    [InlineData("JPY", "800.2", "801", "1602")]
    [InlineData("KWD", "8.0001", "8.001", "16.002")]
    [InlineData("EUR", "8.0001", "8.01", "16.02")]
    public void Prices_have_the_decimals_of_their_currency(string currency, string materials, string wholesale, string retail)
    {
        var floor = Of(s_threeHours with { Currency = currency }, new Making { MinutesPerPiece = 1 },
            new MaterialLine { Amount = Number(materials) });
        Assert.Equal((wholesale, retail), (Text(floor.Wholesale), Text(floor.Retail)));
    }

    private static FloorPrice Of(CostProfile profile, Making making, params MaterialLine[] materials) =>
        FloorPrice.Of(UnitCost.Of(new Design { Profile = "main", Making = making, Materials = materials },
            StudioYear.Of(profile, default).Value).Value, null).Value;

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
