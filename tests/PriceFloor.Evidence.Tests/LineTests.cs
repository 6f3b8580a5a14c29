using PriceFloor.Evidence.Lines;
using Xunit;

namespace PriceFloor.Evidence.Tests;

/// <summary>Lines of the log.</summary>
public sealed class LineTests
{
    [Fact]
    public void An_order_number_is_compared_and_never_written_out()
    {
        Assert.Equal(LineId.OfText("10231"), LineId.OfText(new string(['1', '0', '2', '3', '1'])));
        Assert.NotEqual(LineId.OfText("10231"), LineId.OfText("10232"));
        Assert.NotEqual(LineId.OfText("10231"), LineId.OfNumber(10231));
        Assert.DoesNotContain("10231", $"{LineId.OfText("10231")} {Sold(1, 52.00m)}", StringComparison.Ordinal);
    }

    [Fact]
    public void Three_pieces_for_10_00_keep_their_10_00() =>
        Assert.Equal((10.00m, 10.00m / 3), (Sold(3, 10.00m).Paid, Sold(3, 10.00m).Price));

    [Fact]
    public void Equal_names_are_one_object()
    {
        var pool = new NamePool();
        Assert.Same(pool.Of("RB-014"), pool.Of("xRB-014".AsSpan(1)));
        Assert.Equal((0, 1, 2), (pool.NumberOf("RB-014"), pool.NumberOf("rb-014"), pool.Count));
        Assert.Equal("rb-014", pool[1]);
    }

    [Fact]
    public void What_came_back_can_be_sold_again_unless_the_line_says_no() => Assert.True(Sold(1, 1m).Resale);

    private static Movement Sold(int pieces, decimal paid) => new()
    {
        Source = "web-shop",
        On = new(2027, 3, 14),
        What = MovementKind.Sold,
        Sku = "RB-014",
        Channel = "web",
        Pieces = pieces,
        Paid = paid,
        Order = LineId.OfText("10231"),
        Position = 1,
    };
}
