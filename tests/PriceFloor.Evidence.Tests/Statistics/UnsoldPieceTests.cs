using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>What one more piece on the shelf does to the share sold.</summary>
public sealed class UnsoldPieceTests
{
    private const double Bits = 1e-12;

    [Fact]
    public void Where_none_is_given_or_lost_an_unsold_piece_never_raises_the_share_sold() => Attack(10_000, [ShelfEnd.Sold, ShelfEnd.OnShelf],
        (before, after, age) => after.ShareAt(age).Share <= before.ShareAt(age).Share + Bits);

    [Fact]
    public void In_any_case_it_never_lowers_the_share_that_is_still_there() => Attack(10_000, [ShelfEnd.Sold, ShelfEnd.Gone, ShelfEnd.OnShelf],
        (before, after, age) => after.LeftAfter(age) >= before.LeftAfter(age) - Bits);

    /// <summary>A gift weighs less among more pieces, so more are left to be sold later.</summary>
    [Fact]
    public void Where_one_was_given_an_unsold_piece_may_raise_it()
    {
        // Given at 10, sold at 20: S(10) = 1/2, C(20) = 1/2 * 1/1. With one there at 15: S(10) = 2/3, C(20) = 2/3 * 1/1.
        Assert.Equal(1 / 2d, SoldCurve.Of([new(10, ShelfEnd.Gone), new(20, ShelfEnd.Sold)]).ShareAt(20).Share, 12);
        Assert.Equal(2 / 3d, SoldCurve.Of([new(10, ShelfEnd.Gone), new(20, ShelfEnd.Sold), new(15, ShelfEnd.OnShelf)]).ShareAt(20).Share, 12);
    }

    private static void Attack(int times, ShelfEnd[] ends, Func<SoldCurve, SoldCurve, int, bool> holds)
    {
        var random = new Random(16);
        for (var i = 0; i < times; i++)
        {
            var pieces = Enumerable.Range(0, random.Next(1, 12)).Select(_ => new ShelfTime(random.Next(30), ends[random.Next(ends.Length)])).ToList();
            var more = new ShelfTime(random.Next(30), ShelfEnd.OnShelf);
            var (before, after) = (SoldCurve.Of(pieces), SoldCurve.Of([.. pieces, more]));
            for (var age = 0; age < 31; age++)
                Assert.True(holds(before, after, age), $"{string.Join(' ', pieces)} and {more}, at {age}");
        }
    }
}
