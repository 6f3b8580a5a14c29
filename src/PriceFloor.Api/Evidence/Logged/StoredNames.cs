using PriceFloor.Api.LogLines;
using PriceFloor.Evidence.Lines;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The names in the log by their numbers, and rows with them.</summary>
internal sealed class StoredNames
{
    private const int Seconds = 2;
    private const decimal Hundredths = 100;

    private readonly Dictionary<long, string> _names = [];
    private readonly Dictionary<long, Currency> _currencies = [];
    private readonly Dictionary<string, long> _designs = new(StringComparer.Ordinal), _channels = new(StringComparer.Ordinal),
        _sources = new(StringComparer.Ordinal);

    public StoredNames(IEnumerable<LogName> names)
    {
        foreach (var (id, kind, key) in names)
        {
            _names[id] = key;
            if (kind == "currency")
                _currencies[id] = Currency.Of(key);
            (kind switch { "design" => _designs, "channel" => _channels, "source" => _sources, _ => null })?.Add(key, id);
        }
    }

    /// <summary>The number of a design; null if the log never had it.</summary>
    public long? Design(string key) => _designs.TryGetValue(key, out var id) ? id : null;

    /// <summary>The number of a channel.</summary>
    public long? Channel(string key) => _channels.TryGetValue(key, out var id) ? id : null;

    /// <summary>The number of a source.</summary>
    public long? Source(string key) => _sources.TryGetValue(key, out var id) ? id : null;

    public List<BenchEntry> BenchEntries(List<BenchRow> rows) => rows.ConvertAll(Of);

    /// <summary>That something was sold at a fair on a day.</summary>
    public Movement SoldOn(int day, long? stall) => new()
    {
        Source = "",
        On = DateOnly.FromDayNumber(day),
        What = MovementKind.Sold,
        Sku = "",
        Pieces = 1,
        Stall = Named(stall),
        Position = 0,
    };

    public Movement Of(in MovementRow row)
    {
        var money = row.Currency is { } currency ? _currencies[currency] : null;
        return new Movement
        {
            Source = _names[row.Source],
            On = DateOnly.FromDayNumber(row.Day),
            What = StoredLines.KindOf(row.What),
            Sku = _names[row.Design],
            Channel = Named(row.Place),
            Currency = money?.Code,
            Pieces = row.Pieces,
            Paid = StoredLines.Money(row.Paid, money),
            Listed = StoredLines.Money(row.Listed, money),
            Order = row.OrderMark is { } mark ? LineId.OfNumber(mark) : null,
            Fees = StoredLines.Money(row.Fees, money),
            ShippingCharged = StoredLines.Money(row.ShippingCharged, money),
            ShippingCost = StoredLines.Money(row.ShippingCost, money),
            Grade = row.Grade == Seconds ? Grade.Second : Grade.Good,
            Resale = row.Resale,
            Stall = Named(row.Stall),
            Piece = row.Piece,
            Position = row.Position,
        };
    }

    private BenchEntry Of(BenchRow row) => new()
    {
        Source = _names[row.Source],
        On = DateOnly.FromDayNumber(row.Day),
        Sku = Named(row.Design),
        Step = Named(row.Step),
        Started = row.Started,
        Good = row.Good,
        Minutes = row.Minutes / Hundredths,
        Position = row.Position,
    };

    private string? Named(long? id) => id is { } number ? _names[number] : null;
}
