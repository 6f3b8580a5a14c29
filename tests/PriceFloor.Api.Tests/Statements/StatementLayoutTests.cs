using System.Text.Json;
using Xunit;
using static PriceFloor.Api.Tests.Statements.SentStatements;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>Accounts whose sheets are written differently, in one request.</summary>
public sealed class StatementLayoutTests
{
    private static readonly string[] s_costs = ["green grocer", "rod order", "parcel post"];

    /// <summary>Purchases of the card are positive, and its payment on the 28th is negative.</summary>
    private const string Card = "Gebucht;Händler;Betrag\r\n03.02.2026;Frit order 9;120,50\r\n28.02.2026;Zahlung;-120,50\r\n";

    private const string Current = "Posted,Details,Sum,Way\r\n02/28/2026,To the card,120.50,out\r\n02/15/2026,Shop payout,812.40,in\r\n";

    private const string CardLayout =
        """{"dialect":"semicolon","dateOrder":"day-month-year","dateColumn":"Gebucht","textColumn":"Händler","amountColumn":"Betrag","positiveIsOut":true}""";

    private const string Booked = """{"dateColumn":"Booked"}""";

    private const string CurrentLayout = """{"dateColumn":"Posted","amountColumn":"Sum","directionColumn":"Way"}""";

    [Fact]
    public async Task Two_accounts_with_two_layouts_are_read_in_one_request_and_the_cards_payment_pairs()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        var answer = await Send(studio, "?currency=USD&lines=true", ("current", Current), ("card", Card), ("card.layout", CardLayout),
            ("current.layout", CurrentLayout));

