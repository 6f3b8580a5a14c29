using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>
/// What this process knows of the log: names, which lines are of one order, and which designs had a line that came or ended since. Nothing of it is
/// stored: it is read with the first question, and brought up to the log's end with each.
/// </summary>
public sealed class LogWatch : IDisposable
{
    private const int APage = 5_000;

    private static readonly LogPosition s_start = new(0, 0, 0);

    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Dictionary<long, long> _touched = [];
    private SharedOrders _orders = new();
    private StoredNames _names = new([]);
    private LogPosition _seen = s_start;
    private bool _isLoaded;
    private long _rounds;

    /// <summary>The newest day that was asked for last.</summary>
    internal NewestDay? Newest { get; set; }

    /// <summary>What is known when a snapshot's end of the log is reached.</summary>
    internal async ValueTask<WatchedLog> CatchUp(Snapshot snapshot)
    {
        await _turn.WaitAsync();
        try
        {
            var end = await snapshot.LogPosition();
            if (end.Movements < _seen.Movements || end.Bench < _seen.Bench)
                return new WatchedLog(this, _names, end, round: -1); // another question has seen more
            if ((end.Movements, end.Bench) != (_seen.Movements, _seen.Bench))
                await Advance(snapshot, end);
            return new WatchedLog(this, _names, end, _rounds);
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>The lines of other designs in some orders.</summary>
    internal async ValueTask<List<LineOfOrder>> Others(IEnumerable<ulong> marks, long design)
    {
        await _turn.WaitAsync();
        try
        {
            return _orders.Others(marks, design);
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>The last round in which a design had a line that came or ended; 0: none since the first question.</summary>
    internal long Touched(long design)
    {
        lock (_touched)
            return _touched.GetValueOrDefault(design);
    }

    public void Dispose() => _turn.Dispose();

    private async ValueTask Advance(Snapshot snapshot, LogPosition end)
    {
        _rounds++;
        if (_isLoaded)
            await Follow(snapshot, end);
        else
            await Load(snapshot, end);
        _isLoaded = true;
        _names = new StoredNames(await snapshot.NamesOfLog());
        _seen = end;
    }

    /// <summary>At first nothing is kept, so nothing is spoiled.</summary>
    private async ValueTask Load(Snapshot snapshot, LogPosition end)
    {
        var orders = new SharedOrders();
        for (long after = 0; ;)
        {
            var rows = await snapshot.OrderRows(after, end.Movements, APage);
            if (rows.Count == 0)
                break;
            after = rows[^1].Position;
            orders.Load(rows, end.Movements - after);
        }

        orders.Settle();
        _orders = orders;
    }

    private async ValueTask Follow(Snapshot snapshot, LogPosition end)
    {
        var touched = (await snapshot.DesignsTouched(_seen, end)).OfType<long>().ToHashSet();
        var marks = (await snapshot.EndedOrderRows(_seen.Movements, end.Movements)).Select(row => SharedOrders.MarkOf(row.OrderMark)).ToHashSet();
        for (var after = _seen.Movements; ;)
        {
            var rows = await snapshot.OrderRows(after, end.Movements, APage);
            if (rows.Count == 0)
                break;
            after = rows[^1].Position;
            _orders.Add(rows);
            marks.UnionWith(rows.Select(row => SharedOrders.MarkOf(row.OrderMark)));
        }

        touched.UnionWith(_orders.Others(marks, design: 0).Select(line => (long)line.Design)); // no design has this number
        lock (_touched)
            foreach (var design in touched)
                _touched[design] = _rounds;
    }
}
