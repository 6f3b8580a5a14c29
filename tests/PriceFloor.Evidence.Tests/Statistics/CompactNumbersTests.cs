using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>Numbers that are kept in few bytes are the numbers that were given.</summary>
public sealed class CompactNumbersTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(7, 7)] // equal ones take no bytes
    [InlineData(0, 255)]
    [InlineData(-3, 253)]
    [InlineData(1, 257)]
    [InlineData(736_000, 801_535)]
    [InlineData(0, 65_536)]
    [InlineData(int.MinValue, int.MaxValue)]
    public void Numbers_come_back_as_they_were(int least, int most)
    {
        int[] numbers = [least, (int)(((long)least + most) / 2), most, least];
        Assert.Equal(numbers, CompactNumbers.Of(numbers));
    }

    [Fact]
    public void Of_none_there_is_none() => Assert.Equal((0, 0), (CompactNumbers.None.Count, CompactNumbers.None.CountBelow(5)));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void As_many_are_below_a_number_as_are_counted_one_by_one(int seed)
    {
        var random = new Random(seed);
        int[] numbers = [.. Enumerable.Range(0, 200).Select(_ => random.Next(-300, 300)).Order()];
        var compact = CompactNumbers.Of(numbers);
        Assert.All(Enumerable.Range(-302, 604), number => Assert.Equal(numbers.Count(one => one < number), compact.CountBelow(number)));
    }
}