        Assert.Equal(["current 2026-02-28 -120.50 paired", "current 2026-02-15 812.40 placed", "card 2026-02-03 -120.50 placed",
            "card 2026-02-28 120.50 paired"], Lines(answer));
        Assert.Equal(["current", "card"], answer.Json.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("name").GetString()));
    }

    [Fact]
    public async Task A_stored_layout_is_found_by_the_accounts_name()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        await studio.Has("/v1/statement-layouts/card", CardLayout);
        await studio.Has("/v1/statement-layouts/current", CurrentLayout);
        var answer = await Send(studio, "?currency=USD&lines=true", ("current", Current), ("card", Card));

        Assert.Equal(["current 2026-02-28 -120.50 paired", "current 2026-02-15 812.40 placed", "card 2026-02-03 -120.50 placed",
            "card 2026-02-28 120.50 paired"], Lines(answer));
        Assert.Equal(["current@1", "card@1"],
            answer.Json.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("layout").GetString()));

        // The query serves files that have no layout; a part of the form goes before what is stored.
        var third = await Send(studio, "?currency=USD&lines=true&dateColumn=Day&textColumn=What", ("card", Card),
            ("savings", "Day,What,Amount\r\n2026-02-03,Interest,1.00\r\n"));
        Assert.Equal(["card 2026-02-03 -120.50 placed", "card 2026-02-28 120.50 unplaced", "savings 2026-02-03 1.00 unplaced"], Lines(third));
        var turned = await Send(studio, "?currency=USD&lines=true", ("card", Card), ("card.layout", """{"amountColumn":"Betrag"}"""));
        Assert.Equal(["card 2026-02-03 120.50 placed", "card 2026-02-28 -120.50 unplaced"], Lines(turned));
    }

    [Fact]
    public async Task A_key_that_may_not_read_finds_no_stored_layout()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/statement-layouts/card", CardLayout);
        using var writer = await studio.ClientFor("write");

        (await Send(studio, "?currency=USD", writer, ("card", Card))).IsProblem(422, "invalid-input"); // no general words
        Assert.Equal(200, (await Send(studio, "?currency=USD", writer, ("card", Card), ("card.layout", CardLayout))).Status);
    }

    [Fact]
    public async Task A_layout_is_a_document_like_the_others()
    {
        await using var studio = new Studio();
        var first = await studio.Put("/v1/statement-layouts/card", CardLayout);
        var same = await studio.Put("/v1/statement-layouts/card", (await studio.Get("/v1/statement-layouts/card")).Text);

        Assert.Equal((201, 200, "\"1\"", "\"1\""), (first.Status, same.Status, first["ETag"], same["ETag"]));
        Assert.Equal(204, (await studio.Delete("/v1/statement-layouts/card")).Status);
    }

    [Theory]
    [InlineData("""{"dateColum":"Day"}""", 400, "#/dateColum", "unknown-property")]
    [InlineData("{}", 422, "#", "required")]
    [InlineData("""{"name":"Card"}""", 422, "#", "required")]
    [InlineData("""{"dialect":"tabs"}""", 422, "#/dialect", "not-one-of")]
    [InlineData("""{"amountColumn":"A","inColumn":"B"}""", 422, "#/amountColumn", "unexpected")]
    [InlineData("""{"directionColumn":"A","outColumn":"B"}""", 422, "#/directionColumn", "unexpected")]
    [InlineData("""{"directionColumn":"A","positiveIsOut":true}""", 422, "#/positiveIsOut", "unexpected")]
    public async Task A_fault_of_a_layout_is_reported_at_its_place(string layout, int status, string pointer, string code)
    {
        await using var studio = new Studio();
        var slug = status == 400 ? "unreadable-request" : "invalid-input";
        var stored = (await studio.Put("/v1/statement-layouts/card", layout)).IsProblem(status, slug);
        var sent = (await Send(studio, "?currency=USD", ("card", Card), ("card.layout", layout))).IsProblem(status, slug);

        Assert.Equal([(pointer, code)], stored.Pointers.Zip(stored.Codes));
        Assert.Equal([("#/card.layout" + pointer[1..], code)], sent.Pointers.Zip(sent.Codes));
    }

    [Fact]
    public async Task A_layout_needs_its_file_and_comes_once()
    {
        await using var studio = new Studio();
        var problem = (await Send(studio, "?currency=USD", ("current", Sheet), ("card.layout", Booked), ("current.layout", Booked),
            ("current.layout", Booked))).IsProblem(422, "invalid-input");

        Assert.Equal([("#/card.layout", "unexpected"), ("#/current.layout", "duplicate")], problem.Pointers.Zip(problem.Codes));
        (await Send(studio, "?currency=USD", [("current", Sheet), .. Enumerable.Range(0, 25).Select(_ => ("current.layout", Booked))]))
            .IsProblem(413, "too-large");
    }

    [Fact]
    public async Task An_account_with_only_money_in_is_a_warning()
    {
        await using var studio = new Studio();
        const string Unsigned = "Date,Amount,Description,Way\r\n2026-01-05,540.00,Bench rent,out\r\n2026-02-15,812.40,Shop payout,in\r\n";
        var answer = await Send(studio, "?currency=USD", ("current", Unsigned));
        Assert.Contains("only-money-in", Warnings(answer));
        answer = await Send(studio, "?currency=USD&directionColumn=Way", ("current", Unsigned));
        Assert.DoesNotContain("only-money-in", Warnings(answer));

        (await Send(studio, "?currency=USD&amountColumn=Amount", ("current", Unsigned.Replace("Way", "Direction", StringComparison.Ordinal))))
            .IsProblem(422, "invalid-input");
        (await Send(studio, "?currency=USD&directionColumn=Way&outColumn=Amount", ("current", Unsigned))).IsProblem(422, "invalid-input");
    }

    [Theory]
    [InlineData("")]
    [InlineData(",\"paid\":\"out\"")]
    public async Task A_card_whose_purchases_seem_to_come_in_is_a_warning_that_says_what_to_send(string paid)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", "{\"rules\":[" + string.Join(',', s_costs.Select(text =>
            $$"""{"textHas":"{{text}}","to":"household"{{paid}}}""")) + """,{"textHas":"own account","to":"own-account"}]}""");
        const string Plastic = "Date,Amount,Description\r\n2026-01-05,84.10,Green grocer\r\n2026-01-19,91.35,Green grocer\r\n"
            + "2026-01-21,120.50,Rod order\r\n2026-01-28,14.40,Parcel post\r\n2026-01-31,-310.35,From own account\r\n";
        var warning = Mostly(await Send(studio, "?currency=USD", ("current", Sheet), ("plastic", Plastic))).Single();
        Assert.Equal(("#/files/1", "4 of 5 lines of \"plastic\" came in, and the texts of 4 of these are costs by the reading rules; if "
            + "purchases are positive there, send one more field: -F 'plastic.layout={\"positiveIsOut\":true}'."),
            (warning.GetProperty("pointer").GetString(), warning.GetProperty("message").GetString()));

        var turned = await Send(studio, "?currency=USD", ("current", Sheet), ("plastic", Plastic),
            ("plastic.layout", """{"positiveIsOut":true}"""));
        Assert.Empty(Mostly(turned));
        Assert.Equal("310.35", turned.Json.GetProperty("files")[1].GetProperty("accounts")[0].GetProperty("count").GetProperty("out").GetRawText());
    }

    [Fact]
    public async Task An_account_of_income_with_refunds_is_no_such_warning()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        var payouts = string.Concat(Enumerable.Range(1, 9).Select(month => $"2026-0{month}-15,812.40,Shop payout\r\n"));
        const string Refunds = "2026-02-16,12.00,Frit order back\r\n2026-03-16,12.00,Rod order back\r\n2026-04-16,12.00,Rod order back\r\n";
        Assert.Empty(Mostly(await Send(studio, "?currency=USD",
            ("takings", "Date,Amount,Description\r\n" + payouts + Refunds + "2026-04-30,-3.00,Account fee\r\n"))));
        // signs that another column gives are right, whatever the texts are
        Assert.Empty(Mostly(await Send(studio, "?currency=USD&directionColumn=Way", ("takings", "Date,Amount,Description,Way\r\n"
            + Refunds.Replace("back\r\n", "back,in\r\n", StringComparison.Ordinal) + "2026-04-30,3.00,Account fee,out\r\n"))));
    }

    private static List<JsonElement> Mostly(Answer answer) => [.. answer.Json.GetProperty("warnings").EnumerateArray()
        .Where(warning => warning.GetProperty("code").GetString() == "money-mostly-in")];

    private static IEnumerable<string?> Warnings(Answer answer) =>
        answer.Json.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString());

    private static IEnumerable<string> Lines(Answer answer) => answer.Json.GetProperty("transactions").EnumerateArray().Select(line =>
        $"{line.GetProperty("file").GetString()} {line.GetProperty("date").GetString()} {line.GetProperty("amount").GetRawText()} "
        + line.GetProperty("outcome").GetString());
}
