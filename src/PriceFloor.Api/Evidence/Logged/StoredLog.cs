using PriceFloor.Api.LogLines;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Storage;
using LogSource = PriceFloor.Evidence.Lines.LogSource;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The stored log as it is, or was, at one moment, and the lines of some days in it as evidence reads them.</summary>
internal sealed class StoredLog
{
    private readonly Snapshot _snapshot;
    private readonly LogPosition _end;
    private readonly StoredNames _names;
    private readonly EvidenceChoices _choices;

    private StoredLog(Snapshot snapshot, LogPosition end, StoredNames names, EvidenceChoices choices) =>
        (_snapshot, _end, _names, _choices) = (snapshot, end, names, choices);

    /// <summary>What is known of the sources, as kept last.</summary>
    public required IReadOnlyList<LogSource> Sources { get; init; }

    /// <summary>How far it had come.</summary>
    public string Basis => LogBasisAnswer.Of(_end).Log;

    /// <param name="snapshot">The store.</param>
    /// <param name="asOf">The moment; null: now.</param>
    /// <param name="choices">The days that count.</param>
    public static async ValueTask<StoredLog> OfAsync(Snapshot snapshot, DateTimeOffset? asOf, EvidenceChoices choices)
    {
        var end = await snapshot.LogEnd(asOf is { } time ? Moment.Of(time) : null);
        var sources = await snapshot.LogSources();
        return new StoredLog(snapshot, end, new StoredNames(await snapshot.NamesOfLog()), choices)
        {
            Sources = [.. sources.Select(source => new LogSource(source.Name, source.IsWholeDays, source.CountsAsMade))],
        };
    }

    /// <summary>The movements of a design.</summary>
    public async ValueTask<List<Movement>> MovementsOf(string sku) => _names.Design(sku) is { } design
        ? _names.Movements(await _snapshot.MovementRows(Movements with { Design = design })) : [];

    /// <summary>The bench entries of a design.</summary>
    public async ValueTask<List<BenchEntry>> BenchOf(string sku) => _names.Design(sku) is { } design
        ? _names.BenchEntries(await _snapshot.BenchRows(Bench with { Design = design })) : [];

    /// <summary>The movements of other designs in orders of a design.</summary>
    public async ValueTask<List<Movement>> InOrdersWith(string sku) => _names.Design(sku) is { } design
        ? _names.Movements(await _snapshot.RowsOfSameOrders(Movements with { Design = design })) : [];

    /// <summary>All movements on a channel.</summary>
    public async ValueTask<List<Movement>> MovementsOn(string channel) => _names.Channel(channel) is { } place
        ? _names.Movements(await _snapshot.MovementRows(Movements with { Place = place })) : [];

    /// <summary>The bench entries of sources that write whole days down.</summary>
    public async ValueTask<List<BenchEntry>> WholeDays()
    {
        var sources = Sources.Where(source => source.WholeDays).Select(source => _names.Source(source.Name)).OfType<long>().ToList();
        return sources.Count == 0 ? [] : _names.BenchEntries(await _snapshot.BenchRows(Bench with { Sources = sources }));
    }

    /// <summary>The day of the newest line of all; null if there is none.</summary>
    public async ValueTask<DateOnly?> NewestDay() =>
        await _snapshot.NewestDay(_end, _choices.To.DayNumber) is { } day ? DateOnly.FromDayNumber(day) : null;

    private LogRowQuestion Movements => Rows(_end.Movements);

    private LogRowQuestion Bench => Rows(_end.Bench);

    private LogRowQuestion Rows(long upTo) => new() { UpTo = upTo, From = _choices.From?.DayNumber, To = _choices.To.DayNumber };
}
