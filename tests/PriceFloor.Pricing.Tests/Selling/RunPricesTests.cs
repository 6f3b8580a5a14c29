using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

/// <summary>The worked example of the model: runs of the river drop pendant for the web shop.</summary>
public sealed class RunPricesTests
{
    [Theory]
    [InlineData(1, "84.60", "1.3420", "89.65", "89.65", "0")]
    [InlineData(2, "66.59", "1.0503", "140.50", "70.25", "0.216")]
    [InlineData(6, "54.59", "0.8559", "343.91", "57.32", "0.36")]
    [InlineData(12, "51.58", "0.8073", "649.03", "54.09", "0.396")]
    [InlineData(24, "51.00", "0.7969", "1281.94", "53.42", "0.404")]
    [InlineData(48, "50.25", "0.7847", "2525.09", "52.61", "0.413")]
    [InlineData(100, "49.82", "0.7778", "5214.79", "52.15", "0.418")]
    public void The_ladder_is_as_worked(int pieces, string floor, string hours, string total, string perPiece, string earned)
    {
        var price = Assert.Single(Ladder([pieces]));
        Assert.Equal(Of(floor), Rounding.Up(price.Floor, 2));
        Assert.Equal(Of(hours), Rounding.Nearest(price.Run.BenchHours / pieces, 4));
        Assert.Equal((Of(total), Of(perPiece)), (price.Order.FloorTotal, Rounding.Up(price.Order.PerPiece, 2)));
        Assert.Equal(Of(earned), price.Earned);
    }

    [Fact]
    public void Where_one_piece_fewer_saves_a_load_it_is_said()
    {
        // 24 pieces enter the kiln of 24 as 24.49: two loads; 23 as 23.47: one, and a floor of 50.15.
        var ladder = Ladder([23, 24, 25, 1]);
        Assert.Equal([null, 23, null, null], ladder.Select(price => price.QuantityJustBelow));
        Assert.Equal(50.15m, Rounding.Up(ladder[0].Floor, 2));
    }

    [Fact]
    public void What_may_be_taken_off_the_listed_price_keeps_the_floor_total()
    {
        // 24 * 58.00 = 1,392.00; 1,281.94 is 92.093 % of it: 7.9 %. One alone falls short.
        var ladder = Ladder([1, 24]);
        Assert.Null(ladder[0].MostOff(58));
        Assert.Equal(0.079m, ladder[1].MostOff(58));
        Assert.Equal(0m, ladder[0].MostOff(89.65m));
    }

    [Fact]
    public void To_be_sure_of_them_costs_more()
    {
        var (usual, sure) = (Ladder([6])[0], RunPrices.Of(WorkedStudio.Piece("RB-014"), WorkedStudio.Terms("web"), [6], 0.95m).Value.Items[0]);
        Assert.Equal(sure.Run.Starts, sure.Run.StartsToBeSure);
        Assert.True(sure.Order.FloorTotal > usual.Order.FloorTotal && usual.Run.Starts < sure.Run.Starts);
    }

    private static IReadOnlyList<RunPrice> Ladder(int[] quantities) =>
        RunPrices.Of(WorkedStudio.Piece("RB-014"), WorkedStudio.Terms("web"), quantities, null).Value.Items;

    private static decimal Of(string number) => decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture);
}
