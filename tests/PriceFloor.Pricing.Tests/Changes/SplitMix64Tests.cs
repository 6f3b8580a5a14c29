using Xunit;

namespace PriceFloor.Pricing.Tests.Changes;

public sealed class SplitMix64Tests
{
    /// <summary>The vectors of Rosetta Code, "Pseudo-random numbers/Splitmix64", seed 1234567.</summary>
    [Fact]
    public void It_gives_the_published_numbers()
    {
        var random = new SplitMix64(1234567);
        ulong[] published = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        Assert.Equal(published, published.Select(_ => random.Next()));
    }

    [Fact]
    public void Below_a_number_is_the_rest_of_what_it_gives()
    {
        var random = new SplitMix64(1234567);
        Assert.Equal([7, 3, 3, 1, 1], Enumerable.Range(0, 5).Select(_ => random.Below(10))); // the last digits of the numbers above
    }

    [Fact]
    public void Each_number_below_comes_about_as_often()
    {
        var random = new SplitMix64(7);
        var counts = new int[6];
        for (var i = 0; i < 60_000; i++)
            counts[random.Below(6)]++;
        Assert.All(counts, count => Assert.InRange(count, 9_600, 10_400)); // 10,000, standard deviation 91
    }

    /// <summary>The test vectors of the authors' page for FNV-1a, 64 bits.</summary>
    [Theory]
    [InlineData("", 0xcbf29ce484222325)]
    [InlineData("a", 0xaf63dc4c8601ec8c)]
    [InlineData("foobar", 0x85944171f73967e8)]
    public void The_hash_gives_the_published_numbers(string text, ulong published) => Assert.Equal(published, Fnv1A64.Of(text));
}
