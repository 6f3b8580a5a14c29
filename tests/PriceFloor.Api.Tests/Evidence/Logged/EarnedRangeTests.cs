using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.Evidence.Logged;

/// <summary>
/// What an hour earned has a range wherever the minutes have one, with a learning curve or without. Five loads of ten take 30 minutes a piece:
/// s^2 = 5/4 * 1000/50^2 = 0.5, and Student's t of 4 at 0.95 is 2.1318, so 28.49 to 31.51.
/// </summary>
public sealed class EarnedRangeTests
{
    private const string Loads = """
        1,2027-01-04,CUP,{0},10,300
        2,2027-01-05,CUP,{0},10,320
        3,2027-01-06,CUP,{0},10,280
        4,2027-01-07,CUP,{0},10,310
        5,2027-01-08,CUP,{0},10,290

        """;

    [Theory]
    // 50.00 for 30 minutes; for 31.51; for 28.49.
    [InlineData("""{"minutesPerPiece":25}""", "", "100.00", "95.21", "105.30")]
    // With six more for packing, which nobody timed: 36; 37.51; 34.49.
    [InlineData("""{"steps":[{"name":"torch","handsOnMinutes":25},{"name":"pack","handsOnMinutes":6}]}""", "torch", "83.33", "79.98", "86.98")]
    public async Task Minutes_without_a_learning_curve_give_it_too(string making, string step, string earned, string low, string high)
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.Has("/v1/channels/shop", """{"sells":"retail","currency":"USD"}""");
        await studio.Has("/v1/designs/CUP", $$"""{"profile":"main","making":{{making}}}""");
        await studio.BenchSheet("source=bench-book", "ref,on,sku,step,started,minutes\n" + Loads.Replace("{0}", step, StringComparison.Ordinal));
        await studio.Sheet("source=shop", SentLog.Heading + "1,2027-02-01,CUP,shop,1,50.00,\n");
        var answer = (await studio.Get("/v1/designs/CUP/evidence?to=2027-03-01")).Json;
        Assert.Equal("null", answer.GetProperty("learning").GetRawText());
        var take = answer.GetProperty("take");
        Assert.Equal((earned, low, high), (take.GetProperty("earned").GetRawText(), take.GetProperty("earnedLow").GetRawText(),
            take.GetProperty("earnedHigh").GetRawText()));
        var line = Assert.Single((await studio.Get("/v1/shelf?profile=main&to=2027-03-01")).Json.GetProperty("items").EnumerateArray());
        Assert.Equal((low, high), (line.GetProperty("earnedLow").GetRawText(), line.GetProperty("earnedHigh").GetRawText()));
    }
}
