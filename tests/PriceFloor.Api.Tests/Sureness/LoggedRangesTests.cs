using System.Globalization;
using System.Text.Json;
using PriceFloor.Api.Tests.Evidence.Logged;
using Xunit;

namespace PriceFloor.Api.Tests.Sureness;

/// <summary>Ranges that the log gives instead of a guess, in the worked example of the log.</summary>
public sealed class LoggedRangesTests
{
    private const string Question = """{"profile":"main","sku":"RB-014","channel":"web","price":60,"ranges":"evidence"}""";

    private static async Task<Studio> Logged()
    {
        var studio = await RiverDropLog.Logged();
        studio.Clock.SetUtcNow(new DateTimeOffset(2028, 1, 1, 9, 0, 0, TimeSpan.Zero)); // the day of the worked example
        return studio;
    }

    /// <summary>
    /// The ends of a finding that holds eight times in ten are those of a range: one time in ten below, one time in ten above. The minutes of the
    /// piece are those of the torch and 8 of annealing, which nobody can hurry.
    /// </summary>
    [Fact]
    public async Task They_are_the_findings_at_eight_times_in_ten_around_the_drafts()
    {
        await using var studio = await Logged();
        var design = (await studio.Get("/v1/designs/RB-014/evidence?level=0.8")).Json;
        var profile = (await studio.Get("/v1/profiles/main/evidence?level=0.8")).Json;
        var byHand = new[]
        {
            $$"""{"of":"profile:main","at":"","to":{{profile.GetProperty("draft").GetRawText()}}}""",
            Range("profile:main", "/soldShare", Finding(profile, "/soldShare"), 0),
            $$"""{"of":"design:RB-014","at":"","to":{{design.GetProperty("draft").GetRawText()}}}""",
            Range("design:RB-014", "/making/steps/0/handsOnMinutes", Finding(design, "/making/steps"), 8, ",\"together\":\"making minutes\""),
            Range("design:RB-014", "/making/steps/1/goodShare", Finding(design, "/making/steps/1/goodShare"), 0),
            Range("design:RB-014", "/soldShare", Finding(design, "/soldShare"), 0),
        };
        var typed = await studio.Ask("/v1/sureness", Question.Replace("\"evidence\"", $"[{string.Join(',', byHand)}]", StringComparison.Ordinal));
        var found = await studio.Ask("/v1/sureness", Question);
        foreach (var part in new[] { "floor", "floorPriceSure", "holds", "numbers", "perBenchHour", "warnings", "notPossible" })
            Assert.Equal(typed.GetProperty(part).GetRawText(), found.GetProperty(part).GetRawText());
        Assert.Equal("m221+b12", found.GetProperty("basis").GetProperty("log").GetString());
        Assert.False(typed.GetProperty("basis").TryGetProperty("log", out _));
    }

    /// <summary>The floor as found is 56.31: (45 x 48.20/60 + 6) / (0.8695 x 0.8610) = 42.15 / 0.74864 = 56.3021.</summary>
    [Fact]
    public async Task The_floor_as_found_lies_between_the_tenths()
    {
        await using var studio = await Logged();
        var found = await studio.Ask("/v1/sureness", Question);
        var floor = found.GetProperty("floor");
        Assert.InRange(56.31m, floor.GetProperty("tenth").GetDecimal(), floor.GetProperty("nineTenths").GetDecimal());
        Assert.Equal(["design:RB-014#/making/steps/1/goodShare", "design:RB-014#/soldShare", "making minutes", "profile:main#/soldShare"],
            found.GetProperty("numbers").EnumerateArray().Select(number => number.GetProperty("name").GetString()).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task They_are_those_of_the_log_at_the_time_asked_for()
    {
        await using var studio = await Logged();
        (await studio.Post("/v1/sureness?asOf=2027-01-01T00:00:00Z", Question)).IsProblem(422, "unknown-reference"); // nothing was stored then
        var before = await studio.Ask("/v1/sureness", Question);
        studio.Clock.Advance(TimeSpan.FromHours(1));
        await studio.Post("/v1/bench-log/batch?source=bench-book",
            """[{"ref":"99","on":"2027-12-31","sku":"RB-014","started":12,"good":2,"minutes":900}]""");
        Assert.NotEqual(before.GetProperty("floor").GetRawText(), (await studio.Ask("/v1/sureness", Question)).GetProperty("floor").GetRawText());
        Assert.Equal(before.GetRawText(), (await studio.Ask("/v1/sureness?asOf=2028-01-01T09:30:00Z", Question)).GetRawText());
    }

    [Fact]
    public async Task Without_a_finding_there_is_nothing_to_draw()
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        var answer = await studio.Post("/v1/sureness", Question);
        answer.IsProblem(422, "cannot-compute");
        Assert.Contains("nothing-logged", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_word_is_answered_with_the_one_there_is()
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        var answer = await studio.Post("/v1/sureness", Question.Replace("evidence", "guess", StringComparison.Ordinal));
        answer.IsProblem(422, "invalid-input");
        Assert.Contains("evidence", answer.Json.GetProperty("errors")[0].GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal("#/ranges", answer.Json.GetProperty("errors")[0].GetProperty("pointer").GetString());
    }

    private static JsonElement Finding(JsonElement evidence, string pointer) => evidence.GetProperty("findings").EnumerateArray()
        .Single(finding => finding.GetProperty("pointer").GetString() == "#" + pointer);

    private static string Range(string of, string at, JsonElement finding, decimal less, string also = "")
    {
        return $$"""{"of":"{{of}}","at":"{{at}}","to":{"low":{{End("low")}},"likely":{{End("value")}},"high":{{End("high")}}}{{also}}}""";

        string End(string name) => (finding.GetProperty(name).GetDecimal() - less).ToString(CultureInfo.InvariantCulture);
    }
}
