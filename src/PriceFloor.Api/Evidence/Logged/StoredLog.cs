using PriceFloor.Api.LogLines;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Storage;
using LogSource = PriceFloor.Evidence.Lines.LogSource;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The stored log as it is, or was, at one moment, and the lines of some days in it as evidence reads them.</summary>
internal sealed class StoredLog
{
    /// <summary>So many designs are read alone in less time than it takes to see whether others would pay.</summary>
    public const int Few = 5;

    /// <summary>So many new lines are looked through in less time than it takes to look each design up.</summary>
    private const int LittleMore = 1000;

    private readonly Snapshot _snapshot;
    private readonly LogPosition _end;
    private readonly WatchedLog _watched;
    private LinesTogether? _together;

    private StoredLog(Snapshot snapshot, LogPosition end, WatchedLog watched, EvidenceChoices choices) =>
        (_snapshot, _end, _watched, Choices) = (snapshot, end, watched, choices);

    /// <summary>What is asked.</summary>
    public EvidenceChoices Choices { get; }

    /// <summary>Its names.</summary>
    public StoredNames Names => _watched.Names;

    /// <summary>What is known of the sources, as kept last.</summary>
    public required IReadOnlyList<LogSource> Sources { get; init; }

    /// <summary>How far it had come.</summary>
    public string Basis => LogBasisAnswer.Of(_end).Log;

    /// <summary>What was said of the sources, as one text: equal texts say the same.</summary>
    public string SaidOfSources => string.Join(';', Sources);

    /// <param name="snapshot">The store.</param>
    /// <param name="watch">What is known of the log.</param>
    /// <param name="asOf">The moment; null: now.</param>
    /// <param name="choices">The days that count.</param>
    public static async ValueTask<StoredLog> OfAsync(Snapshot snapshot, LogWatch watch, DateTimeOffset? asOf, EvidenceChoices choices)
    {
        var watched = await watch.CatchUp(snapshot);
        return await Of(snapshot, asOf is { } time ? await snapshot.LogPosition(Moment.Of(time)) : watched.End, watched, choices);
    }

    /// <summary>The log as a write sees it, of which the watch must not learn: it may come to nothing.</summary>
    public static async ValueTask<StoredLog> ApartAsync(Writing writing, LogWatch watch, EvidenceChoices choices)
    {
        var end = await writing.LogPosition();
        return await Of(writing, end, new WatchedLog(watch, new StoredNames(await writing.NamesOfLog()), end, round: -1), choices);
    }

    private static async ValueTask<StoredLog> Of(Snapshot snapshot, LogPosition end, WatchedLog watched, EvidenceChoices choices)
    {
        var sources = await snapshot.LogSources();
        return new StoredLog(snapshot, end, watched, choices)
        {
            Sources = [.. sources.Select(source => new LogSource(source.Name, source.IsWholeDays, source.CountsAsMade))],
        };
    }

    /// <summary>The same log, asked otherwise.</summary>
    public StoredLog About(EvidenceChoices choices) => new(_snapshot, _end, _watched, choices) { Sources = Sources };

    /// <summary>The movements of a design.</summary>
    public async ValueTask<List<Movement>> MovementsOf(string sku)
    {
        var lines = new List<Movement>();
        if (Names.Design(sku) is not { } design)
            return lines;
        if (_together?.Lines.Has(design) == true)
            _together.Lines.Of(design, Add);
        else
            await _snapshot.MovementRows(Movements with { Design = design }, Add);
        return lines;

        void Add(MovementRow row) => lines.Add(Names.Of(row));
    }

    /// <summary>Calls for each design. The movements of as many as can be held are read together.</summary>
    /// <param name="skus">The designs.</param>
    /// <param name="each">Asks for the movements of one.</param>
    public async ValueTask ForEach(IReadOnlyCollection<string> skus, Func<string, ValueTask> each)
    {
        var alone = skus.ToHashSet(StringComparer.Ordinal);
        if (skus.Count > Few)
        {
            var byNumber = skus.Where(sku => Names.Design(sku) is not null).ToDictionary(sku => Names.Design(sku)!.Value);
            _together = new LinesTogether(_snapshot, Movements, _watched.Watch);
            foreach (var group in await _together.Groups(byNumber.Keys))
            {
                await _together.Read(group);
                foreach (var design in group)
                {
                    alone.Remove(byNumber[design]);
                    await each(byNumber[design]);
                }
            }

            _together = null;
        }

        foreach (var sku in alone)
            await each(sku);
    }

