using System.Text;
using System.Text.Json.Nodes;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.Statements;

public sealed class StatementTests
{
    private const string Rules = """
        {"rules":[{"textHas":"bench rent","costKind":"rent","to":"business"},{"textMatches":"(rod|frit) order","costKind":"materials","to":"business","tracedTo":"piece","name":"Glass"},
        {"textHas":"home rent","to":"household","name":"Home rent"},{"textHas":"payout","to":"sale"},{"textHas":"own account","to":"own-account"}]}
        """;

    private const string Sheet = "Date,Amount,Description\r\n2026-01-05,-540.00,Bench rent\r\n2026-01-09,-120.50,Frit order 4471\r\n2026-02-05,-540.00,Bench rent\r\n2026-02-15,812.40,Shop payout\r\n2026-02-28,-88.00,Riverside choir trip\r\n";

    private static readonly string[] s_formats = ["current-2026.csv", "current-2026.ofx"];

    [Fact]
    public async Task A_sheet_becomes_a_draft_that_can_be_put_back_as_it_is()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", Rules);
        var answer = await Send(studio, "?currency=USD", ("current", Sheet));

        Assert.Equal(200, answer.Status);
        Assert.Equal("no-store", answer["Cache-Control"]);
        // two months: rent 2 x 540 x 6; glass was bought in one of them: 120.50 x 6
        Assert.Equal("""[{"name":"Rent","amount":6480.00,"per":"year","costKind":"rent","deductible":true},{"name":"Glass","amount":723.00,"per":"year","costKind":"materials","tracedTo":"piece","deductible":true}]""",
            answer.Json.GetProperty("draft").GetProperty("expenses").GetRawText());
        Assert.Equal("""{"lines":5,"in":812.40,"out":1288.50}""", answer.Json.GetProperty("accounted").GetProperty("read").GetRawText());
        Assert.Equal("""{"lines":1,"in":0.00,"out":88.00}""", answer.Json.GetProperty("accounted").GetProperty("unplaced").GetRawText());
        Assert.Equal("""[{"text":"Riverside choir trip","paid":"out","count":1,"total":88.00,"first":"2026-02-28","last":"2026-02-28","suggested":null}]""", answer.Json.GetProperty("unplaced").GetRawText());
        Assert.Equal("""{"rules":"main@1"}""", answer.Json.GetProperty("basis").GetRawText());

