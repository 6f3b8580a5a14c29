using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>
/// What this process knows of the log: names, which lines are of one order, and which designs had a line that came or ended since. Nothing of it is
/// stored: it is read with the first question, and brought up to the log's end with each.
/// </summary>
public sealed class LogWatch : IDisposable
{
    private static readonly LogPosition s_start = new(0, 0, 0);

    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Dictionary<long, long> _touched = [];
    private SharedOrders _orders = new(0);
    private StoredNames _names = new([]);
    private LogPosition _seen = s_start;
    private string _history = "";
    private bool _isLoaded;
    private long _forgotten;
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
            if (snapshot.HistoryName != _history)
                Forget(snapshot.HistoryName);
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

    /// <summary>The positions of lines in some orders, of those that have more than one. Some may be of other orders.</summary>
    /// <param name="marks">The orders.</param>
    /// <param name="which">Which positions.</param>
    internal async ValueTask<List<long>> OfOrders(IEnumerable<ulong> marks, Func<long, bool> which)
    {
        await _turn.WaitAsync();
        try
        {
            return _orders.Of(marks, which);
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Says of a position whether its line may be of an order with others.</summary>
    internal async ValueTask<Func<long, bool>> Sharing()
    {
        await _turn.WaitAsync();
        try
        {
            return _orders.Sharing;
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
            return long.Max(_forgotten, _touched.GetValueOrDefault(design));
    }

    public void Dispose() => _turn.Dispose();

    /// <summary>In another history other lines have the same positions: everything counts as touched.</summary>
    private void Forget(string history)
    {
        (_history, _seen, _isLoaded, _orders, _names) = (history, s_start, false, new SharedOrders(0), new StoredNames([]));
        Newest = null;
        lock (_touched)
        {
            _touched.Clear();
            _forgotten = ++_rounds;
        }
    }

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
        _orders = new SharedOrders(end.Movements);
        await snapshot.OrderRows(0, end.Movements, _orders.Load);
        _orders.Settle();
    }

    private async ValueTask Follow(Snapshot snapshot, LogPosition end)
    {
        var touched = (await snapshot.DesignsTouched(_seen, end)).OfType<long>().ToHashSet();
        var marks = new HashSet<ulong>();
        await snapshot.EndedOrderRows(_seen.Movements, end.Movements, row => marks.Add(row.OrderMark));
        await snapshot.OrderRows(_seen.Movements, end.Movements, row =>
        {
            _orders.Add(row);
            marks.Add(row.OrderMark);
        });
        var earlier = _orders.Of(marks, position => position <= _seen.Movements);
        touched.UnionWith(await snapshot.DesignsAt(earlier));
        lock (_touched)
            foreach (var design in touched)
                _touched[design] = _rounds;
    }
}
