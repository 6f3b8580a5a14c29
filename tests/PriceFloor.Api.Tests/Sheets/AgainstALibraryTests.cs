using System.IO.Pipelines;
using System.Text;
using nietras.SeparatedValues;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>Valid sheets mean the same here and in a library that many others use.</summary>
public sealed class AgainstALibraryTests
{
    private static readonly string[] s_parts = ["a", "RB-014", "58.00", ",", ";", "\"", "\"\"", "\n", "\r\n", "\r", " ", "\t", "=", "-", "'",
        "\u00e9", "\U0001F3FA", "\u65e5\u672c", "x", "y"];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 60)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task The_library_and_our_reader_read_the_same(int seed)
    {
        var random = new Random(seed);
        var dialect = seed % 2 == 0 ? SheetDialect.Comma : SheetDialect.Semicolon;
        var sheet = ByHand(Table(random), dialect, random, ((string[])["\n", "\r\n", "\r"])[seed % 3]);
        var rows = await ReadSheet.Rows(sheet, dialect);
        Assert.All(rows, row => Assert.Equal("", row.Fault));
        Assert.Equal(ReadBySep(sheet, dialect), rows.Select(row => row.Values));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task What_the_library_writes_is_read_here(int seed)
    {
        var table = Table(new Random(seed));
        Assert.Equal(table.Skip(1).Select(cells => string.Join('|', cells)), (await ReadSheet.Rows(WrittenBySep(table))).Select(row => row.Values));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task What_is_written_here_the_library_reads(int seed)
    {
        var table = Table(new Random(seed));
        var dialect = seed % 2 == 0 ? SheetDialect.Comma : SheetDialect.Semicolon;
        var written = new MemoryStream();
        using var document = new SheetDocument(PipeWriter.Create(written), dialect, table[0]);
        foreach (var cells in table.Skip(1))
        {
            foreach (var cell in cells)
                document.Text(cell);
            document.EndRow();
        }

        await document.FlushAsync(TestContext.Current.CancellationToken);
        Assert.Equal(table.Skip(1).Select(cells => string.Join('|', cells.Select(Defused))),
            ReadBySep(Encoding.UTF8.GetString(written.ToArray()), dialect));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task An_answered_sheet_has_the_same_cells_and_ours_to_the_library(int seed)
    {
        var random = new Random(seed);
        var table = Table(random);
        var sheet = ByHand(table, SheetDialect.Comma, random, "\r\n");
        var answered = await WrittenSheet.Of(sheet, new("above-target", 1.10m, 2.20m, "=a, \"b\""), names: new("c0", null, "c1"));
        Assert.Equal(table.Skip(1).Select(cells => string.Join('|', cells) + "|above-target|1.10|2.20|'=a, \"b\""),
            ReadBySep(answered, SheetDialect.Comma));
    }

    /// <summary>Whatever bytes come in, every line that goes out is a row with as many fields as the header.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task However_broken_a_sheet_the_answer_is_whole_to_the_library(int seed)
    {
        var random = new Random(seed);
        var broken = string.Concat(Enumerable.Range(0, 60).Select(_ => random.Next(4) == 0 ? "\n" : s_parts[random.Next(s_parts.Length)]));
        var (sheet, most) = ($"sku,price,problem\n{broken}", random.Next(2) == 0 ? 20 : SheetReader.MostRowBytes);
        var rows = await ReadSheet.Rows(sheet, most: most);
        var answered = await WrittenSheet.Of(sheet, names: new(Channel: null), most: most);
        var read = ReadBySep(answered, SheetDialect.Comma);
        // an empty line is no row to the library; a row of empty cells is one, and gets no answer
        Assert.Equal(rows.Where(row => row.Fault != "blank" || row.Values.Contains('|', StringComparison.Ordinal))
                .Select(row => row.Fault.Length == 0),
            read.Select(row => row.Contains("|above-target|", StringComparison.Ordinal)));
    }

    private static string[][] Table(Random random)
    {
        var width = random.Next(2, 6);
        string Cell() => string.Concat(Enumerable.Range(0, random.Next(4)).Select(_ => s_parts[random.Next(s_parts.Length)]));
        string[] Row() // our reader leaves out rows without a filled cell; the library does not
        {
            var cells = Enumerable.Range(0, width).Select(_ => Cell()).ToArray();
            if (cells.All(string.IsNullOrWhiteSpace))
                cells[0] = "x";
            return cells;
        }

        return [[.. Enumerable.Range(0, width).Select(column => $"c{column}")],
            .. Enumerable.Range(0, random.Next(1, 12)).Select(_ => Row())];
    }

    /// <summary>Quotes where they must be, and at random where they may.</summary>
    private static string ByHand(string[][] table, SheetDialect dialect, Random random, string lineEnd)
    {
        string Field(string cell) =>
            cell.AsSpan().IndexOfAny("\",;\r\n") >= 0 || random.Next(3) == 0 ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;
        return string.Join(lineEnd, table.Select(cells => string.Join((char)dialect.Separator, cells.Select(Field))))
            + (random.Next(2) == 0 ? lineEnd : "");
    }

    private static string Defused(string cell) =>
        cell.TrimStart('\'') is [var first, ..] && "=+-@\t\r\n".Contains(first, StringComparison.Ordinal) ? "'" + cell : cell;

    private static string WrittenBySep(string[][] table)
    {
        using var writer = Sep.New(',').Writer(options => options with { Escape = true }).ToText();
        foreach (var cells in table.Skip(1))
        {
            using var row = writer.NewRow();
            for (var column = 0; column < cells.Length; column++)
                row[table[0][column]].Set(cells[column]);
        }

        return writer.ToString();
    }

    private static List<string> ReadBySep(string sheet, SheetDialect dialect)
    {
        using var reader = Sep.New((char)dialect.Separator)
            .Reader(options => options with { Unescape = true, DisableColCountCheck = true }).FromText(sheet);
        var rows = new List<string>();
        foreach (var row in reader)
        {
            if (row.Span.IsEmpty)
                continue; // a blank line, which stays one
            Assert.Equal(reader.Header.ColNames.Count, row.ColCount);
            var cells = new string[row.ColCount];
            for (var column = 0; column < cells.Length; column++)
                cells[column] = row[column].ToString();
            rows.Add(string.Join('|', cells));
        }

        return rows;
    }
}
