using System.Text;
using PriceFloor.Api.Http.Reading;
using Xunit;
using static PriceFloor.Api.Tests.Statements.SentStatements;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>Which files are accepted, in which form, and how far they are read.</summary>
public sealed class StatementFileTests
{
    [Fact]
    public async Task One_file_is_taken_as_the_body_whatever_it_is_called()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        foreach (var type in new[] { "text/csv", "text/plain", "application/octet-stream", "application/xml" })
        {
            var answer = await studio.SendBytes("POST", "/v1/statements?currency=USD&account=current", Encoding.UTF8.GetBytes(Sheet), type);
            Assert.Equal((200, "csv", "current"), (answer.Status, answer.Json.GetProperty("files")[0].GetProperty("format").GetString(),
                answer.Json.GetProperty("files")[0].GetProperty("accounts")[0].GetProperty("account").GetString()));
        }

        (await studio.SendBytes("POST", "/v1/statements", Encoding.UTF8.GetBytes("{}"), "application/json")).IsProblem(415, "media-type");
    }

    [Fact]
    public async Task What_no_file_says_is_asked_for()
    {
        await using var studio = new Studio();
        var currency = (await Send(studio, "", ("current", Sheet))).IsProblem(422, "invalid-input");
        Assert.Equal(["currency"], currency.Pointers);
        var column = (await Send(studio, "?currency=USD", ("current", "When,Amount,Description\r\n2026-01-05,1,x\r\n")))
            .IsProblem(422, "invalid-input");
        Assert.Contains("dateColumn", column.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(200, (await Send(studio, "?currency=USD&dateColumn=When", ("current", "When,Amount,Description\r\n2026-01-05,1,x\r\n"))).Status);
        var dates = (await Send(studio, "?currency=USD", ("current", "Date,Amount,Description\r\n02/03/2026,1,x\r\n")))
            .IsProblem(422, "invalid-input");
        Assert.Equal(["ambiguous-date"], dates.Codes);
        var ordered = await Send(studio, "?currency=USD&dateOrder=day-month-year&lines=true",
            ("current", "Date,Amount,Description\r\n02/03/2026,1,x\r\n"));
        Assert.Equal("2026-03-02", ordered.Json.GetProperty("transactions")[0].GetProperty("date").GetString());
    }

    public static TheoryData<string, string, int, string> Hostile => new()
    {
        { "a letter", "Dear customer", 400, "unreadable-request" },
        { "nothing", "", 400, "unreadable-request" },
        { "an entity bomb", "<?xml version=\"1.0\"?><!DOCTYPE a [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\">]>"
            + "<Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.08\">&b;</Document>", 400, "unreadable-request" },
        { "an external entity", "<?xml version=\"1.0\"?><!DOCTYPE a [<!ENTITY a SYSTEM \"file:///etc/passwd\">]>"
            + "<Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.08\">&a;</Document>", 400, "unreadable-request" },
        { "broken off", "<?xml version=\"1.0\"?><Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.08\"><BkToCstmrStmt>", 400,
            "unreadable-request" },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task A_hostile_file_is_a_problem(string what, string file, int status, string slug)
    {
        await using var studio = new Studio();
        Assert.True((await Send(studio, "?currency=USD", ("current", file))).IsProblem(status, slug).Text.Length < 2000, what);
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
    public async Task Too_many_files_and_bytes_are_refused_before_they_are_read()
    {
        await using var studio = new Studio();
        (await Send(studio, "?currency=USD", [.. Enumerable.Range(0, 25).Select(number => ($"a{number}", Sheet))])).IsProblem(413, "too-large");
        (await studio.SendBytes("POST", "/v1/statements?currency=USD", new byte[32 * 1024 * 1024 + 1], "text/csv")).IsProblem(413, "too-large");
        (await Send(studio, "?currency=USD", ("a", new string('a', 20 * 1024 * 1024)), ("b", new string('b', 13 * 1024 * 1024))))
            .IsProblem(413, "too-large");
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
            // The service has answered and closed the connection while the rest was still being sent: some clients then see only the close.
        }

        Assert.InRange(much.Given, 32L * 1024 * 1024, 64L * 1024 * 1024);
        Assert.Equal(200, (await studio.Get("/health/live")).Status);
    }

    /// <summary>A long sheet of unknown length.</summary>
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
}
