using PriceFloor.Api.Http.Reading;
using Xunit;
using static PriceFloor.Api.Tests.Statements.SentStatements;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>The differences from a stored profile, and the part of its year that is due by now.</summary>
public sealed class StatementAgainstProfileTests
{
    [Fact]
    public async Task Against_a_stored_profile_each_heading_that_differs_is_listed()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        await studio.Has("/v1/profiles/main",
            """{"name":"Ours","currency":"USD","yearStart":"2026-01-01","calendar":{"weeksPerYear":46,"daysPerWeek":5,"hoursPerDay":7},"expenses":[{"name":"Rent","amount":500,"per":"month","costKind":"rent"}],"tax":{"kind":"flat","rate":0.2}}""");
        var answer = await Send(studio, "?against=main", ("current", Sheet));

        Assert.Equal("""{"to":"business","costKind":"materials","name":null,"stored":0.00,"drafted":723.00,"difference":723.00}""",
            answer.Json.GetProperty("differences")[0].GetRawText());
        Assert.Equal("""{"to":"business","costKind":"rent","name":null,"stored":6000.00,"drafted":6480.00,"difference":480.00}""",
            answer.Json.GetProperty("differences")[1].GetRawText());
        Assert.Equal(0.2m, answer.Json.GetProperty("draft").GetProperty("tax").GetProperty("rate").GetDecimal());
        // 59 of 365 days; the stored year needs 6,000: 969.87 to date, 812.40 came in, 5,187.60 is left for 46 x 306/365 weeks
        Assert.Equal(
            """{"from":"2026-01-01","to":"2026-02-28","isWhole":true,"elapsed":0.161644,"shareDue":0.161644,"keptBack":0.00,"requiredRevenue":6000.00,"requiredToDate":969.87,"incomeToDate":812.40,"ahead":-157.46,"stillToBring":5187.60,"weeksLeft":38.5644,"perWeekLeft":134.52}""",
            answer.Json.GetProperty("pace").GetRawText());
        (await Send(studio, "?against=main&currency=EUR", ("current", Sheet))).IsProblem(422, "currency-mismatch");
        (await Send(studio, "?against=nobody&rules=none", ("current", Sheet))).IsProblem(422, "unknown-reference");
    }

    [Fact]
    public async Task A_season_says_what_is_due_by_now_and_without_one_that_is_assumed()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        await studio.Has("/v1/profiles/main",
            """{"currency":"USD","yearStart":"2026-01-01","calendar":{"weeksPerYear":46,"daysPerWeek":5,"hoursPerDay":7},"expenses":[{"amount":500,"per":"month"}]}""");
        // 6,000 a year, of which the season brings 5 of 100 in January and 5 in February: 600 are due, 812.40 came in.
        var answer = (await Send(studio, "?against=main&season=5,5,5,5,5,5,10,10,10,10,15,15", ("current", Sheet))).Json;
        Assert.Equal(("0.1", "600.00", "212.40"), (Raw("shareDue"), Raw("requiredToDate"), Raw("ahead")));
        Assert.DoesNotContain("#/pace/season", Pointers());

        answer = (await Send(studio, "?against=main", ("current", Sheet))).Json;
        Assert.Contains("#/pace/season", Pointers());
        foreach (var wrong in new[] { "1,2,3", "0,0,0,0,0,0,0,0,0,0,0,0", "1,1,1,1,1,1,1,1,1,1,1,-1", "x,1,1,1,1,1,1,1,1,1,1,1" })
            Assert.Equal(["not-a-season"],
                (await Send(studio, "?against=main&season=" + wrong, ("current", Sheet))).IsProblem(422, "invalid-input").Codes);

        string Raw(string name) => answer.GetProperty("pace").GetProperty(name).GetRawText();
        IEnumerable<string?> Pointers() => answer.GetProperty("assumed").EnumerateArray().Select(one => one.GetProperty("pointer").GetString());
    }

    /// <summary>Nothing is taken off here and everything is paid at once, so takings and what sales leave are the same money.</summary>
    [Fact]
    public async Task The_pace_of_statements_and_the_progress_of_a_plan_are_one_calculation()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("2027", "2026", StringComparison.Ordinal));
        await studio.Has("/v1/designs/CUP", Sample.Pendant);
        await studio.Has("/v1/channels/stall", """{"sells":"retail","currency":"USD"}""");
        await studio.Has("/v1/plans/2026",
            """{"profile":"main","lines":[{"sku":"CUP","channel":"stall","price":60,"units":1000,"season":"s"}],"seasons":{"s":[4,5,6,6,8,6,5,5,7,10,19,19]}}""");
        // 60,000 are needed and planned; 9 of 100 are due by the end of February: 5,400. 812.40 came in, as 13.54 pieces at 60.00 would have.
        var statements = (await Send(studio, "?against=main&plan=2026", ("current", Sheet))).Json;
        var progress = (await studio.Post("/v1/plans/2026/progress",
            """{"through":"2026-02-28","sold":[{"sku":"CUP","channel":"stall","units":13.54}]}""")).Json;
        string Pace(string name) => statements.GetProperty("pace").GetProperty(name).GetRawText();
        string Progress(string name) => progress.GetProperty(name).GetRawText();
        Assert.Equal(("5400.00", "812.40", "-4587.60", "59187.60"),
            (Pace("requiredToDate"), Pace("incomeToDate"), Pace("ahead"), Pace("stillToBring")));
        Assert.Equal(("5400.00", "812.40", "-4587.60", "59187.60"),
            (Progress("planned"), Progress("brought"), Progress("ahead"), Progress("stillToBring")));
        Assert.DoesNotContain("#/pace/season",
            statements.GetProperty("assumed").EnumerateArray().Select(one => one.GetProperty("pointer").GetString()));
        Assert.Equal("2026@1", statements.GetProperty("basis").GetProperty("plan").GetString());
    }

    [Fact]
    public async Task A_plan_for_the_pace_must_be_there_and_is_given_in_place_of_a_season()
    {
        await using var studio = new Studio();
        Assert.Equal(["plan"], (await Send(studio, "?currency=USD&plan=none", ("current", Sheet))).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["plan"], (await Send(studio, "?currency=USD&plan=p&season=1,1,1,1,1,1,1,1,1,1,1,1", ("current", Sheet)))
            .IsProblem(422, "invalid-input").Pointers);
        using var checker = await studio.ClientFor("check");
        (await Send(studio, "?currency=USD&plan=p", checker, ("current", Sheet))).IsProblem(403, "key-not-allowed");
    }

    [Fact]
    public async Task A_class_that_takes_no_day_from_the_bench_is_assumed_and_warned_about()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", """{"rules":[{"textHas":"class","to":"other-income","name":"Classes"}]}""");
        const string Lessons = "Date,Amount,Description\r\n2026-01-05,280.00,Evening class\r\n2026-02-05,280.00,Evening class\r\n";
        var answer = (await Send(studio, "?currency=USD", ("current", Lessons))).Json;
        Assert.Contains("#/draft/otherIncome/0/daysPerYear",
            answer.GetProperty("assumed").EnumerateArray().Select(one => one.GetProperty("pointer").GetString()));
        Assert.Contains("income-takes-no-days", answer.GetProperty("warnings").EnumerateArray().Select(one => one.GetProperty("code").GetString()));

        // If a stored profile gives the number of days, it is used.
        await studio.Has("/v1/profiles/main",
            """{"currency":"USD","calendar":{"weeksPerYear":46,"daysPerWeek":5,"hoursPerDay":7},"otherIncome":[{"name":"Classes","amount":100,"per":"month","kind":"taxable","daysPerYear":12}]}""");
        answer = (await Send(studio, "?against=main", ("current", Lessons))).Json;
        Assert.Equal(12m, answer.GetProperty("draft").GetProperty("otherIncome")[0].GetProperty("daysPerYear").GetDecimal());
        Assert.DoesNotContain("income-takes-no-days",
            answer.GetProperty("warnings").EnumerateArray().Select(one => one.GetProperty("code").GetString()));
    }
}
