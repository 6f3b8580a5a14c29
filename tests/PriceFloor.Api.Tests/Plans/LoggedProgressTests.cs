using System.Text;
using PriceFloor.Api.Tests.Access;
using Xunit;

namespace PriceFloor.Api.Tests.Plans;

/// <summary>Whether the year is on its way, by the log: the same calculation as of sales that are sent.</summary>
public sealed class LoggedProgressTests
{
    private const string Path = "/v1/plans/p/progress", June = Path + "?through=2027-06-30";

    /// <summary>
    /// 58.00 with 2.4 % and 0.25 of fees leave 56.358; with 3.10 of recorded fees 54.90; one of three that came back leaves two thirds of what
    /// reached the studio.
    /// </summary>
    private static readonly string[] s_sold =
    [
        """{"ref":"1","on":"2027-01-05","sku":"RB-014","channel":"web","pieces":1,"price":58.00,"order":"a"}""",
        """{"ref":"2","on":"2027-02-01","sku":"RB-014","channel":"web","pieces":1,"price":58.00,"fees":3.10}""",
        """{"ref":"3","on":"2027-03-01","sku":"RB-014","channel":"web","pieces":3,"price":58.00,"order":"c"}""",
        """{"ref":"4","on":"2027-03-20","what":"returned","sku":"RB-014","channel":"web","pieces":1,"order":"c"}""",
    ];

    [Fact]
    public async Task The_same_sales_sent_and_logged_give_the_same_answer()
    {
        await using var studio = await WithPlan();
        var sent = await studio.Post(Path, """{"through":"2027-06-30","sold":[{"sku":"RB-014","channel":"web","units":2}]}""");
        await Logs(studio, s_sold[0], s_sold[0].Replace("\"ref\":\"1\"", "\"ref\":\"1b\"", StringComparison.Ordinal)
            .Replace("\"a\"", "\"b\"", StringComparison.Ordinal));
        var logged = await studio.Get(June);
        Assert.Equal((200, 200), (sent.Status, logged.Status));
        Assert.Equal("112.72", logged.Json.GetProperty("brought").GetRawText()); // 2 * 56.358
        Assert.Equal(sent.Text, logged.Text.Replace(",\"log\":\"m2+b0\"", "", StringComparison.Ordinal));
        Assert.Equal("m2+b0", logged.Json.GetProperty("basis").GetProperty("log").GetString());
        // And so with everything beside it: what was sent alone needs no log.
        Assert.Equal(sent.Text, (await studio.Post(Path, """{"through":"2027-06-30","sold":[{"sku":"RB-014","channel":"web","units":2}]}""")).Text);
    }

    [Fact]
    public async Task Sales_count_as_recorded_and_less_what_came_back()
    {
        await using var studio = await WithPlan();
        Assert.Equal(("0.00", "m0+b0"), await Brought(studio, June));
        await Logs(studio, s_sold);
        // An order of three: 174.00 - 2.4 % - 0.25 = 169.574, of which two thirds stay, 113.049333; with 56.358 and 54.90: 224.307333.
        Assert.Equal(("224.31", "m4+b0"), await Brought(studio, June));
        Assert.Equal(("56.36", "m4+b0"), await Brought(studio, Path + "?through=2027-01-31"));
        Assert.Equal("280.83", (await Brought(studio, Path + "?through=2027-03-19")).Brought); // before anything came back: 280.832
        var known = new Dictionary<string, decimal>();
        foreach (var line in (await studio.Get(June + "&workings=true")).Json.GetProperty("workings").EnumerateArray())
            known.Add(line.GetProperty("symbol").GetString()!, line.GetProperty("value").GetDecimal());
        Assert.Equal(224.307333333333m, known["soldLeft1"]);
    }

    [Fact]
    public async Task What_is_corrected_or_withdrawn_counts_as_it_is_now_and_as_it_was_then()
    {
        await using var studio = await WithPlan();
        await Logs(studio, s_sold);
        studio.Clock.Advance(TimeSpan.FromHours(1));
        var then = studio.Clock.GetUtcNow();
        studio.Clock.Advance(TimeSpan.FromHours(1));
        await Logs(studio, s_sold[1].Replace("3.10", "3.00", StringComparison.Ordinal));
        Assert.Equal(204, (await studio.Delete("/v1/movements/shop/4")).Status);
        // 56.358 + 55.00 + 169.574
        Assert.Equal("280.93", (await Brought(studio, June)).Brought);
        Assert.Equal(("224.31", "m4+b0"), await Brought(studio, $"{June}&asOf={then:yyyy-MM-ddTHH:mm:ssZ}"));
    }

    [Fact]
    public async Task Only_sales_of_the_year_of_the_profile_s_designs_count_and_seconds_are_in_the_credit_already()
    {
        await using var studio = await WithPlan();
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.Has("/v1/designs/GLOBE", """{"profile":"other","making":{"piecesPerDay":4}}""");
        await studio.Has("/v1/designs/ST-1", """{"profile":"main","making":{"piecesPerDay":8},"materials":[{"amount":2}]}""");
        await Logs(studio, s_sold[0],
            """{"ref":"5","on":"2026-12-31","sku":"RB-014","channel":"web","pieces":1,"price":58.00}""",
            """{"ref":"6","on":"2027-07-01","sku":"RB-014","channel":"web","pieces":1,"price":58.00}""",
            """{"ref":"7","on":"2027-02-01","sku":"GLOBE","channel":"web","pieces":1,"price":58.00}""",
            """{"ref":"8","on":"2027-02-01","sku":"RB-014","channel":"web","pieces":1,"price":20.00,"grade":"second"}""",
            """{"ref":"9","on":"2027-02-01","sku":"ST-1","channel":"web","pieces":2,"price":20.00,"fees":1.00}""");
        Assert.Equal("91.36", (await Brought(studio, June)).Brought); // 56.358 + 2 * (20.00 - 2.00) - 1.00
    }

