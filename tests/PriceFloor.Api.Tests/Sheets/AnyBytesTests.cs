using System.IO.Pipelines;
using PriceFloor.Api.Access;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>What is true of any bytes.</summary>
public sealed class AnyBytesTests
{
    private static readonly byte[] s_bytes = [.. "\"\",,,\r\r\n\n\n;a1 ="u8, 0xC3, 0xA9, 0xFF, 0xEF, 0xBB, 0xBF, 0];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 200)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task Every_byte_belongs_to_one_row_and_every_line_to_one_number(int seed)
    {
        var sheet = Bytes(new Random(seed));
        var rows = await ReadSheet.Rows([.. "a,b\n"u8, .. sheet]);
        Assert.Equal(sheet, rows.SelectMany(row => row.Raw + row.LineEnd).Select(one => (byte)one));

        var line = 2L;
        Assert.All(rows, row =>
        {
            Assert.Equal(line, row.Line);
            var text = row.Raw + row.LineEnd;
            line += text.Replace("\r\n", "\n", StringComparison.Ordinal).Count(one => one is '\r' or '\n');
        });
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task However_it_arrives_and_however_short_the_limit_it_is_read_the_same(int seed)
    {
        var random = new Random(-seed);
        var rows = await ReadSheet.Rows([.. "a,b\n"u8, .. Bytes(random)], most: 3 + random.Next(20));
        Assert.All(rows, row => Assert.True(row.Fault.Length > 0 || row.Values.Contains('|', StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_good_row_costs_no_memory()
    {
        var sheet = "sku,channel,price\r\n"u8.ToArray()
            .Concat(Enumerable.Range(0, 50_000).SelectMany(_ => "\"RB-\"\"014\"\"\",web,58.00\r\n"u8.ToArray())).ToArray();
        await Allocated(sheet);
        // One object a row would be 1,200,000; a debug build makes some for each of the 300 pieces in which the sheet comes.
        Assert.InRange(await Allocated(sheet), 0, 200_000);
    }

    [Fact]
    public async Task A_sheet_that_waits_as_a_whole_is_taken_in_windows()
    {
        var waiting = new Pipe(new PipeOptions(pauseWriterThreshold: 0));
        for (var row = 0; row < 40_000; row++)
            await waiting.Writer.WriteAsync("RB-014,58.00\n"u8.ToArray(), TestContext.Current.CancellationToken);
        await waiting.Writer.CompleteAsync();

        using var reader = new SheetReader(waiting.Reader, SheetDialect.Comma, 100);
        await reader.ReadHeaderAsync(TestContext.Current.CancellationToken);
        var count = 0;
        while (await reader.WaitAsync(TestContext.Current.CancellationToken))
            for (; reader.TryNext(out var row); count++)
                Assert.True(row.Raw.SequenceEqual("RB-014,58.00"u8));
        Assert.Equal(39_999, count);
    }

    /// <summary>Bytes allocated on this thread by a sheet of 50,000 rows, read, answered and written.</summary>
    private static async Task<long> Allocated(byte[] sheet)
    {
        var (input, output, price) = (Dripping.Whole(sheet), PipeWriter.Create(Stream.Null), new Pricing.Documents.PriceAttribute());
        using var reader = new SheetReader(input, SheetDialect.Comma);
        var (header, _) = await reader.ReadHeaderAsync(default);
        var (columns, _) = SheetColumns.Of(header!, new(), SheetDialect.Comma);
        using var answers = new SheetWriter(output, header!, columns!, SheetDialect.Comma);
        var before = GC.GetAllocatedBytesForCurrentThread();
        while (await reader.WaitAsync(default))
        {
            while (!answers.IsFull && reader.TryNext(out var row))
                answers.Write(row, new("above-target",
                    SheetNumber.Read(row.Cell(columns!.Price), "price", price, SheetDialect.Comma).Value + row.Cell(columns.Sku).Length, 41.00m));
            await answers.FlushAsync(default);
        }

        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private static byte[] Bytes(Random random) => [.. Enumerable.Range(0, random.Next(60)).Select(_ => s_bytes[random.Next(s_bytes.Length)])];
}
