using Microsoft.Extensions.Time.Testing;
using PriceFloor.Api.Http;
using Xunit;

namespace PriceFloor.Api.Tests.Http;

/// <summary>A search of the log by the ids of requests goes in order of time.</summary>
public sealed class RequestIdTests
{
    [Fact]
    public void Ids_are_in_the_order_in_which_they_were_given_even_within_a_microsecond_and_when_the_clock_is_set_back()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2040, 1, 2, 9, 0, 0, TimeSpan.Zero));
        var names = new List<string> { RequestIds.Next(clock), RequestIds.Next(clock), RequestIds.Next(clock) };
        clock.AdjustTime(clock.GetUtcNow().AddHours(-3));
        names.AddRange([RequestIds.Next(clock), RequestIds.Next(clock)]);
        Assert.Equal(names.Distinct().Order(StringComparer.Ordinal), names);
    }

    [Fact]
    public void However_many_ask_at_once_each_has_a_name_of_its_own()
    {
        var names = new string[40_000];
        Parallel.For(0, names.Length, i => names[i] = RequestIds.Next(TimeProvider.System));
        Assert.Equal(names.Length, names.Distinct().Count());
    }
}
