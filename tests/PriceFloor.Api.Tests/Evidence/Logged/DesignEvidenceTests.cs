using System.Text;
using System.Text.Json;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.Evidence.Logged;

/// <summary>What the stored log says of a design: the worked example of the model, over HTTP.</summary>
public sealed class DesignEvidenceTests
{
    private static readonly string s_path = $"/v1/designs/RB-014/evidence?channel=web&to={RiverDropLog.LastDay}";

    [Fact]
    public async Task The_worked_example_has_its_figures()
    {
        await using var studio = await RiverDropLog.Logged();
        var answer = await studio.Get(s_path);
        Assert.Equal(
            [
                """{"pointer":"#/making/steps","value":48.20,"low":47.67,"high":48.73,"observations":12,"of":"bench-log entries","stored":38,"""
                    + "\"says\":\"stored-too-low\",\"floorWith\":44.37,\"method\":\"learning-curve\"}",
                """{"pointer":"#/making/steps/1/goodShare","value":0.8695,"low":0.7971,"high":0.9295,"observations":144,"of":"pieces started","""
                    + "\"worth\":67,\"stored\":0.95,\"says\":\"stored-too-high\",\"floorWith\":39.68}",
                """{"pointer":"#/soldShare","value":0.8610,"low":0.7895,"high":0.9177,"observations":126,"of":"pieces made","stored":1,"""
                    + "\"says\":\"stored-too-high\",\"floorWith\":42.18}",
            ],
            answer.Json.GetProperty("findings").EnumerateArray().Select(finding => finding.GetRawText()));
        Assert.Equal("""{"stored":36.32,"asFound":56.31}""", answer.Json.GetProperty("floor").GetRawText());
        Assert.Equal("""{"pieces":90,"net":4324.23,"contribution":3602.92,"earned":37.31,"earnedLow":36.90,"earnedHigh":37.72,"""
            + "\"earnedStored\":62.60,\"perBenchHour\":45.00}", answer.Json.GetProperty("take").GetRawText());
        Assert.Equal("""{"rate":0.9257,"rateLow":0.9194,"rateHigh":0.9320,"first":77.91,"today":48.20,"nextRun":47.37,"cost":526.83}""",
            answer.Json.GetProperty("learning").GetRawText());
        var days = answer.Json.GetProperty("days");
        Assert.Equal("83 0.7143 31 by-piece", $"{days.GetProperty("daysToSell")} {days.GetProperty("sellThrough").GetRawText()} "
            + $"{days.GetProperty("onHand")} {days.GetProperty("matched").GetString()}");
        Assert.Equal(["fails-in-lots", "young-stock"],
            answer.Json.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString()));
        // 36.90 to 37.72 of 45.00; 60.51 is more than 52.00 * 1.15; 39.95 minutes were never reached; as wanted as the shelf's middle, itself.
        Assert.Equal("""{"because":["#/findings/0","#/take"],"word":"redesign"}""", answer.Json.GetProperty("decision").GetRawText());
        Assert.Equal("""{"profile":"main@1","design":"RB-014@1","channels":["web@1"],"log":"m221+b12"}""",
            answer.Json.GetProperty("basis").GetRawText());
    }

    [Fact]
    public async Task A_hundred_pieces_on_and_a_run_of_thirty_are_told_when_asked_for()
    {
        await using var studio = await RiverDropLog.Logged();
        // y(244) = 45.904: (45 * 45.90/60 + 6)/(0.8695 * 0.8610) = 40.425/0.7486395 = 53.9980, up 54.00.
        Assert.Equal("""{"pieces":100,"minutes":45.90,"floor":54.00}""",
            (await studio.Get(s_path + "&at=100&run=30")).Json.GetProperty("learning").GetProperty("at").GetRawText());
        var workings = (await studio.Get(s_path + "&workings=true")).Json.GetProperty("workings");
        Assert.True(workings.GetArrayLength() > 5);
    }

    [Fact]
    public async Task The_same_lines_as_sheets_have_the_same_findings_to_the_byte()
    {
        await using var studio = await RiverDropLog.Logged();
        using var form = new MultipartFormDataContent();
        form.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(RiverDropLog.Movements)), "movements", "movements.csv");
        form.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(RiverDropLog.Bench)), "bench", "bench.csv");
        using var response = await studio.Client.PostAsync($"/v1/evidence?to={RiverDropLog.LastDay}&at=7", form, Studio.Cancellation);
        var sent = (await Answer.Of(response)).Json;
        var stored = (await studio.Get($"/v1/designs/RB-014/evidence?to={RiverDropLog.LastDay}&at=7")).Json;
        foreach (var part in new[] { "findings", "floor", "draft", "learning", "days", "warnings" })
            Assert.Equal(sent.GetProperty("designs")[0].GetProperty(part).GetRawText(), stored.GetProperty(part).GetRawText());
        foreach (var field in stored.GetProperty("take").EnumerateObject())
            Assert.Equal(sent.GetProperty("designs")[0].GetProperty("take").GetProperty(field.Name).GetRawText(), field.Value.GetRawText());

        var channel = (await studio.Get($"/v1/channels/web/evidence?to={RiverDropLog.LastDay}")).Json;
        foreach (var part in new[] { "findings", "draft", "warnings" })
            Assert.Equal(sent.GetProperty("channels")[0].GetProperty(part).GetRawText(), channel.GetProperty(part).GetRawText());
        var profile = (await studio.Get($"/v1/profiles/main/evidence?to={RiverDropLog.LastDay}")).Json;
        foreach (var part in new[] { "findings", "draft" })
            Assert.Equal(sent.GetProperty("profile").GetProperty(part).GetRawText(), profile.GetProperty(part).GetRawText());
    }

    [Fact]
    public async Task The_draft_once_stored_agrees()
    {
        await using var studio = await RiverDropLog.Logged();
        var before = (await studio.Get(s_path)).Json;
        await studio.Has("/v1/designs/RB-014", before.GetProperty("draft").GetRawText());
        var after = (await studio.Get(s_path)).Json;
        Assert.All(after.GetProperty("findings").EnumerateArray(), finding => Assert.Equal("agrees", finding.GetProperty("says").GetString()));
        Assert.Equal(Ends(before), Ends(after));
        Assert.Equal("""{"stored":56.31,"asFound":56.31}""", after.GetProperty("floor").GetRawText());

        static IEnumerable<string> Ends(JsonElement answer) => answer.GetProperty("findings").EnumerateArray()
            .Select(finding => $"{finding.GetProperty("low").GetRawText()} {finding.GetProperty("high").GetRawText()}");
    }

    [Fact]
    public async Task Lines_in_pieces_and_out_of_order_say_the_same()
    {
        await using var studio = await RiverDropLog.Logged();
        await using var other = new Studio();
        await other.HasTheRiverDrop();
        foreach (var part in RiverDropLog.Lines.Reverse().Chunk(50))
            await other.Sheet("source=book", RiverDropLog.Heading + string.Concat(part));
        await other.Sheet("source=book", RiverDropLog.Movements); // sent again
        await other.BenchSheet("source=bench-book", RiverDropLog.Bench);
        Assert.Equal((await studio.Get(s_path)).Text, (await other.Get(s_path)).Text);
    }

    [Fact]
    public async Task A_sale_spoils_the_answer_and_a_withdrawn_one_brings_the_former_back()
    {
        await using var studio = await RiverDropLog.Logged();
        var first = await studio.Get(s_path);
        Assert.Equal(304, (await studio.Get(s_path, null, ("If-None-Match", first["ETag"]!))).Status);
        await studio.Sheet("source=book", RiverDropLog.Heading + $"x,{RiverDropLog.LastDay},sold,RB-014,web,1,52.00,52.00,\n");
        var second = await studio.Get(s_path, null, ("If-None-Match", first["ETag"]!));
        // 91 * 48.047 = 4372.277
        var take = second.Json.GetProperty("take");
        Assert.Equal("91 4372.28", $"{take.GetProperty("pieces")} {take.GetProperty("net").GetRawText()}");
        await studio.Delete("/v1/movements/book/x");
        var third = await studio.Get(s_path);
        Assert.Equal(first.Text.Replace("m221+b12", "m223+b12", StringComparison.Ordinal), third.Text);
    }

    [Fact]
    public async Task As_of_an_earlier_moment_later_lines_are_not_there()
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.BenchSheet("source=bench-book", RiverDropLog.Bench);
        var path = $"/v1/designs/RB-014/evidence?to={RiverDropLog.LastDay}";
        var then = (await studio.Get(path)).Json;
        var moment = studio.Clock.GetUtcNow().AddSeconds(30);
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        await studio.Sheet("source=book", RiverDropLog.Movements);
        var now = (await studio.Get(path)).Json;
        Assert.NotEqual(then.GetProperty("floor").GetRawText(), now.GetProperty("floor").GetRawText());
        Assert.Equal(then.GetRawText(), (await studio.Get($"{path}&asOf={moment:yyyy-MM-ddTHH:mm:ss}Z")).Json.GetRawText());
    }
}
