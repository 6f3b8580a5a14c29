using System.Text;
using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>
/// Text that is no text (bytes that are not UTF-8, half a surrogate, control characters) in every body that is read, in every format, and in
/// addresses and headers: it is answered or refused, and never a fault of the service.
/// </summary>
public sealed class BrokenTextTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private const string Json = "application/json", Lines = "application/x-ndjson", Sheet = "text/csv", Form = "multipart/form-data; boundary=cut";

    /// <summary>Every address that reads a body in formats of its own; those that read JSON alone are in <see cref="EveryBodyTests"/>.</summary>
    internal static readonly (string Method, string Path, string Type, string Good)[] Bodies =
    [
        .. EveryBodyTests.Bodies.Select(body => (body.Method, body.Path, Json, body.Good)),
        ("POST", "/v1/designs/batch", Json, """[{"key":"A-1","name":"Vase","profile":"main","making":{"steps":[{"name":"blow","handsOnMinutes":9}]},"aliases":["vase 1"],"savedAt":"2027-01-02T09:00:00Z"}]"""),
        ("POST", "/v1/designs/batch", Lines, "{\"key\":\"A-1\",\"name\":\"Vase\",\"profile\":\"main\",\"making\":{\"piecesPerDay\":4}}\n{\"key\":\"A-2\",\"profile\":\"main\",\"making\":{\"piecesPerDay\":4}}\n"),
        ("POST", "/v1/designs/batch", Sheet, "sku,name,profile,steps,aliases\r\nA-3,Vase,main,\"[{\"\"name\"\":\"\"blow\"\",\"\"handsOnMinutes\"\":9}]\",\"[\"\"vase 3\"\"]\"\r\n"),
        ("POST", "/v1/listed-prices/batch", Json, """[{"sku":"RB-014","channel":"web","price":58,"currency":"USD"}]"""),
        ("POST", "/v1/listed-prices/batch", Lines, "{\"sku\":\"RB-014\",\"channel\":\"web\",\"price\":58}\n"),
        ("POST", "/v1/listed-prices/batch", Sheet, "sku,channel,price\r\nRB-014,web,58.00\r\n"),
        ("POST", "/v1/price-checks/batch", Json, """[{"sku":"RB-014","channel":"web","price":58,"currency":"USD"}]"""),
        ("POST", "/v1/price-checks/batch", Lines, "{\"sku\":\"RB-014\",\"channel\":\"web\",\"price\":58}\n{\"sku\":\"RB-014\",\"channel\":\"web\",\"price\":1}\n"),
        ("POST", "/v1/price-checks/batch", Sheet, "sku,channel,price,note\r\nRB-014,web,58.00,\"a, b\"\r\nnone,web,1,\r\n"),
        ("POST", "/v1/statements?currency=USD&lines=true", Sheet, "Date,Description,Amount\r\n2027-01-02,Rent of the bench,-540.00\r\n2027-01-03,Sale,58.00\r\n"),
        ("POST", "/v1/statements?currency=USD&lines=true", Form, "--cut\r\nContent-Disposition: form-data; name=\"bank\"; filename=\"a.csv\"\r\n\r\nDate,Description,Amount\r\n2027-01-02,Rent,-540.00\r\n\r\n--cut--\r\n"),
        ("POST", "/v1/statements?currency=USD&lines=true", "application/x-ofx", "OFXHEADER:100\r\nDATA:OFXSGML\r\nCHARSET:1252\r\n\r\n<OFX><BANKMSGSRSV1><STMTTRNRS><STMTRS><CURDEF>USD<BANKACCTFROM><ACCTID>1</BANKACCTFROM><BANKTRANLIST><STMTTRN><DTPOSTED>20270102<TRNAMT>-5.00<FITID>1<NAME>Rent</STMTTRN></BANKTRANLIST></STMTRS></STMTTRNRS></BANKMSGSRSV1></OFX>"),
        ("POST", "/v1/statements?currency=USD&lines=true", "application/xml", """<Document xmlns="urn:iso:std:iso:20022:tech:xsd:camt.053.001.02"><BkToCstmrStmt><Stmt><Acct><Id><IBAN>X1</IBAN></Id><Ccy>USD</Ccy></Acct><Ntry><Amt Ccy="USD">5.00</Amt><CdtDbtInd>DBIT</CdtDbtInd><BookgDt><Dt>2027-01-02</Dt></BookgDt><NtryDtls><TxDtls><RmtInf><Ustrd>Rent</Ustrd></RmtInf></TxDtls></NtryDtls></Ntry></Stmt></BkToCstmrStmt></Document>"""),
    ];

    /// <summary>What stands in a body where text should; the last ones are bytes of Windows-1252, Latin-1 and UTF-16.</summary>
    private static readonly byte[][] s_odd =
    [
        .. new[] { "\\ud800", "\\udfff", "\\ud83d\\u0041", "\\ud83d", "\\u0000", "\\u0007", "\\", "\\u12", "\u0000", "\u0001", "\u007f", "\uFEFF", "\uFFFF", "\u202e", "\"", "'", "\r", "\n", ",", "<", "&#xD800;", "&#0;", "]]>", "=", "%00" }.Select(Encoding.UTF8.GetBytes),
        [0x92], [0x80], [0xE9], [0xFF], [0xFE, 0xFF], [0xC0, 0x80], [0xC3, 0x28], [0xED, 0xA0, 0x80], [0xED, 0xBF, 0xBF], [0xF4, 0x90, 0x80, 0x80], [0xF0, 0x9F], [0x00, 0x41],
    ];

    [Theory]
    [InlineData("half a surrogate", "\\ud800")]
    [InlineData("the other half", "\\udfff")]
    [InlineData("a byte of Windows-1252", "\u0092")]
    public async Task A_key_that_is_no_text_is_refused_in_its_place(string what, string odd)
    {
        var studio = await AShop();
        var good = """[{"key":"B-1","profile":"main","making":{"piecesPerDay":4}},{"key":"B-@","profile":"main","making":{"piecesPerDay":4}}]""";
        var answer = await studio.SendBytes("POST", "/v1/designs/batch", Encoding.Latin1.GetBytes(good.Replace("@", odd, StringComparison.Ordinal)), Json);
        Assert.True(answer.Status is 400 or 422, $"{what}: {answer.Status} {answer.Text}");
        Assert.Equal(("malformed", "#/1"), (Assert.Single(answer.Codes), answer.Pointers[0][..3]));
        (await studio.Get("/v1/designs/B-1")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task A_surrogate_without_its_other_half_is_refused_wherever_it_stands_also_where_nothing_is_read()
    {
        var studio = await AShop();
        foreach (var member in new[] { "\"name\":\"\\ud800\"", "\"savedAt\":\"\\ud800\"", "\"savedAt\":[{\"a\":\"\\udc00\"}]", "\"savedAt\":{\"\\ud800\":1}" })
            Assert.Equal((member, "malformed"), (member, (await studio.Put("/v1/channels/web", $"{{{member},{Sample.Shop[1..]}")).IsProblem(400, "unreadable-request").Codes[0]));
        Assert.Equal(200, (await studio.Put("/v1/channels/web", $"{{\"savedAt\":\"\\ud83d\\udd25\",{Sample.Shop[1..]}")).Status);
    }

    [Fact]
    public async Task A_byte_order_mark_before_a_later_line_changes_nothing()
    {
        var studio = await AShop();
        var answer = await studio.SendBytes("POST", "/v1/designs/batch", Encoding.UTF8.GetBytes("{\"key\":\"C-1\",\"profile\":\"main\",\"making\":{\"piecesPerDay\":4}}\n\uFEFF{\"key\":\"C-2\",\"profile\":\"main\",\"making\":{\"piecesPerDay\":4}}\n"), Lines);
        Assert.Equal((200, 2), (answer.Status, answer.Json.GetProperty("items").GetArrayLength()));
    }

    [Fact]
    public async Task Lists_in_lists_in_a_cell_are_refused_however_deep()
    {
        var studio = await AShop();
        for (var depth = 28; depth <= 70; depth++)
            (await studio.SendBytes("POST", "/v1/designs/batch", Encoding.UTF8.GetBytes($"sku,profile,steps\r\nA-1,main,{new string('[', depth)}{new string(']', depth)}\r\n"), Sheet)).IsProblem(422, "invalid-input");
    }

    [Fact]
    public async Task Odd_bytes_in_any_body_are_never_a_fault_of_the_service()
    {
        var studio = await AShop();
        var random = new Random(20270107);
        var statuses = new Dictionary<int, int>();
        foreach (var (method, path, type, good) in Bodies)
            for (var i = 0; i < 60; i++)
            {
                var body = Damaged(Encoding.UTF8.GetBytes(good), random, first: i < s_odd.Length ? i : null);
                var answer = await studio.SendBytes(method, path, body, type);
                Check(answer, $"{method} {path} as {type}: {Encoding.Latin1.GetString(body)}");
                statuses[answer.Status] = statuses.GetValueOrDefault(answer.Status) + 1;
            }

        // What is all refused, or all taken, would try only half of the service.
        Assert.True(statuses.GetValueOrDefault(200) > 100 && statuses[400] > 200 && statuses[422] > 50, string.Join(", ", statuses));
    }

    [Fact]
    public async Task Bytes_at_random_in_any_format_are_never_a_fault_of_the_service()
    {
        var studio = await AShop();
        var random = new Random(20270108);
        foreach (var (method, path) in Bodies.Select(body => (body.Method, body.Path)).Distinct())
            foreach (var type in Bodies.Select(body => body.Type).Distinct())
                for (var i = 0; i < 4; i++)
                {
                    var body = new byte[random.Next(1, 400)];
                    random.NextBytes(body);
                    Check(await studio.SendBytes(method, path, body, type), $"{method} {path} as {type}: {Convert.ToHexString(body)}");
                }
    }

    [Fact]
    public async Task Odd_bytes_in_an_address_are_never_a_fault_of_the_service()
    {
        var studio = await AShop();
        string[] odd = ["%FF", "%ED%A0%80", "%C0%80", "%C3%28", "%92", "%01", "%0d%0a", "%F0%9F%94%A5", "%EF%BF%BF", "%", "%zz", "%25", "%5c", "%E2%80%AE", "é"];
        string[] paths = ["/v1/designs/@", "/v1/designs/@/floor-price", "/v1/designs/@/revisions", "/v1/designs/RB-014/prices/@", "/v1/channels/@", "/v1/profiles/@/requirement", "/problems/@", "/@", "/v1/designs?after=@",
            "/v1/price-checks?sku=@&channel=@&price=58", "/v1/price-list?channel=@", "/v1/floor-changes?since=@", "/v1/price-checks?sku=RB-014&channel=web&price=@", "/v1/designs?asOf=@", "/v1/designs?@=1"];
        foreach (var path in paths)
            foreach (var text in odd)
                foreach (var method in path.Contains('?', StringComparison.Ordinal) ? ["GET"] : new[] { "GET", "DELETE", "PUT" })
                {
                    var answer = await studio.SendBytes(method, path.Replace("@", text, StringComparison.Ordinal), method == "PUT" ? Encoding.UTF8.GetBytes(Sample.Shop) : null, Json);
                    Check(answer, $"{method} {path} {text}");
                }
    }

    private static void Check(Answer answer, string what)
    {
        Assert.True(answer.Status < 500, $"{answer.Status} to {what}: {answer.Text}");
        if (answer.Status >= 400)
            Assert.True(answer.ContentType == "application/problem+json" && answer.Json.GetProperty("status").GetInt32() == answer.Status, $"{answer.ContentType} to {what}");
        else if (answer.ContentType == Json)
            Assert.Null(Record.Exception(() => JsonDocument.Parse(answer.Text).Dispose()));
        Assert.DoesNotContain("\"status\":500", answer.Text, StringComparison.Ordinal);
    }

    /// <summary>Odd bytes put in, put in place of others, or bytes taken out, in up to three places.</summary>
    private static byte[] Damaged(byte[] good, Random random, int? first)
    {
        var body = good.ToList();
        for (var times = first is null ? random.Next(1, 4) : 1; times > 0; times--)
        {
            var odd = s_odd[first ?? random.Next(s_odd.Length)];
            // Most often where text stands: behind a letter.
            var places = Enumerable.Range(1, body.Count - 1).Where(at => char.IsAsciiLetter((char)body[at - 1])).ToList();
            var at = random.Next(4) == 0 || places.Count == 0 ? random.Next(body.Count) : places[random.Next(places.Count)];
            if (random.Next(3) == 0)
                body.RemoveRange(at, Math.Min(random.Next(1, 4), body.Count - at));
            body.InsertRange(Math.Min(at, body.Count), odd);
        }

        return [.. body];
    }

    private async Task<Studio> AShop()
    {
        var studio = shared.Of("Production");
        await studio.HasASmallShop();
        return studio;
    }
}
