using System.Text.Json.Nodes;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Tests.Conventions;
using Xunit;
using static PriceFloor.Api.Tests.Statements.SentStatements;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>The draft of a year from lines and rules, and the outcome of each line.</summary>
public sealed class StatementDraftTests
{
    private static readonly string[] s_formats = ["current-2026.csv", "current-2026.ofx"];

    [Fact]
    public async Task A_sheet_becomes_a_draft_that_can_be_put_back_as_it_is()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        var answer = await Send(studio, "?currency=USD", ("current", Sheet));

        Assert.Equal(200, answer.Status);
        Assert.Equal("no-store", answer["Cache-Control"]);
        // two months: rent 2 x 540 x 6; glass was bought in one of them: 120.50 x 6
        Assert.Equal(
            """[{"name":"Rent","amount":6480.00,"per":"year","costKind":"rent","deductible":true},{"name":"Glass","amount":723.00,"per":"year","costKind":"materials","tracedTo":"piece","deductible":true}]""",
            answer.Json.GetProperty("draft").GetProperty("expenses").GetRawText());
        Assert.Equal("""{"lines":5,"in":812.40,"out":1288.50}""", answer.Json.GetProperty("accounted").GetProperty("read").GetRawText());
        Assert.Equal("""{"lines":1,"in":0.00,"out":88.00}""", answer.Json.GetProperty("accounted").GetProperty("unplaced").GetRawText());
        Assert.Equal(
            """[{"text":"Riverside choir trip","common":"Riverside choir trip","paid":"out","count":1,"total":88.00,"first":"2026-02-28","last":"2026-02-28","suggested":null,"rule":{"textHas":"Riverside choir trip","paid":"out","to":null}}]""",
            answer.Json.GetProperty("unplaced").GetRawText());
        Assert.Equal("""{"rules":"main@1"}""", answer.Json.GetProperty("basis").GetRawText());

