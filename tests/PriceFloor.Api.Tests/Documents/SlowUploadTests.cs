using System.Net;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>
/// A batch does not undo changes made while it arrives: rows are laid over the documents as they are when they are written.
/// </summary>
public sealed class SlowUploadTests
{
    private const string FivePieces = """{"profile":"main","making":{"piecesPerDay":5}}""";

    [Fact]
    public async Task A_sheet_of_designs_keeps_a_change_made_while_it_was_uploaded()
    {
        await using var studio = await WithAShop();
        using var upload = new HeldUpload("sku,name\n", "RB-014,River drop\n", "text/csv");
        var sent = upload.SendTo(studio, "/v1/designs/batch");
        await upload.HasBegun();
        await studio.Has("/v1/designs/RB-014", FivePieces);
        upload.Finish();
        Assert.Equal(200, (await sent).Status);
        await BothChangesStand(studio);
    }

    [Fact]
    public async Task A_sheet_of_designs_keeps_a_change_made_while_it_waited_to_be_written()
    {
        await using var studio = await WithAShop();
        var store = studio.Services.GetRequiredService<Store>();
        var (mayWrite, isWriting) = (new TaskCompletionSource(), new TaskCompletionSource());
        var change = Task.Run(() => store.Write("somebody", async writing =>
        {
            isWriting.SetResult();
            mayWrite.Task.Wait(Studio.Cancellation);
            return await writing.Save("design", "RB-014", FivePieces, [new DocumentName("profile", "main")]);
        }), Studio.Cancellation);
        await isWriting.Task;
        var sent = studio.SendBytes("POST", "/v1/designs/batch", "sku,name\nRB-014,River drop\n"u8.ToArray(), "text/csv");
        await Task.Delay(300, Studio.Cancellation); // it is read, laid over four pieces a day, and waits for its turn
        mayWrite.SetResult();
        await change;
        Assert.Equal(200, (await sent).Status);
        await BothChangesStand(studio);
    }

    [Fact]
    public async Task A_batch_of_prices_goes_to_the_design_that_has_the_name_when_it_is_written()
    {
        await using var studio = await WithAShop();
        await studio.Has("/v1/designs/OLD", Named("drop"));
        await studio.Has("/v1/designs/NEW", Sample.Pendant);
        using var upload = new HeldUpload("sku,channel,price\n", "drop,web,64.00\n", "text/csv");
        var sent = upload.SendTo(studio, "/v1/listed-prices/batch");
        await upload.HasBegun();
        await studio.Has("/v1/designs/OLD", Sample.Pendant);
        await studio.Has("/v1/designs/NEW", Named("drop"));
        upload.Finish();
        Assert.Equal(200, (await sent).Status);
        Assert.Equal("64.00", (await studio.Get("/v1/designs/NEW/prices/web")).Json.GetProperty("price").GetRawText());
        (await studio.Get("/v1/designs/OLD/prices/web")).IsProblem(404, "not-found");
    }

    [Theory]
    [InlineData("DELETE", "", 401)]
    [InlineData("POST", "/rotation?overlapHours=0", 401)]
    [InlineData("POST", "/rotation?overlapHours=1", 200)] // the present secret still opens for an hour
    public async Task A_key_that_ends_while_its_batch_is_uploaded_writes_nothing(string method, string address, int status)
    {
        await using var studio = await WithAShop();
        using var client =
            studio.ClientWith((await studio.Post("/v1/keys", """{"name":"importer","scopes":["write"]}""")).Json.GetProperty("key").GetString());
        using var upload = new HeldUpload("sku,name\n", "RB-014,River drop\n", "text/csv");
        var sent = upload.SendTo(studio, "/v1/designs/batch", client);
        await upload.HasBegun();
        Assert.InRange((await studio.Send(method, $"/v1/keys/importer{address}", null)).Status, 200, 299);
        upload.Finish();
        var answer = await sent;
        if (status == 401)
            Assert.Contains("nothing was stored", answer.IsProblem(401, "no-key").Text, StringComparison.Ordinal);
        Assert.Equal((status, status == 200 ? 2 : 1),
            (answer.Status, (await studio.Get("/v1/designs/RB-014")).Json.GetProperty("revision").GetInt32()));
    }

    [Fact]
    public async Task A_key_that_expires_or_is_replaced_under_its_name_while_a_document_is_uploaded_writes_nothing()
    {
        await using var studio = await WithAShop();
        foreach (var recreated in new[] { false, true })
        {
            using var client = studio.ClientWith((await studio.Post("/v1/keys",
                """{"name":"importer","scopes":["write"],"expires":"2027-01-02T10:00:00Z"}""")).Json.GetProperty("key").GetString());
            using var upload = new HeldUpload("{\"profile\":\"main\",", "\"making\":{\"piecesPerDay\":7}}", "application/json");
            var sent = upload.SendTo(studio, "/v1/designs/RB-014", client, HttpMethod.Put);
            await upload.HasBegun();
            if (recreated)
            {
                await studio.Delete("/v1/keys/importer");
                Assert.Equal(201, (await studio.Post("/v1/keys", """{"name":"importer","scopes":["verdict"]}""")).Status);
            }
            else
                studio.Clock.Advance(TimeSpan.FromHours(1));
            upload.Finish();
            (await sent).IsProblem(401, "no-key");
            await studio.Delete("/v1/keys/importer");
            studio.Clock.AdjustTime(new DateTimeOffset(2027, 1, 2, 9, 30, 0, TimeSpan.Zero));
        }

        Assert.Equal(1, (await studio.Get("/v1/designs/RB-014")).Json.GetProperty("revision").GetInt32());
    }

    private static string Named(string alias) => $$"""{"profile":"main","making":{"piecesPerDay":4},"aliases":["{{alias}}"]}""";

    private static async Task<Studio> WithAShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        return studio;
    }

    private static async Task BothChangesStand(Studio studio)
    {
        var design = (await studio.Get("/v1/designs/RB-014")).Json;
        Assert.Equal(("River drop", 5),
            (design.GetProperty("name").GetString(), design.GetProperty("making").GetProperty("piecesPerDay").GetInt32()));
        Assert.Equal(3, design.GetProperty("revision").GetInt32());
    }

    /// <summary>A body whose end is sent when the test allows it.</summary>
    private sealed class HeldUpload : HttpContent
    {
        private readonly TaskCompletionSource _begun = new(), _mayEnd = new();
        private readonly byte[] _start, _end;

        public HeldUpload(string start, string end, string mediaType)
        {
            (_start, _end) = (Encoding.UTF8.GetBytes(start), Encoding.UTF8.GetBytes(end));
            Headers.ContentType = new(mediaType);
        }

        public async Task<Answer> SendTo(Studio studio, string path, HttpClient? client = null, HttpMethod? method = null)
        {
            using var request = new HttpRequestMessage(method ?? HttpMethod.Post, path) { Content = this };
            using var response = await (client ?? studio.Client).SendAsync(request, Studio.Cancellation);
            return await Answer.Of(response);
        }

        /// <summary>Its first bytes are sent, and the handler has had time to read them.</summary>
        public async Task HasBegun()
        {
            await _begun.Task;
            await Task.Delay(300, Studio.Cancellation);
        }

        public void Finish() => _mayEnd.SetResult();

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            await stream.WriteAsync(_start, Studio.Cancellation);
            await stream.FlushAsync(Studio.Cancellation);
            _begun.SetResult();
            await _mayEnd.Task;
            await stream.WriteAsync(_end, Studio.Cancellation);
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }
}
