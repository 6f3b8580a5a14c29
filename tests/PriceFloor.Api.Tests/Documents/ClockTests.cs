using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>
/// A clock that is set back: revisions stay in order, every moment can still be asked for, and followers do not lose their place.
/// </summary>
public sealed class ClockTests
{
    [Fact]
    public async Task Revisions_stay_in_order_and_each_time_in_an_answer_gives_its_revision()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var cursor = (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString();
        var first = (await studio.Get("/v1/designs/RB-014")).Json.GetProperty("savedAt").GetDateTimeOffset();
        studio.Clock.AdjustTime(studio.Clock.GetUtcNow().AddDays(-1));
        var answer = await studio.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":5}}""");
        var second = answer.Json.GetProperty("savedAt").GetDateTimeOffset();
        Assert.Equal("\"2\"", answer["ETag"]);
        Assert.True(second > first, $"{second:O} is not after {first:O}");

        Assert.Equal(1, await RevisionAt(first));
        Assert.Equal(2, await RevisionAt(second));
        // a day before there was anything
        (await studio.Get($"/v1/designs/RB-014?asOf={studio.Clock.GetUtcNow():yyyy-MM-ddTHH:mm:ssZ}")).IsProblem(404, "not-found");
        Assert.Equal(2, (await studio.Get("/v1/designs/RB-014")).Json.GetProperty("revision").GetInt32());
        Assert.Equal("RB-014@2", (await studio.Get("/v1/designs/RB-014/floor-price")).Json.GetProperty("basis").GetProperty("design").GetString());
        Assert.Equal("RB-014", (await studio.Get($"/v1/floor-changes?since={cursor}")).Json.GetProperty("items")[0].GetProperty("sku").GetString());

        async Task<int> RevisionAt(DateTimeOffset time) =>
            (await studio.Get($"/v1/designs/RB-014?asOf={time.UtcDateTime:yyyy-MM-ddTHH:mm:ss.ffffff}Z")).Json.GetProperty("revision").GetInt32();
    }
}
