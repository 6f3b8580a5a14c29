using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json;
using PriceFloor.Api.Sheets;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Statements;
using PriceFloor.Statements.Files;

namespace PriceFloor.ParserFuzzing;

/// <summary>What the parsers say of an input, as text to compare; what they say that cannot be so is thrown.</summary>
internal static class ToldRows
{
    /// <summary>Short, so that rows which are too long are met too.</summary>
    private const int MostBytes = 64;

    private static readonly JsonDocumentOptions s_array = new() { MaxDepth = 33 };

    public static async Task<List<string>> OfSheet(PipeReader pipe, byte[] input)
    {
        using var reader = new SheetReader(pipe, input.Length % 2 == 0 ? SheetDialect.Comma : SheetDialect.Semicolon, MostBytes);
        var (header, fault) = await reader.ReadHeaderAsync(default);
        Insist(header is null == fault is not null, "neither a header nor a fault, or both");
        var (told, read) = (new List<string>(), 0);
        while (await reader.WaitAsync(default))
            while (reader.TryNext(out var row))
            {
                read += row.Raw.Length + row.LineEnd.Length;
                told.Add($"{row.Line} {row.IsBlank} {row.Fault?.Code} {row.Fault?.Line}:{row.Fault?.Column} "
                    + $"{Encoding.Latin1.GetString(row.Raw)}|{Encoding.Latin1.GetString(row.LineEnd)}");
                for (var i = 0; row.Fault is null && i < row.Count; i++)
                    told.Add($"  {Encoding.Latin1.GetString(row.Value(i))}|{Encoding.Latin1.GetString(row.Field(i))}");
            }

        Insist(read <= input.Length, "more bytes in its rows than there are");
        return told;
    }

    public static async Task<List<string>> OfLines(PipeReader pipe, byte[] input)
    {
        using var reader = new NdjsonReader(pipe, MostBytes);
        var told = new List<string>();
        while (await reader.WaitAsync(default))
            while (reader.TryNext(out var line))
                told.Add($"{line.Number} {line.Fault?.Code} {line.Fault?.Line}:{line.Fault?.Column} {Encoding.Latin1.GetString(line.Bytes)}");
        Insist(told.Count <= input.Count(one => one == '\n') + 1, "more lines than line ends");
        return told;
    }

    /// <summary>The framework's own reader says whether it is an array, and of how many.</summary>
    public static async Task<List<string>> OfArray(PipeReader pipe, byte[] input)
    {
        using var reader = new JsonArrayReader(pipe, input.Length + 1, input.Length + 1);
        var (told, count) = (new List<string>(), 0);
        while (await reader.WaitAsync(default))
            while (reader.TryNext(out var item))
            {
                count++;
                told.Add($"{item.Index} {item.Line}:{item.Column} {Encoding.Latin1.GetString(item.Bytes)}");
            }

        told.Add($"{reader.Fault?.Code} {reader.Fault?.Pointer} {reader.Fault?.Line}:{reader.Fault?.Column}");
        var really = Elements(input.AsMemory(input.AsSpan().StartsWith("\uFEFF"u8) ? 3 : 0));
        Insist(really is null == reader.Fault is not null,
            $"the framework counts {really?.ToString(CultureInfo.InvariantCulture) ?? "no array"}, but the fault is {reader.Fault?.Code ?? "none"}");
        Insist(really is null || really == count, $"{count} elements of {really}");
        return told;
    }

    public static Task OfStatement(byte[] input)
    {
        var read = StatementReader.Read(input, "the studio's account", new SheetReading
        {
            Semicolon = input.Length % 2 == 1,
            Currency = "EUR",
            IsCashBook = input.Length % 7 == 0,
            AmountColumn = input.Length % 3 == 0 ? "Amount" : null,
            DirectionColumn = input.Length % 5 == 0 ? "Way" : null,
        },
            CancellationToken.None);
        Insist(read.Found is not null || read.Faults.Count > 0, "neither a statement nor a fault");
        foreach (var one in read.Found?.Statements.SelectMany(statement => statement.Transactions) ?? [])
            Insist(one.Date.Year is > 1900 and < 2200 && one.Currency is null or { Length: 3 }, "a transaction that cannot be");
        return Task.CompletedTask;
    }

    private static int? Elements(ReadOnlyMemory<byte> input)
    {
        try
        {
            using var document = JsonDocument.Parse(input, s_array);
            return document.RootElement.ValueKind == JsonValueKind.Array ? document.RootElement.GetArrayLength() : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static void Insist(bool holds, string otherwise)
    {
        if (!holds)
            throw new InvalidOperationException(otherwise);
    }
}
