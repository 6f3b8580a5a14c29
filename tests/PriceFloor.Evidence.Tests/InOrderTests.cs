using PriceFloor.Evidence.Lines;
using Xunit;

namespace PriceFloor.Evidence.Tests;

/// <summary>Lines that were looked through, sorted or merged are in order, and equals are as they were.</summary>
public sealed class InOrderTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Two_lists_are_one_in_the_order_of_a_stable_sort(int seed)
    {
        var random = new Random(seed);
        var (one, other) = (Lines(random, "one", random.Next(40)), Lines(random, "other", random.Next(40)));
        Assert.Equal(one.Concat(other).OrderBy(line => line.Day), InOrder.Of(InOrder.Of(one, ByDay), InOrder.Of(other, ByDay), ByDay));
        Assert.Equal(one.OrderBy(line => line.Day), InOrder.Of(one, ByDay));
    }

    [Fact]
    public void Of_an_empty_list_and_another_it_is_the_other()
    {
        var lines = Lines(new Random(4), "one", 9);
        Assert.Equal(InOrder.Of(lines, ByDay), InOrder.Of([], InOrder.Of(lines, ByDay), ByDay));
        Assert.Equal(InOrder.Of(lines, ByDay), InOrder.Of(InOrder.Of(lines, ByDay), [], ByDay));
    }

    private static List<(int Day, string Name)> Lines(Random random, string name, int count) =>
        [.. Enumerable.Range(0, count).Select(i => (random.Next(15), $"{name} {i}"))];

    private static int ByDay((int Day, string Name) one, (int Day, string Name) other) => one.Day.CompareTo(other.Day);
}