    /// <summary>The bench entries of a design.</summary>
    public async ValueTask<List<BenchEntry>> BenchOf(string sku) => Names.Design(sku) is { } design && _end.Bench > 0
        ? Names.BenchEntries(await _snapshot.BenchRows(Bench with { Design = design })) : [];

    /// <summary>The movements of other designs in orders of a design.</summary>
    /// <param name="sku">The design.</param>
    /// <param name="own">Its own movements.</param>
    public async ValueTask<List<Movement>> InOrdersWith(string sku, List<Movement> own)
    {
        if (Names.Design(sku) is not { } design)
            return [];
        var (lines, held) = (new List<Movement>(), _together?.Lines is { } together && together.Has(design) ? together : null);
        var orders = new HashSet<ulong>();
        foreach (var line in own)
            if (line.Order is { Number: var number } && held?.HasOrder(number) != false)
                orders.Add(number);
        if (held is not null)
            foreach (var order in orders)
                held.OfOrder(order, Add);
        else if (await Others() is { Count: > 0 } positions)
            await _snapshot.MovementRowsAt(positions, Movements, Add);
        return lines;

        async ValueTask<List<long>> Others()
        {
            var known = own.Select(line => line.Position).ToHashSet();
            var positions = await _watched.Watch.OfOrders(orders, position => !known.Contains(position));
            positions.Sort();
            return positions;
        }

        void Add(MovementRow row)
        {
            if (row.Design != design && orders.Contains(row.OrderMark!.Value))
                lines.Add(Names.Of(row));
        }
    }

    /// <summary>What spoils what is kept of a design; null if nothing can be kept.</summary>
    public long? StampOf(string sku) => _watched.StampOf(sku);

    /// <summary>All movements on a channel.</summary>
    public async ValueTask<List<Movement>> MovementsOn(string channel)
    {
        var lines = new List<Movement>();
        if (Names.Channel(channel) is { } place)
            await _snapshot.MovementRows(Movements with { Place = place }, row => lines.Add(Names.Of(row)));
        return lines;
    }

    /// <summary>The days on which something was sold on a channel, each fair's once.</summary>
    /// <param name="channel">Its key.</param>
    /// <param name="designs">Only sales of these designs; null: all.</param>
    public async ValueTask<IEnumerable<Movement>> FairDays(string channel, IEnumerable<string>? designs)
    {
        if (Names.Channel(channel) is not { } place)
            return [];
        var those = designs?.Select(Names.Design).OfType<long>().ToList();
        var days = await _snapshot.StallDays(Movements with { Place = place }, StoredLines.NumberOf(MovementKind.Sold), those);
        return days.Select(day => Names.SoldOn(day.Day, day.Stall));
    }

    /// <summary>The bench entries of sources that write whole days down.</summary>
    public async ValueTask<List<BenchEntry>> WholeDays()
    {
        var sources = Sources.Where(source => source.WholeDays).Select(source => Names.Source(source.Name)).OfType<long>().ToList();
        return sources.Count == 0 ? [] : Names.BenchEntries(await _snapshot.BenchRows(Bench with { Sources = sources }));
    }

    /// <summary>The day of the newest line of all; null if there is none.</summary>
    public async ValueTask<DateOnly?> NewestDay()
    {
        var known = _watched.Watch.Newest is { } last && last.To == Choices.To ? last : null;
        if (known?.End == _end)
            return known.Day;
        var day = known?.Day is { } before && IsLittle(_end.Movements - known.End.Movements) && IsLittle(_end.Bench - known.End.Bench)
            ? await NewestDayAfter(known.End, before.DayNumber) : await _snapshot.NewestDay(_end, Choices.To.DayNumber);
        var newest = day is { } number ? DateOnly.FromDayNumber(number) : (DateOnly?)null;
        _watched.Watch.Newest = new NewestDay(_end, Choices.To, newest);
        return newest;
    }

    private static bool IsLittle(long lines) => lines is >= 0 and < LittleMore;

    /// <summary>The same from what it was at an earlier end: a line that came may be newer, and one that ended may have been the newest.</summary>
    private async ValueTask<int?> NewestDayAfter(LogPosition end, int day)
    {
        var (came, ended) = await _snapshot.NewestDaySince(end, _end, Choices.To.DayNumber);
        return ended >= day ? await _snapshot.NewestDay(_end, Choices.To.DayNumber) : int.Max(day, came ?? day);
    }

    private LogRowQuestion Movements => Rows(_end.Movements);

    private LogRowQuestion Bench => Rows(_end.Bench);

    private LogRowQuestion Rows(long upTo) => new() { UpTo = upTo, From = Choices.From?.DayNumber, To = Choices.To.DayNumber };
}