        var stored = await studio.Put("/v1/profiles/drafted", answer.Json.GetProperty("draft").GetRawText());
        Assert.Equal(201, stored.Status);
        Assert.Equal(JsonNode.Parse(answer.Json.GetProperty("draft").GetRawText())!.ToJsonString(), Without(stored.Text, "key", "revision", "savedAt"));
    }

    [Fact]
    public async Task The_same_year_in_each_format_gives_the_same_draft()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", await File.ReadAllTextAsync(Repository.File("src/PriceFloor.Api/Demo/starter-rules.json"), Studio.Cancellation));
        var card = await Bank("card-2026.csv");
        var drafts = new List<string>();
        foreach (var file in s_formats)
            foreach (var other in new[] { card, await Bank("card-2026.xml") })
            {
                var answer = await Send(studio, "?currency=USD", ("current", await Bank(file)), ("card", other));
                drafts.Add(answer.Json.GetProperty("draft").GetRawText() + answer.Json.GetProperty("lines").GetRawText() + answer.Json.GetProperty("accounted").GetRawText());
            }

        Assert.Equal(4, drafts.Count);
        Assert.Single(drafts.Distinct());
        Assert.Contains("\"name\":\"Bench rent\",\"amount\":6480.00", drafts[0], StringComparison.Ordinal);         // 12 x 540
        Assert.Contains("\"name\":\"Studio insurance\",\"amount\":690.00", drafts[0], StringComparison.Ordinal);    // one bill a year
        Assert.Contains("\"paired\":{\"lines\":24,", drafts[0], StringComparison.Ordinal);                          // twelve settlements of the card, both halves
    }

    [Fact]
    public async Task One_file_is_taken_as_the_body_whatever_it_is_called()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", Rules);
        foreach (var type in new[] { "text/csv", "text/plain", "application/octet-stream", "application/xml" })
        {
            var answer = await studio.SendBytes("POST", "/v1/statements?currency=USD&account=current", Encoding.UTF8.GetBytes(Sheet), type);
            Assert.Equal((200, "csv", "current"), (answer.Status, answer.Json.GetProperty("files")[0].GetProperty("format").GetString(), answer.Json.GetProperty("files")[0].GetProperty("accounts")[0].GetProperty("account").GetString()));
        }

        (await studio.SendBytes("POST", "/v1/statements", Encoding.UTF8.GetBytes("{}"), "application/json")).IsProblem(415, "media-type");
    }

    [Fact]
    public async Task Each_line_says_its_fate_and_the_rule_that_took_it()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", Rules);
        var lines = (await Send(studio, "?currency=USD&lines=true&to=2026-02-20", ("current", Sheet), ("again", Sheet), ("current", Sheet))).Json.GetProperty("transactions");

        Assert.Equal(15, lines.GetArrayLength());
        Assert.Equal("""{"file":"current","line":2,"date":"2026-01-05","amount":-540.00,"outcome":"placed","rule":"#/rules/0"}""", lines[0].GetRawText());
        Assert.Equal("""{"file":"current","line":6,"date":"2026-02-28","amount":-88.00,"outcome":"outside-period"}""", lines[4].GetRawText());
        Assert.Equal("""{"file":"current","line":3,"date":"2026-01-09","amount":-120.50,"outcome":"duplicate"}""", lines[11].GetRawText());
    }

    [Fact]
    public async Task Against_a_stored_profile_each_heading_that_differs_is_told()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", Rules);
        await studio.Has("/v1/profiles/main", """{"name":"Ours","currency":"USD","yearStart":"2026-01-01","calendar":{"weeksPerYear":46,"daysPerWeek":5,"hoursPerDay":7},"expenses":[{"name":"Rent","amount":500,"per":"month","costKind":"rent"}],"tax":{"kind":"flat","rate":0.2}}""");
        var answer = await Send(studio, "?against=main", ("current", Sheet));

        Assert.Equal("""{"to":"business","costKind":"materials","name":null,"stored":0.00,"drafted":723.00,"difference":723.00}""", answer.Json.GetProperty("differences")[0].GetRawText());
        Assert.Equal("""{"to":"business","costKind":"rent","name":null,"stored":6000.00,"drafted":6480.00,"difference":480.00}""", answer.Json.GetProperty("differences")[1].GetRawText());
        Assert.Equal(0.2m, answer.Json.GetProperty("draft").GetProperty("tax").GetProperty("rate").GetDecimal());
        // 59 of 365 days; the stored year needs 6,000: 969.87 to date, 812.40 came in, 5,187.60 is left for 46 x 306/365 weeks
        Assert.Equal("""{"from":"2026-01-01","to":"2026-02-28","isWhole":true,"elapsed":0.161644,"shareDue":0.161644,"keptBack":0.00,"requiredRevenue":6000.00,"requiredToDate":969.87,"incomeToDate":812.40,"ahead":-157.46,"stillToBring":5187.60,"weeksLeft":38.5644,"perWeekLeft":134.52}""",
            answer.Json.GetProperty("pace").GetRawText());
        (await Send(studio, "?against=main&currency=EUR", ("current", Sheet))).IsProblem(422, "currency-mismatch");
        (await Send(studio, "?against=nobody&rules=none", ("current", Sheet))).IsProblem(422, "unknown-reference");
    }

    [Fact]
    public async Task Nothing_of_the_bank_is_stored_or_logged()
    {
        var log = new CapturedLog();
        await using var studio = new Studio(configure: log.Of);
        await studio.Has("/v1/reading-rules/main", Rules);
        var secret = "Zaunkoenig" + Guid.NewGuid().ToString("N");
        Assert.Contains(secret, (await Send(studio, "?currency=USD", ("current", $"Date,Amount,Description\r\n2026-01-05,-4711.13,{secret}\r\n"))).Text, StringComparison.Ordinal);
        foreach (var broken in new[] { $"{secret}", $"<?xml version=\"1.0\"?><{secret}>", $"OFXHEADER:100\r\n<OFX><{secret}>", $"Date,Amount,Description\r\n{secret},{secret},{secret}\r\n" })
            Assert.DoesNotContain(secret, (await Send(studio, "?currency=USD", ("current", broken))).Text, StringComparison.Ordinal);

        Assert.Contains(log.Lines, line => line.Contains("/v1/statements", StringComparison.Ordinal));
        Assert.DoesNotContain(log.Lines, line => line.Contains(secret, StringComparison.Ordinal) || line.Contains("4711", StringComparison.Ordinal));
        foreach (var file in Directory.EnumerateFiles(studio.Folder).Where(file => !file.EndsWith(".lock", StringComparison.Ordinal)))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var memory = new MemoryStream();
            await stream.CopyToAsync(memory, Studio.Cancellation);
            Assert.True(memory.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(secret)) < 0, file);
        }
    }

    [Fact]
    public async Task Without_rules_every_line_is_unplaced_and_told()
    {
        await using var studio = new Studio();
        var answer = await Send(studio, "?currency=USD", ("current", Sheet));

        Assert.Equal((5, "no-reading-rules"), (answer.Json.GetProperty("accounted").GetProperty("unplaced").GetProperty("lines").GetInt32(), answer.Json.GetProperty("warnings")[0].GetProperty("code").GetString()));
    }

    [Fact]
    public async Task What_is_stored_serves_only_a_key_that_may_read()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", Rules);
        await studio.Has("/v1/profiles/main", """{"currency":"USD","calendar":{"weeksPerYear":46,"daysPerWeek":5,"hoursPerDay":7}}""");
        using var writer = await studio.ClientFor("write");
        foreach (var query in new[] { "?against=main", "?currency=USD&rules=main", "?against=nobody", "?rules=nobody" })
            (await Send(studio, query, writer, ("current", Sheet))).IsProblem(403, "key-not-allowed");
        var unsorted = await Send(studio, "?currency=USD", writer, ("current", Sheet));
        Assert.Equal((200, 5, "{}"), (unsorted.Status, unsorted.Json.GetProperty("accounted").GetProperty("unplaced").GetProperty("lines").GetInt32(), unsorted.Json.GetProperty("basis").GetRawText()));

        using var both = await studio.ClientFor("read", "write");
        Assert.Equal(200, (await Send(studio, "?against=main&rules=main", both, ("current", Sheet))).Status);
    }

    [Fact]
    public async Task Lines_in_foreign_money_and_unreadable_ones_are_refused_one_by_one()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", Rules);
        var answer = await Send(studio, "?currency=USD", ("current", "Date,Amount,Description,Currency\r\n2026-01-05,-540.00,Bench rent,USD\r\n2026-01-06,-30.00,Bench rent,EUR\r\n2026-01-07,$12,Bench rent,USD\r\n"));

        Assert.Equal(2, answer.Json.GetProperty("refused").GetProperty("count").GetInt32());
        Assert.Equal([("bad-amount", 4), ("currency-mismatch", 3)], answer.Json.GetProperty("refused").GetProperty("lines").EnumerateArray().Select(line => (line.GetProperty("code").GetString(), line.GetProperty("line").GetInt32())));
        Assert.Equal(1, answer.Json.GetProperty("accounted").GetProperty("foreignCurrency").GetProperty("lines").GetInt32());
    }

    [Fact]
    public async Task A_pattern_that_is_too_slow_is_told_with_its_rule()
    {
        await using var studio = new Studio();
        // Each pattern looks 450 letters back, which no table of states can hold, so that each letter of each line costs hundreds of steps: many seconds in all.
        var rules = Enumerable.Range(450, 10).Select(back => $$$"""{"textMatches":"(a|b)*a(a|b){{{{back}}}}c","to":"household"}""");
        await studio.Has("/v1/reading-rules/main", $$"""{"rules":[{"textHas":"bench rent","to":"business"},{{string.Join(',', rules)}}]}""");
        var random = new Random(7);
        var lines = Enumerable.Range(1, 8000).Select(line => FormattableString.Invariant($"2026-01-05,-{line}.00,{string.Concat(Enumerable.Range(0, 480).Select(_ => random.Next(2) == 0 ? 'a' : 'b'))}\r\n"));
        var problem = (await Send(studio, "?rules=main&currency=USD", ("current", $"Date,Amount,Description\r\n{string.Concat(lines)}"))).IsProblem(422, "cannot-compute");
        Assert.Matches(@"The slowest is #/rules/([1-9]|10)/textMatches", problem.Text);
        Assert.Matches(@"\(a\|b\)\*a\(a\|b\)\{45[0-9]\}c", problem.Text);
    }

    [Fact]
    public async Task What_no_file_says_is_asked_for()
    {
        await using var studio = new Studio();
        var currency = (await Send(studio, "", ("current", Sheet))).IsProblem(422, "invalid-input");
        Assert.Equal(["currency"], currency.Pointers);
        var column = (await Send(studio, "?currency=USD", ("current", "When,Amount,Description\r\n2026-01-05,1,x\r\n"))).IsProblem(422, "invalid-input");
        Assert.Contains("dateColumn", column.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(200, (await Send(studio, "?currency=USD&dateColumn=When", ("current", "When,Amount,Description\r\n2026-01-05,1,x\r\n"))).Status);
        var dates = await Send(studio, "?currency=USD", ("current", "Date,Amount,Description\r\n02/03/2026,1,x\r\n"));
        Assert.Equal("ambiguous-date", dates.Json.GetProperty("refused").GetProperty("lines")[0].GetProperty("code").GetString());
        var ordered = await Send(studio, "?currency=USD&dateOrder=day-month-year&lines=true", ("current", "Date,Amount,Description\r\n02/03/2026,1,x\r\n"));
        Assert.Equal("2026-03-02", ordered.Json.GetProperty("transactions")[0].GetProperty("date").GetString());
    }

    public static TheoryData<string, string, int, string> Hostile => new()
    {
        { "a letter", "Dear customer", 400, "unreadable-request" },
        { "nothing", "", 400, "unreadable-request" },
        { "an entity bomb", "<?xml version=\"1.0\"?><!DOCTYPE a [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\">]><Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.08\">&b;</Document>", 400, "unreadable-request" },
        { "an external entity", "<?xml version=\"1.0\"?><!DOCTYPE a [<!ENTITY a SYSTEM \"file:///etc/passwd\">]><Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.08\">&a;</Document>", 400, "unreadable-request" },
        { "broken off", "<?xml version=\"1.0\"?><Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.08\"><BkToCstmrStmt>", 400, "unreadable-request" },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task A_hostile_file_is_a_problem(string what, string file, int status, string slug)
    {
        await using var studio = new Studio();
        Assert.True((await Send(studio, "?currency=USD", ("current", file))).IsProblem(status, slug).Text.Length < 2000, what);
    }

    [Fact]
    public async Task Too_many_files_and_bytes_are_refused_before_they_are_read()
    {
        await using var studio = new Studio();
        (await Send(studio, "?currency=USD", [.. Enumerable.Range(0, 25).Select(number => ($"a{number}", Sheet))])).IsProblem(413, "too-large");
        (await studio.SendBytes("POST", "/v1/statements?currency=USD", new byte[32 * 1024 * 1024 + 1], "text/csv")).IsProblem(413, "too-large");
        (await Send(studio, "?currency=USD", ("a", new string('a', 20 * 1024 * 1024)), ("b", new string('b', 13 * 1024 * 1024)))).IsProblem(413, "too-large");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Two_hundred_megabytes_of_unknown_length_are_read_no_further_than_the_bound(bool inAForm)
    {
        await using var studio = new Studio(onSockets: true);
        await using var much = new Much(200L * 1024 * 1024);
        using HttpContent file = new StreamContent(much);
        using var form = new MultipartFormDataContent { { file, "current", "current.csv" } };
        if (!inAForm)
            file.Headers.ContentType = new("text/csv");
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/statements?currency=USD") { Content = inAForm ? form : file };
        request.Headers.TransferEncodingChunked = true;
        request.Headers.ExpectContinue = false;
        try
        {
            using var response = await studio.Client.SendAsync(request, Studio.Cancellation);
            (await Answer.Of(response)).IsProblem(413, "too-large");
        }
        catch (HttpRequestException)
        {
            // The service has answered and hung up while the rest was still on its way: some clients then see the hang-up alone.
        }

        Assert.InRange(much.Given, 32L * 1024 * 1024, 64L * 1024 * 1024);
        Assert.Equal(200, (await studio.Get("/health/live")).Status);
    }

    [Theory]
    [InlineData("multipart/form-data")]
    [InlineData("multipart/form-data; boundary=")]
    [InlineData("multipart/form-data; boundary=x")]
    public async Task A_broken_form_is_unreadable(string type)
    {
        await using var studio = new Studio();
        foreach (var body in new[] { "", "--x", "--x\r\nContent-Disposition: form-data\r\n\r\nno name\r\n--x--\r\n", "--x--\r\n" })
            (await studio.SendBytes("POST", "/v1/statements?currency=USD", Encoding.UTF8.GetBytes(body), type)).IsProblem(400, "unreadable-request");
    }

    [Fact]
    public async Task A_column_without_amounts_cannot_make_a_draft_that_is_no_profile()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", Rules);
        var answer = (await Send(studio, "?currency=USD", ("current", "Date,Amount,Description\r\n2026-01-05,-999999999999.00,Bench rent\r\n2026-02-05,-999999999999.00,Bench rent\r\n"))).IsProblem(422, "cannot-compute");

        Assert.Contains("expenses", answer.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    private static Task<Answer> Send(Studio studio, string query, params (string Account, string Text)[] files) => Send(studio, query, studio.Client, files);

    private static async Task<Answer> Send(Studio studio, string query, HttpClient client, params (string Account, string Text)[] files)
    {
        using var form = new MultipartFormDataContent();
        foreach (var (account, text) in files)
            form.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(text)), account, account + ".txt");
        using var response = await client.PostAsync("/v1/statements" + query, form, Studio.Cancellation);
        return await Answer.Of(response);
    }

    private static Task<string> Bank(string file) => File.ReadAllTextAsync(Repository.File("docs/statements/" + file), Studio.Cancellation);

    private static string Without(string json, params string[] names)
    {
        var document = JsonNode.Parse(json)!.AsObject();
        foreach (var name in names)
            document.Remove(name);
        return document.ToJsonString();
    }

    /// <summary>A long sheet without end in access.</summary>
    private sealed class Much(long length) : Stream
    {
        public long Given { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => Given; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var given = (int)long.Min(count, length - Given);
            Array.Fill(buffer, (byte)'a', offset, given);
            Given += given;
            return given;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }

    [Fact]
    public async Task A_season_says_what_is_due_by_now_and_without_one_that_is_assumed()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", Rules);
        await studio.Has("/v1/profiles/main", """{"currency":"USD","yearStart":"2026-01-01","calendar":{"weeksPerYear":46,"daysPerWeek":5,"hoursPerDay":7},"expenses":[{"amount":500,"per":"month"}]}""");
        // 6,000 a year, of which the season brings 5 of 100 in January and 5 in February: 600 are due, 812.40 came in.
        var answer = (await Send(studio, "?against=main&season=5,5,5,5,5,5,10,10,10,10,15,15", ("current", Sheet))).Json;
        Assert.Equal(("0.1", "600.00", "212.40"), (Raw("shareDue"), Raw("requiredToDate"), Raw("ahead")));
        Assert.DoesNotContain("#/pace/season", Pointers());

        answer = (await Send(studio, "?against=main", ("current", Sheet))).Json;
        Assert.Contains("#/pace/season", Pointers());
        foreach (var wrong in new[] { "1,2,3", "0,0,0,0,0,0,0,0,0,0,0,0", "1,1,1,1,1,1,1,1,1,1,1,-1", "x,1,1,1,1,1,1,1,1,1,1,1" })
            Assert.Equal(["not-a-season"], (await Send(studio, "?against=main&season=" + wrong, ("current", Sheet))).IsProblem(422, "invalid-input").Codes);

        string Raw(string name) => answer.GetProperty("pace").GetProperty(name).GetRawText();
        IEnumerable<string?> Pointers() => answer.GetProperty("assumed").EnumerateArray().Select(one => one.GetProperty("pointer").GetString());
    }

    [Fact]
    public async Task A_class_that_takes_no_day_from_the_bench_is_assumed_and_warned_about()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", """{"rules":[{"textHas":"class","to":"other-income","name":"Classes"}]}""");
        const string Lessons = "Date,Amount,Description\r\n2026-01-05,280.00,Evening class\r\n2026-02-05,280.00,Evening class\r\n";
        var answer = (await Send(studio, "?currency=USD", ("current", Lessons))).Json;
        Assert.Contains("#/draft/otherIncome/0/daysPerYear", answer.GetProperty("assumed").EnumerateArray().Select(one => one.GetProperty("pointer").GetString()));
        Assert.Contains("income-takes-no-days", answer.GetProperty("warnings").EnumerateArray().Select(one => one.GetProperty("code").GetString()));

        // A stored profile that says how many days is believed.
        await studio.Has("/v1/profiles/main", """{"currency":"USD","calendar":{"weeksPerYear":46,"daysPerWeek":5,"hoursPerDay":7},"otherIncome":[{"name":"Classes","amount":100,"per":"month","kind":"taxable","daysPerYear":12}]}""");
        answer = (await Send(studio, "?against=main", ("current", Lessons))).Json;
        Assert.Equal(12m, answer.GetProperty("draft").GetProperty("otherIncome")[0].GetProperty("daysPerYear").GetDecimal());
        Assert.DoesNotContain("income-takes-no-days", answer.GetProperty("warnings").EnumerateArray().Select(one => one.GetProperty("code").GetString()));
    }
}
