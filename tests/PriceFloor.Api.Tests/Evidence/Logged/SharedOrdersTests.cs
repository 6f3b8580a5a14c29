using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Evidence.Logged;

/// <summary>Which lines are of one order is found in memory, as a plain dictionary of whole marks would find it.</summary>
public sealed class SharedOrdersTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3_000)]
    [InlineData(70_000)] // more come since than are kept apart
    public void Lines_of_one_order_are_found_whether_they_were_loaded_or_came_since(int many)
    {
        var random = new Random(7);
        var marks = Enumerable.Range(0, int.Max(1, many / 2)).Select(_ => (ulong)random.NextInt64(long.MinValue, long.MaxValue)).ToList();
        var rows = Enumerable.Range(1, many).Select(position => new OrderRow(position, 1, marks[random.Next(marks.Count)])).ToList();
        var orders = new SharedOrders(many / 3);
        foreach (var row in rows.Take(many / 3))
            orders.Load(row);
        orders.Settle();
        foreach (var row in rows.Skip(many / 3))
            orders.Add(row);
        var expected = rows.GroupBy(row => row.OrderMark).Where(order => order.Count() > 1)
            .ToDictionary(order => order.Key, order => order.Select(row => row.Position).Order().ToList());
        Assert.All(marks.Distinct(), mark => Assert.Equal(expected.GetValueOrDefault(mark, []), orders.Of([mark], _ => true).Order()));
        var (isShared, shared) = (orders.Sharing, expected.Values.SelectMany(positions => positions).ToHashSet());
        Assert.All(rows, row => Assert.Equal(shared.Contains(row.Position), isShared(row.Position)));
        Assert.False(isShared(many + 1_000_000));
    }

    /// <summary>Marks lie evenly, as hashes do; of others the search still finds what there is.</summary>
    [Fact]
    public void Marks_that_lie_together_are_found()
    {
        var orders = new SharedOrders(4_000);
        for (var position = 1; position <= 4_000; position++)
            orders.Load(new OrderRow(position, 1, (ulong)((position + 1) / 2) << 32));
        orders.Settle();
        Assert.Equal([1L, 2L], orders.Of([1UL << 32], _ => true).Order());
        Assert.Equal([3_999L, 4_000L], orders.Of([2_000UL << 32], _ => true).Order());
        Assert.Equal([3_999L], orders.Of([2_000UL << 32], position => position != 4_000));
        Assert.Empty(orders.Of([2_001UL << 32, 0, ulong.MaxValue], _ => true));
    }

    [Fact]
    public void What_was_handed_out_stays_as_it_was()
    {
        var orders = new SharedOrders(0);
        var before = orders.Sharing;
        orders.Add(new OrderRow(1, 1, 5UL << 32));
        orders.Add(new OrderRow(2, 2, 5UL << 32));
        Assert.Equal((false, true), (before(1), orders.Sharing(1)));
    }
}