        var stored = await studio.Put("/v1/profiles/drafted", answer.Json.GetProperty("draft").GetRawText());
        Assert.Equal(201, stored.Status);
        Assert.Equal(JsonNode.Parse(answer.Json.GetProperty("draft").GetRawText())!.ToJsonString(),
            Without(stored.Text, "key", "revision", "savedAt"));
    }

    [Fact]
    public async Task The_same_year_in_each_format_gives_the_same_draft()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main",
            await File.ReadAllTextAsync(Repository.File("src/PriceFloor.Api/ReadingRuleSets/starter-rules.json"), Studio.Cancellation));
        var card = await Bank("card-2026.csv");
        var drafts = new List<string>();
        foreach (var file in s_formats)
            foreach (var other in new[] { card, await Bank("card-2026.xml") })
            {
                var answer = await Send(studio, "?currency=USD", ("current", await Bank(file)), ("card", other));
                drafts.Add(answer.Json.GetProperty("draft").GetRawText() + answer.Json.GetProperty("lines").GetRawText()
                    + answer.Json.GetProperty("accounted").GetRawText());
            }

        Assert.Equal(4, drafts.Count);
        Assert.Single(drafts.Distinct());
        Assert.Contains("\"name\":\"Bench rent\",\"amount\":6480.00", drafts[0], StringComparison.Ordinal);         // 12 x 540
        Assert.Contains("\"name\":\"Studio insurance\",\"amount\":690.00", drafts[0], StringComparison.Ordinal);    // one bill a year
        // twelve settlements of the card, both halves
        Assert.Contains("\"paired\":{\"lines\":24,", drafts[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_line_says_its_fate_and_the_rule_that_took_it()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        var lines = (await Send(studio, "?currency=USD&lines=true&to=2026-02-20", ("current", Sheet), ("again", Sheet), ("current", Sheet)))
            .Json.GetProperty("transactions");

        Assert.Equal(15, lines.GetArrayLength());
        Assert.Equal("""{"file":"current","line":2,"date":"2026-01-05","amount":-540.00,"outcome":"placed","rule":"#/rules/0"}""",
            lines[0].GetRawText());
        Assert.Equal("""{"file":"current","line":6,"date":"2026-02-28","amount":-88.00,"outcome":"outside-period"}""", lines[4].GetRawText());
        Assert.Equal("""{"file":"current","line":3,"date":"2026-01-09","amount":-120.50,"outcome":"duplicate"}""", lines[11].GetRawText());
    }

    [Fact]
    public async Task Without_rules_every_line_is_unplaced_and_a_warning_says_so()
    {
        await using var studio = new Studio();
        var answer = await Send(studio, "?currency=USD", ("current", Sheet));

        Assert.Equal((5, "no-reading-rules"), (answer.Json.GetProperty("accounted").GetProperty("unplaced").GetProperty("lines").GetInt32(),
            answer.Json.GetProperty("warnings")[0].GetProperty("code").GetString()));
    }

    [Fact]
    public async Task Lines_in_foreign_money_and_unreadable_ones_are_refused_one_by_one()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        var answer = await Send(studio, "?currency=USD", ("current", "Date,Amount,Description,Currency\r\n2026-01-05,-540.00,Bench rent,USD\r\n"
            + "2026-01-06,-30.00,Bench rent,EUR\r\n2026-01-07,£12,Bench rent,USD\r\n"));

        Assert.Equal(2, answer.Json.GetProperty("refused").GetProperty("count").GetInt32());
        Assert.Equal([("bad-amount", 4), ("currency-mismatch", 3)], answer.Json.GetProperty("refused").GetProperty("lines").EnumerateArray()
            .Select(line => (line.GetProperty("code").GetString(), line.GetProperty("line").GetInt32())));
        Assert.Equal(1, answer.Json.GetProperty("accounted").GetProperty("foreignCurrency").GetProperty("lines").GetInt32());
    }

    [Fact]
    public async Task A_pattern_that_is_too_slow_is_reported_with_its_rule()
    {
        await using var studio = new Studio();
        // Each pattern looks 450 letters back, which no table of states can hold, so each letter of each line costs hundreds of steps: many seconds
        // in all.
        var rules = Enumerable.Range(450, 10).Select(back => $$$"""{"textMatches":"(a|b)*a(a|b){{{{back}}}}c","to":"household"}""");
        await studio.Has("/v1/reading-rules/main", $$"""{"rules":[{"textHas":"bench rent","to":"business"},{{string.Join(',', rules)}}]}""");
        var random = new Random(7);
        var lines = Enumerable.Range(1, 8000).Select(line => FormattableString.Invariant(
            $"2026-01-05,-{line}.00,{string.Concat(Enumerable.Range(0, 480).Select(_ => random.Next(2) == 0 ? 'a' : 'b'))}\r\n"));
        var problem = (await Send(studio, "?rules=main&currency=USD", ("current", $"Date,Amount,Description\r\n{string.Concat(lines)}")))
            .IsProblem(422, "cannot-compute");
        Assert.Matches(@"The slowest is #/rules/([1-9]|10)/textMatches", problem.Text);
        Assert.Matches(@"\(a\|b\)\*a\(a\|b\)\{45[0-9]\}c", problem.Text);
    }

    [Fact]
    public async Task A_column_without_amounts_cannot_make_a_draft_that_is_not_a_profile()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        var answer = (await Send(studio, "?currency=USD",
            ("current", "Date,Amount,Description\r\n2026-01-05,-999999999999.00,Bench rent\r\n2026-02-05,-999999999999.00,Bench rent\r\n")))
            .IsProblem(422, "cannot-compute");

        Assert.Contains("expenses", answer.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    private static Task<string> Bank(string file) => File.ReadAllTextAsync(Repository.File("docs/statements/" + file), Studio.Cancellation);

    private static string Without(string json, params string[] names)
    {
        var document = JsonNode.Parse(json)!.AsObject();
        foreach (var name in names)
            document.Remove(name);
        return document.ToJsonString();
    }
}
