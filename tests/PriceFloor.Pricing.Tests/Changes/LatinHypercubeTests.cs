using System.Globalization;
using System.Text;
using Xunit;

namespace PriceFloor.Pricing.Tests.Changes;

public sealed class LatinHypercubeTests
{
    private const string Weeks = "profile:main#/calendar/weeksPerYear";

    /// <summary>The worked example of the model, and the same algorithm in another language (Python, whole numbers of any size).</summary>
    [Theory]
    [InlineData(Weeks, 1024, 0, new[] { 548, 384, 423, 798, 344, 135 })]
    [InlineData("design:RB-014#/making/steps/torch/handsOnMinutes", 1024, 0, new[] { 924, 100, 459, 19, 990, 580 })]
    [InlineData("glass", 1024, 0, new[] { 885, 560, 531, 466, 752, 356 })]
    [InlineData("Glühfarbe", 1024, 0, new[] { 986, 217, 827, 557, 44, 213 })] // UTF-8: the ü is two bytes
    [InlineData(Weeks, 4096, 7, new[] { 2055, 4004, 2887, 3165 })]
    [InlineData("glass", 4096, 7, new[] { 346, 2128, 514, 3915 })]
    public void A_name_has_its_places(string name, int draws, int seed, int[] first) =>
        Assert.Equal(first, LatinHypercube.PlacesOf(name, draws, (ulong)seed).Take(first.Length).Select(place => (int)place));

    [Theory]
    [InlineData(1024)]
    [InlineData(4096)]
    [InlineData(16384)]
    public void Every_part_has_exactly_one_draw(int draws)
    {
        var hypercube = LatinHypercube.Of(["a", "b"], draws, 3);
        for (var number = 0; number < 2; number++)
        {
            var drawn = Enumerable.Range(0, draws).Select(draw => hypercube.ProbabilityOf(number, draw)).Order().ToList();
            Assert.Equal(Enumerable.Range(0, draws).Select(part => (part + 0.5m) / draws), drawn);
            Assert.All(Enumerable.Range(0, draws).CountBy(draw => hypercube.GroupOf(number, draw, 32)),
                group => Assert.Equal(draws / 32, group.Value));
        }
    }

    [Fact]
    public void Another_number_moves_no_draw()
    {
        var (alone, beside) = (LatinHypercube.Of([Weeks], 1024), LatinHypercube.Of(["glass", Weeks, "other"], 1024));
        Assert.All(Enumerable.Range(0, 1024), draw => Assert.Equal(alone.ProbabilityOf(0, draw), beside.ProbabilityOf(1, draw)));
    }

    [Fact]
    public void Two_of_one_name_have_one_draw()
    {
        var together = LatinHypercube.Of(["glass", "glass"], 1024);
        Assert.All(Enumerable.Range(0, 1024), draw => Assert.Equal(together.ProbabilityOf(0, draw), together.ProbabilityOf(1, draw)));
    }

    [Fact]
    public void Two_names_hang_together_by_accident_only()
    {
        var hypercube = LatinHypercube.Of([Weeks, "glass"], 4096);
        var covariance = Enumerable.Range(0, 4096).Sum(draw =>
            (hypercube.ProbabilityOf(0, draw) - 0.5m) * (hypercube.ProbabilityOf(1, draw) - 0.5m)) / 4096;
        Assert.InRange(covariance * 12, -0.05m, 0.05m); // the correlation; its standard deviation is 1/64
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1000)]
    [InlineData(2048)]
    [InlineData(32768)]
    public void Other_numbers_of_draws_are_refused(int draws)
    {
        Assert.False(LatinHypercube.Allows(draws));
        Assert.Throws<ArgumentOutOfRangeException>(() => LatinHypercube.Of([Weeks], draws));
    }

    /// <summary>
    /// The text of 3 x 4,096 draws, one a line, as the same algorithm in another language makes it (Python, fractions): one digit that differs on
    /// some machine, or in some country, is another checksum.
    /// </summary>
    [Fact]
    public void The_draws_have_their_checksum() => Assert.Equal(0xaef9503d731bfb49, Checksum(draws => draws));

    [Fact]
    public void Threads_and_their_order_change_no_draw()
    {
        Assert.Equal(0xaef9503d731bfb49, Checksum(draws => draws.AsParallel().AsOrdered().WithDegreeOfParallelism(4)));
        Assert.Equal(0xaef9503d731bfb49, Checksum(draws => draws.Reverse(), backwards: true));
    }

    [Fact]
    public void A_country_that_writes_commas_changes_no_draw()
    {
        var before = CultureInfo.CurrentCulture;
        var other = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (other.NumberFormat.NumberDecimalSeparator, other.NumberFormat.NegativeSign) = (",", "~");
        try
        {
            CultureInfo.CurrentCulture = other;
            Assert.Equal("1,5", $"{1.5m}");
            The_draws_have_their_checksum();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static ulong Checksum(Func<IEnumerable<int>, IEnumerable<int>> order, bool backwards = false)
    {
        (string Name, RangeDistribution Range)[] numbers =
        [
            (Weeks, RangeDistribution.OneInTenBeyond(42, 46, 47)),
            ("glass", RangeDistribution.OneInTenBeyond(0.95m, 1, 1.12m)),
            ("quote/good", RangeDistribution.OneInTenBeyond(0.75m, 0.87m, 0.93m)),
        ];
        var hypercube = LatinHypercube.Of(numbers.Select(number => number.Name), 4096);
        var text = new StringBuilder();
        foreach (var (index, number) in numbers.Index())
        {
            var drawn = order(Enumerable.Range(0, 4096)).Select(draw => number.Range.At(hypercube.ProbabilityOf(index, draw)));
            foreach (var value in backwards ? drawn.Reverse() : drawn)
                text.Append(Rounding.Trim(value).ToString(CultureInfo.InvariantCulture)).Append('\n');
        }

        return Fnv1A64.Of(text.ToString());
    }
}
