using System.Text.Json.Nodes;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Tests.Conventions;
using Xunit;
using static PriceFloor.Api.Tests.Statements.SentStatements;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>From statements to a stored profile without editing JSON.</summary>
public sealed class DraftAloneTests
{
    [Fact]
    public async Task The_draft_alone_is_that_of_the_whole_answer_and_is_stored_as_it_comes()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        var whole = await Send(studio, "?currency=USD", ("current", Sheet));
        var alone = await Send(studio, "?currency=USD&only=draft", ("current", Sheet));

        Assert.Equal((200, "no-store", "application/json"), (alone.Status, alone["Cache-Control"], alone.ContentType));
        Assert.Equal(whole.Json.GetProperty("draft").GetRawText(), alone.Text);
        var stored = await studio.Put("/v1/profiles/main", alone.Text);
        Assert.Equal((201, "Year 2026"), (stored.Status, stored.Json.GetProperty("name").GetString()));
        Assert.Equal("\"1\"", (await studio.Put("/v1/profiles/main", alone.Text))["ETag"]); // the same again is no new revision
        var problem = (await Send(studio, "?currency=USD&only=lines", ("current", Sheet))).IsProblem(422, "invalid-input");
        Assert.Equal(["only"], problem.Pointers);
    }

    /// <summary>What docs/from-statements.md asks its reader to type.</summary>
    [Fact]
    public async Task The_year_of_the_docs_goes_from_three_files_to_a_stored_profile()
    {
        await using var studio = new Studio();
        Task<string> Read(string file) => File.ReadAllTextAsync(Repository.File("docs/statements/" + file), Studio.Cancellation);
        Assert.Equal(201, (await studio.Put("/v1/reading-rules/main", (await studio.Get("/v1/starter-rules")).Text)).Status);
        (string, string)[] files = [("current", await Read("current-2026.csv")), ("card", await Read("card-2026.csv")),
            ("cash-book", await Read("cash-book-2026.csv"))];
        var draft = await Send(studio, "?currency=USD&only=draft", files);

        Assert.Equal(201, (await studio.Put("/v1/profiles/from-the-bank", draft.Text)).Status);
        // the bench is 540.00 a month
        Assert.Contains("\"name\":\"Bench rent\",\"amount\":6480.00", draft.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("traced-and-not", (await Send(studio, "?currency=USD", files)).Text, StringComparison.Ordinal);
        Assert.Equal(200, (await studio.Get("/v1/profiles/from-the-bank/requirement")).Status);
        Assert.Equal("[]", (await Send(studio, "?against=from-the-bank", files)).Json.GetProperty("differences").GetRawText());
        await WarnsUntilHoursAndTaxAreGiven(studio);
    }

    private static async Task WarnsUntilHoursAndTaxAreGiven(Studio studio)
    {
        async Task<IEnumerable<string>> Unfinished() => (await studio.Get("/v1/profiles/from-the-bank/requirement")).Json.GetProperty("warnings")
            .EnumerateArray().Where(one => one.GetProperty("code").GetString() == "draft-unfinished")
            .Select(one => one.GetProperty("pointer").GetString()!);

        Assert.Equal(["#/profile/calendar/benchShare", "#/profile/tax"], await Unfinished());
        Assert.Contains("it still takes every working hour as spent at the bench", (await studio.Get("/v1/profiles/from-the-bank/year.html")).Text,
            StringComparison.Ordinal);
        Assert.Equal(200, (await studio.SendBytes("PATCH", "/v1/profiles/from-the-bank",
            """{"calendar":{"benchShare":0.6},"tax":{"kind":"flat","rate":0.2}}"""u8.ToArray(), "application/merge-patch+json")).Status);
        Assert.Empty(await Unfinished());
    }

    [Theory]
    [InlineData(null)]
    [InlineData("draft")]
    public async Task Who_stores_the_whole_answer_is_told_how_to_get_the_draft(string? only)
    {
        await using var studio = new Studio();
        var text = (await Send(studio, "?currency=USD", ("current", Sheet))).Text;
        var sent = only is null ? text : new JsonObject { [only] = JsonNode.Parse(text)![only]!.DeepClone() }.ToJsonString();
        var problem = (await studio.Put("/v1/profiles/main", sent)).IsProblem(400, "unreadable-request");

        Assert.Contains("the whole answer to POST /v1/statements: send its draft alone, which ?only=draft answers", problem.Text,
            StringComparison.Ordinal);
        (await studio.Get("/v1/profiles/main")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task The_starter_rules_of_the_service_are_stored_as_they_come()
    {
        await using var studio = new Studio();
        var rules = await studio.Get("/v1/starter-rules");

        Assert.Equal((200, "application/json"), (rules.Status, rules.ContentType));
        var file = await File.ReadAllTextAsync(Repository.File("src/PriceFloor.Api/ReadingRuleSets/starter-rules.json"), Studio.Cancellation);
        Assert.Equal(file, rules.Text);
        Assert.Equal(304, (await studio.Get("/v1/starter-rules", null, ("If-None-Match", rules["ETag"]!))).Status);
        Assert.Equal(201, (await studio.Put("/v1/reading-rules/main", rules.Text)).Status);
        Assert.DoesNotContain("no-reading-rules", (await Send(studio, "?currency=USD", ("current", Sheet))).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_rules_the_warning_says_where_some_are()
    {
        await using var studio = new Studio();
        Assert.Contains("GET /v1/starter-rules", (await Send(studio, "?currency=USD", ("current", Sheet))).Json.GetProperty("warnings")[0]
            .GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    /// <summary>A stall's pitch is traced to sales on the bank's line; at the gate it is cash, and the book leaves the column empty.</summary>
    [Fact]
    public async Task An_expense_that_is_traced_by_a_rule_and_not_in_the_cash_book_is_warned_about()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", """
            {"rules":[{"textHas":"pitch","costKind":"shows-and-stalls","to":"business","tracedTo":"sale","name":"Stalls and shows"}]}
            """);
        const string Current = "Date,Amount,Description\n2026-01-05,-85.00,Pitch spring fair\n2026-12-05,-85.00,Pitch winter fair\n";
        string Book(string tracedTo) => "Date,What,In,Out,To,Cost kind,Name,Traced to\n"
            + $"2026-03-21,Pitch at the gate,,25.00,business,shows and stalls,Stalls and shows,{tracedTo}\n";
        var answer = (await Send(studio, "?currency=USD", ("current", Current), ("cash-book", Book("")))).Json;
        var warning = Assert.Single(answer.GetProperty("warnings").EnumerateArray(),
            one => one.GetProperty("code").GetString() == "traced-and-not");

        Assert.Equal("#/draft/expenses/1/tracedTo", warning.GetProperty("pointer").GetString());
        Assert.StartsWith("\"Stalls and shows\" has 25.00 that is traced to nothing, and \"Stalls and shows\" of the same kind has 170.00 that is "
            + "traced to sales.", warning.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.DoesNotContain("traced-and-not",
            (await Send(studio, "?currency=USD", ("current", Current), ("cash-book", Book("sale")))).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_without_a_text_is_refused_with_the_headings_that_it_has()
    {
        await using var studio = new Studio();
        var problem = (await Send(studio, "?currency=USD", ("current", "Date,Amount,Wording\n2026-01-05,-85.00,Pitch\n")))
            .IsProblem(422, "invalid-input");
        var error = Assert.Single(problem.Json.GetProperty("errors").EnumerateArray());
        Assert.Equal(("#/current", "missing-column"), (error.GetProperty("pointer").GetString(), error.GetProperty("code").GetString()));
        Assert.Contains("textColumn", error.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Contains("\"Date\", \"Amount\", \"Wording\"", error.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }
}
