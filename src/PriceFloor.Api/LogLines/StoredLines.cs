using System.Globalization;
using PriceFloor.Api.Catalogues;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.LogLines;

/// <summary>Lines as the store keeps them, and back: amounts in minor units, days as numbers, ids as marks.</summary>
internal sealed class StoredLines(Catalogue catalogue, LogMarks marks, string source)
{
    /// <summary>The numbers of what happened; they are in stores, so none ever changes.</summary>
    private static readonly MovementKind[] s_kinds = [MovementKind.Made, MovementKind.Sent, MovementKind.Back, MovementKind.Sold,
        MovementKind.Returned, MovementKind.Given, MovementKind.Lost, MovementKind.Reworked, MovementKind.Counted];

    private const int Seconds = 2;
    private const decimal Hundredths = 100;

    private readonly Dictionary<string, int> _equal = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Currency> _currencies = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string?> _lastSteps = new(StringComparer.Ordinal);

    /// <summary>What happened, by its number in the store.</summary>
    public static MovementKind KindOf(int number) => s_kinds[number - 1];

    /// <summary>The number of what happened.</summary>
    public static int NumberOf(MovementKind kind) => Array.IndexOf(s_kinds, kind) + 1;

    /// <summary>An amount of a stored line.</summary>
    public static decimal? Money(long? minor, Currency? currency) => minor is { } units && currency is not null ? units * currency.MinorUnit : null;

    public MovementLine Of(UsedLine<Movement> used)
    {
        var entry = used.Entry;
        var currency = entry.Channel is { } channel ? CurrencyOf(channel) : null;
        var line = new MovementLine
        {
            Source = source,
            Ref = OfRef(used.Ref),
            Design = entry.Sku,
            Day = entry.On.DayNumber,
            LastStep = LastStep(entry.Sku),
            What = Array.IndexOf(s_kinds, entry.What) + 1,
            Place = entry.Channel,
            Currency = currency?.Code,
            Pieces = entry.Pieces,
            Paid = Minor(entry.Paid, currency),
            Listed = Minor(entry.Listed, currency),
            Fees = Minor(entry.Fees, currency),
            ShippingCharged = Minor(entry.ShippingCharged, currency),
            ShippingCost = Minor(entry.ShippingCost, currency),
            Stall = entry.Stall,
            Grade = entry.Grade == Grade.Second ? Seconds : null,
            Resale = entry is { What: MovementKind.Returned, Resale: false } ? 0 : null,
            Piece = entry.Piece,
            OrderMark = entry.Order is { } order ? marks.OfOrder(source, order.Text!) : null,
        };
        return used.Ref is not null ? line : line with
        {
            Ref = OfContent(line.Day, line.What, line.Design, line.Place, line.Pieces, line.Paid, line.Listed, line.Fees,
            line.ShippingCharged, line.ShippingCost, line.Stall, line.Grade, line.Resale, line.Piece, entry.Order?.Text)
        };
    }

    public BenchLine Of(UsedLine<BenchEntry> used)
    {
        var entry = used.Entry;
        var line = new BenchLine
        {
            Source = source,
            Ref = OfRef(used.Ref),
            Design = entry.Sku,
            Day = entry.On.DayNumber,
            LastStep = entry.Sku is { } sku ? LastStep(sku) : null,
            Step = entry.Step,
            Started = entry.Started,
            Good = entry.Good,
            Minutes = (long?)(entry.Minutes * Hundredths),
        };
        return used.Ref is not null ? line
            : line with { Ref = OfContent(line.Day, line.Design, line.Step, line.Started, line.Good, line.Minutes) };
    }

    /// <summary>The mark of a ref; empty if there is none.</summary>
    private byte[] OfRef(string? id) => id is null ? [] : marks.OfRef(source, id);

    /// <summary>The mark of a line without a ref: of its content and of how many equal lines came before it.</summary>
    private byte[] OfContent(params object?[] content)
    {
        var text = string.Join('\u001F', content.Select(part => Convert.ToString(part, CultureInfo.InvariantCulture)));
        var before = _equal[text] = _equal.GetValueOrDefault(text) + 1;
        return marks.OfContent(source, string.Create(CultureInfo.InvariantCulture, $"{text}\u001F{before}"));
    }

    private static long? Minor(decimal? amount, Currency? currency) =>
        amount is { } money && currency is not null ? (long)(money / currency.MinorUnit) : null;

    private Currency CurrencyOf(string channel) =>
        _currencies.TryGetValue(channel, out var known) ? known : _currencies[channel] = Currency.Of(catalogue.Channel(channel)!.Document.Currency);

    private string? LastStep(string sku) => _lastSteps.TryGetValue(sku, out var known) ? known
        : _lastSteps[sku] = catalogue.Design(sku)?.Sound?.Making.Steps is { Count: > 0 } steps ? steps[^1].Name : null;
}
