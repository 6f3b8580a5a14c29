using Xunit;
using static PriceFloor.Api.Tests.Statements.SentStatements;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>What cannot be read is said once, with how often and where first.</summary>
public sealed class StatementRefusalTests
{
    private const string Head = "Date,Amount,Description\r\n";

    [Fact]
    public async Task A_file_of_which_every_line_fails_is_a_fault_that_is_said_once()
    {
        await using var studio = new Studio();
        var problem = (await Send(studio, "?currency=USD", ("current", Sheet),
            ("card", Head + "02/03/2026,1,x\r\n03/04/2026,1,x\r\n05/06/2026,1,x\r\n2026-01-07,much,x\r\n"))).IsProblem(422, "invalid-input");

        Assert.Equal([("#/card", "ambiguous-date"), ("#/card", "bad-amount")], problem.Pointers.Zip(problem.Codes));
        var first = problem.Json.GetProperty("errors")[0];
        Assert.Contains("So it is on 3 lines; line 2 is the first.", first.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.EndsWith("""For this file alone, send one more field: -F 'card.layout={"dateOrder":"day-month-year"}'.""",
            first.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(2, first.GetProperty("line").GetInt32());
    }

    [Fact]
    public async Task A_sheet_of_unknown_headings_is_named_by_its_field_with_the_layout_to_send()
    {
        await using var studio = new Studio();
        var problem = (await Send(studio, "?currency=USD", ("current", Sheet),
            ("card", "Tag,Betrag,Zweck\r\n2026-01-05,-3,Frit\r\n")))
            .IsProblem(422, "invalid-input");

        Assert.Equal([("#/card", "missing-column")], problem.Pointers.Zip(problem.Codes));
        var detail = problem.Json.GetProperty("errors")[0].GetProperty("detail").GetString();
        Assert.StartsWith("None of the headings of the file is known: \"Tag\", \"Betrag\", \"Zweck\".", detail, StringComparison.Ordinal);
        Assert.Contains("""-F 'card.layout={"dateColumn":"...","textColumn":"...","amountColumn":"..."}'.""", detail, StringComparison.Ordinal);
        Assert.EndsWith("""in place of "amountColumn"; if a card counts purchases as positive, add "positiveIsOut":true.""", detail,
            StringComparison.Ordinal);
        // Every file says at once what it needs, so two accounts take one try.
        Assert.Equal(["#/card", "#/current"], (await Send(studio, "?currency=USD", ("current", "When,Value,What\r\n2026-01-05,-3,Frit\r\n"),
            ("card", "Tag,Betrag,Zweck\r\n2026-01-05,-3,Frit\r\n"))).IsProblem(422, "invalid-input").Pointers);
        // Two files of one name are told apart; what no layout can help is unreadable.
        Assert.Equal(["#/card/1"], (await Send(studio, "?currency=USD", ("card", Sheet), ("card", "Dear customer")))
            .IsProblem(400, "unreadable-request").Pointers);
    }

    [Fact]
    public async Task The_layout_of_a_card_with_semicolons_and_two_columns_for_money_is_all_that_is_needed()
    {
        await using var studio = new Studio();
        const string Card = "Tag;Zweck;Gutschrift;Lastschrift\r\n05.01.2026;Frit;;3,50\r\n31.01.2026;Zahlung;3,50;\r\n";
        var detail = (await Send(studio, "?currency=EUR", ("card", Card))).IsProblem(422, "invalid-input").Json.GetProperty("errors")[0]
            .GetProperty("detail").GetString()!;
        Assert.Contains("""-F 'card.layout={"dialect":"semicolon","dateColumn":"...","textColumn":"...","amountColumn":"..."}'.""", detail,
            StringComparison.Ordinal);
        Assert.Contains("""name them with "inColumn" and "outColumn" in place of "amountColumn";""", detail, StringComparison.Ordinal);

        // completed as it says
        var answer = await Send(studio, "?currency=EUR", ("card", Card), ("card.layout",
            """{"dialect":"semicolon","dateColumn":"Tag","textColumn":"Zweck","inColumn":"Gutschrift","outColumn":"Lastschrift"}"""));
        Assert.Equal((200, """{"lines":2,"in":3.50,"out":3.50}"""),
            (answer.Status, answer.Json.GetProperty("accounted").GetProperty("read").GetRawText()));
    }

    [Fact]
    public async Task Lines_without_anything_to_read_are_no_failure()
    {
        await using var studio = new Studio();
        var answer = await Send(studio, "?currency=USD", ("current", Head + "2026-01-05,0.00,x\r\n2026-01-06,0.00,x\r\n"));

        Assert.Equal((200,
            """{"count":2,"lines":[{"file":"current","line":2,"code":"zero","detail":"The amount is zero; nothing came in or went out.","count":2,"otherLines":[3]}]}"""),
            (answer.Status, answer.Json.GetProperty("refused").GetRawText()));
    }

    [Fact]
    public async Task Equal_refusals_are_one_however_many_they_are()
    {
        await using var studio = new Studio();
        var bad = string.Concat(Enumerable.Range(1, 250).Select(_ => "2026-01-05,much,x\r\n"));
        const string Good = Head + "2026-01-04,1.00,x\r\n";
        var refused = (await Send(studio, "?currency=USD", ("current", Good + bad + "someday,1.00,x\r\n"), ("card", Good + bad)))
            .Json.GetProperty("refused");

        Assert.Equal(501, refused.GetProperty("count").GetInt32());
        Assert.Equal([("current", 3, "bad-amount", 250, 100), ("current", 253, "bad-date", 1, 0), ("card", 3, "bad-amount", 250, 100)],
            refused.GetProperty("lines").EnumerateArray().Select(one => (one.GetProperty("file").GetString(), one.GetProperty("line").GetInt32(),
                one.GetProperty("code").GetString(), one.GetProperty("count").GetInt32(), one.GetProperty("otherLines").GetArrayLength())));
    }

    [Fact]
    public async Task The_sign_of_the_draft_is_read_and_without_a_currency_it_is_asked_for()
    {
        await using var studio = new Studio();
        const string Signed = Head + "4 March 2026,-$540.00,Bench rent\r\n5 Mar 2026,\"$1,812.40\",Shop payout\r\n";
        var read = (await Send(studio, "?currency=USD", ("current", Signed))).Json.GetProperty("accounted").GetProperty("read").GetRawText();
        var problem = (await Send(studio, "", ("current", Signed))).IsProblem(422, "invalid-input");

        Assert.Equal("""{"lines":2,"in":1812.40,"out":540.00}""", read);
        Assert.Contains("?currency=", problem.Json.GetProperty("errors")[0].GetProperty("detail").GetString(), StringComparison.Ordinal);
    }
}
