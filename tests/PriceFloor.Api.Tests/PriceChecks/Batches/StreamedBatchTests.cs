using System.Globalization;
using System.IO.Pipelines;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using PriceFloor.Api.Access;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.PriceChecks.Batches;

public sealed class StreamedBatchTests
{
    [Fact]
    public async Task Answers_come_while_lines_still_go_and_all_are_of_one_moment()
    {
        await using var studio = await BatchTests.AShop();
        var lines = new Pipe();
        using var request =
            new HttpRequestMessage(HttpMethod.Post, "/v1/price-checks/batch") { Content = new StreamContent(lines.Reader.AsStream()) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("text/csv");
        const int Rows = 20_000;
        var sending = studio.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Studio.Cancellation);
        var writing = lines.Writer.WriteAsync(
            Encoding.UTF8.GetBytes("sku,channel,price\n" + string.Concat(Enumerable.Repeat("RB-014,web,58\n", Rows))), Studio.Cancellation).AsTask();
        using var response = await sending; // though the request has not ended
        using var reader = new StreamReader(await response.Content.ReadAsStreamAsync(Studio.Cancellation));
        Assert.Equal("sku,channel,price,verdict,floorPrice,targetPrice,problem,shortBy", await reader.ReadLineAsync(Studio.Cancellation));
        Assert.Equal("RB-014,web,58,below-floor,61.74,120.00,,3.65", await reader.ReadLineAsync(Studio.Cancellation));

        // Costs rise while the batch is under way: its rest is still answered from the documents it began with.
        Assert.Equal(200, (await studio.Put("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "54000", StringComparison.Ordinal))).Status);
        Assert.Contains("92.47", (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58")).Text, StringComparison.Ordinal);
        var ending = Task.Run(async () =>
        {
            await writing;
            await lines.Writer.WriteAsync(Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("ST-001,web,58\n", Rows))), Studio.Cancellation);
            await lines.Writer.CompleteAsync();
        }, Studio.Cancellation);
        var rest = (await reader.ReadToEndAsync(Studio.Cancellation)).TrimEnd('\n').Split('\n');
        await ending;
        Assert.Equal((2 * Rows) - 1, rest.Length);
        Assert.All(rest.Take(Rows - 1), line => Assert.Equal("RB-014,web,58,below-floor,61.74,120.00,,3.65", line));
        Assert.All(rest.Skip(Rows - 1), line => Assert.Equal("ST-001,web,58,below-target,31.00,60.00,,0.00", line));
    }

    [Fact]
    public async Task A_caller_that_reads_nothing_before_it_has_sent_all_still_gets_everything()
    {
        var folder = Directory.CreateTempSubdirectory("pricefloor-spill-").FullName;
        var pipe = new Pipe(new PipeOptions(pauseWriterThreshold: 4096, resumeWriterThreshold: 2048));
        var sent = new MemoryStream();
        await using (var writer = new SpillingWriter(pipe.Writer, folder, new PutBy(long.MaxValue), TimeSpan.FromSeconds(30)))
        {
            for (var i = 0; i < 500; i++) // nobody reads: without the spill this waits for ever
            {
                var line = Encoding.UTF8.GetBytes(i.ToString(CultureInfo.InvariantCulture).PadLeft(1000) + "\n");
                await sent.WriteAsync(line, Studio.Cancellation);
                await writer.WriteAsync(line, Studio.Cancellation);
            }

            if (!OperatingSystem.IsWindows())
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Assert.Single(Directory.GetFiles(folder))));
            var received = new MemoryStream();
            var reading = pipe.Reader.CopyToAsync(received, Studio.Cancellation);
            await writer.FinishAsync(Studio.Cancellation);
            await pipe.Writer.CompleteAsync();
            await reading;
            Assert.Equal(sent.ToArray(), received.ToArray());
        }

        Assert.Empty(Directory.GetFiles(folder));
        Directory.Delete(folder);
    }

    [Fact]
    public async Task A_caller_that_reads_as_it_goes_leaves_no_file()
    {
        var folder = Directory.CreateTempSubdirectory("pricefloor-spill-").FullName;
        var pipe = new Pipe();
        await using (var writer = new SpillingWriter(pipe.Writer, folder, new PutBy(long.MaxValue), TimeSpan.FromSeconds(30)))
        {
            await writer.WriteAsync("text"u8.ToArray(), Studio.Cancellation);
            Assert.Equal("text", Encoding.UTF8.GetString((await pipe.Reader.ReadAsync(Studio.Cancellation)).Buffer));
            await writer.FinishAsync(Studio.Cancellation);
            Assert.Empty(Directory.GetFiles(folder));
        }

        Directory.Delete(folder);
    }

    [Fact]
    public async Task A_caller_that_goes_away_does_no_harm()
    {
        await using var studio = await BatchTests.AShop();
        var lines = new Pipe();
        await lines.Writer.WriteAsync("sku,channel,price\nRB-014,web,58\n"u8.ToArray(), Studio.Cancellation);
        using var request =
            new HttpRequestMessage(HttpMethod.Post, "/v1/price-checks/batch") { Content = new StreamContent(lines.Reader.AsStream()) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("text/csv");
        using var gone = CancellationTokenSource.CreateLinkedTokenSource(Studio.Cancellation);
        var sending = studio.Client.SendAsync(request, HttpCompletionOption.ResponseContentRead, gone.Token);
        await Task.Delay(200, Studio.Cancellation);
        await gone.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => sending);
        Assert.Equal(HttpStatusCode.OK, (HttpStatusCode)(await studio.Get("/v1/price-list")).Status);
    }
}