    [Fact]
    public async Task Sold_pieces_of_which_nothing_can_be_calculated_are_told()
    {
        await using var studio = await WithPlan();
        await studio.Has("/v1/designs/OLD", Sample.Pendant);
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD"}""");
        await Logs(studio, s_sold[0], """{"ref":"5","on":"2027-02-01","sku":"OLD","channel":"web","pieces":2,"price":58.00}""",
            """{"ref":"6","on":"2027-02-01","sku":"RB-014","channel":"fair","pieces":3,"price":58.00}""");
        Assert.Equal(204, (await studio.Delete("/v1/designs/OLD")).Status);
        Assert.Equal(204, (await studio.Delete("/v1/channels/fair")).Status);
        var answer = (await studio.Get(June)).Json;
        Assert.Equal("56.36", answer.GetProperty("brought").GetRawText());
        var warning = answer.GetProperty("warnings").EnumerateArray().Single(one => one.GetProperty("code").GetString() == "sales-left-out");
        Assert.Equal("5 sold pieces of the log are not counted, since their design or channel is not stored any more or has no figures: "
            + "OLD on web, RB-014 on fair.", warning.GetProperty("message").GetString());
    }

    [Fact]
    public async Task Pieces_that_lie_ready_by_the_log_need_no_hours_and_take_the_place_of_the_opening_stock()
    {
        await using var studio = await WithPlan(""","opening":{"stock":[{"sku":"RB-014","pieces":30}]}""");
        string Stock(Answer answer) => answer.Json.GetProperty("stockExpected").GetRawText();
        await Logs(studio, s_sold[0]);
        Assert.Equal("1690.74", Stock(await studio.Get(June))); // 30 * 56.358: the log does not say what was made
        await Logs(studio, """{"ref":"m1","on":"2026-12-20","what":"made","sku":"RB-014","pieces":12}""",
            """{"ref":"m2","on":"2027-06-30","what":"lost","sku":"RB-014","pieces":1}""",
            """{"ref":"m3","on":"2027-07-01","what":"made","sku":"RB-014","pieces":99}""");
        Assert.Equal("563.58", Stock(await studio.Get(June))); // 12 made, 1 sold, 1 lost: 10 * 56.358
        var sent = await studio.Post(Path, """{"through":"2027-06-30"}""");
        Assert.Equal(("563.58", "m4+b0"), (Stock(sent), sent.Json.GetProperty("basis").GetProperty("log").GetString()));
        var made = """[{"ref":"1","on":"2027-05-02","sku":"RB-014","started":6,"good":5,"minutes":600}]"""u8.ToArray();
        Assert.Equal(200, (await studio.SendBytes("POST", "/v1/bench-log/batch?source=book&countsAsMade=true", made, "application/json")).Status);
        Assert.Equal("845.37", Stock(await studio.Get(June))); // 15 * 56.358
    }

    [Fact]
    public async Task Without_a_day_it_is_asked_of_today()
    {
        await using var studio = await WithPlan();
        Assert.Equal("2027-01-02", (await studio.Get(Path)).Json.GetProperty("through").GetString());
        studio.Clock.Advance(TimeSpan.FromDays(400));
        Assert.Equal(["through"], (await studio.Get(Path)).IsProblem(422, "invalid-input").Pointers);
        (await studio.Get("/v1/plans/none/progress?through=2027-01-31")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task A_key_held_to_a_profile_gets_the_same_of_its_own_plan_and_finds_no_other()
    {
        await using var studio = await WithPlan();
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.Has("/v1/designs/GLOBE", """{"profile":"other","making":{"piecesPerDay":4}}""");
        await studio.Has("/v1/plans/o", """{"profile":"other","lines":[{"sku":"GLOBE","channel":"web","price":80,"units":5}]}""");
        await Logs(studio, [.. s_sold, """{"ref":"7","on":"2027-02-01","sku":"GLOBE","channel":"web","pieces":1,"price":58.00}"""]);
        var own = await TwoStudios.Held(studio, "read");
        Assert.Equal((await studio.Get(June)).Text, (await studio.Get(June, own)).Text);
        (await studio.Get("/v1/plans/o/progress?through=2027-06-30", own)).IsProblem(404, "not-found");
    }

    private static async Task<(string Brought, string Log)> Brought(Studio studio, string path)
    {
        var answer = await studio.Get(path);
        Assert.True(answer.Status == 200, answer.Text);
        return (answer.Json.GetProperty("brought").GetRawText(), answer.Json.GetProperty("basis").GetProperty("log").GetString()!);
    }

    private static async Task Logs(Studio studio, params string[] lines)
    {
        var answer = await studio.SendBytes("POST", "/v1/movements/batch?source=shop", Encoding.UTF8.GetBytes($"[{string.Join(',', lines)}]"),
            "application/json");
        Assert.True(answer.Status == 200 && answer.Json.GetProperty("refused").GetArrayLength() == 0, answer.Text);
    }

    private static async Task<Studio> WithPlan(string more = "")
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/plans/p", Sample.Plan[..^1] + more + "}");
        return studio;
    }
}
