using PriceFloor.Api.Configuration;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.ManyStudios;

/// <summary>
/// The studios of a host: each a store in a folder of its own, opened when it is first asked for. The least recently used are closed when all that
/// are open take too much, and those that nobody asks for after a while; never one that is in use.
/// </summary>
public sealed class OpenStudios : IDisposable
{
    private static readonly TimeSpan s_idle = TimeSpan.FromMinutes(10), s_patience = TimeSpan.FromSeconds(30);

    private readonly Lock _lock = new();
    private readonly Dictionary<string, OpenStudio> _open = [];
    private readonly HashSet<string> _held = [];
    private readonly StudioFiles _files;
    private readonly Settings _settings;
    private readonly TimeProvider _clock;
    private readonly Func<string, StorePlace, Action, Task<Studio>> _make;
    private readonly ITimer _timer;

    /// <param name="files">Where the studios are.</param>
    /// <param name="settings">How much may stay open.</param>
    /// <param name="clock">Says for how long a studio was idle.</param>
    /// <param name="make">
    /// Opens the studio of a key at a place; calls the action, which locks the studio's folder, once it is known to be there.
    /// </param>
    internal OpenStudios(StudioFiles files, Settings settings, TimeProvider clock, Func<string, StorePlace, Action, Task<Studio>> make)
    {
        (_files, _settings, _clock, _make) = (files, settings, clock, make);
        _timer = clock.CreateTimer(_ => CloseIdle(), null, s_idle / 10, s_idle / 10);
    }

    /// <summary>How many are open.</summary>
    public int Count
    {
        get
        {
            lock (_lock)
                return _open.Count;
        }
    }

    /// <summary>The studio of a key if it is open; null if not.</summary>
    public Studio? Find(string key)
    {
        lock (_lock)
            return _open.TryGetValue(key, out var open) && open.Opening.IsCompletedSuccessfully ? open.Opening.Result : null;
    }

    /// <summary>Closes a studio once nobody uses it.</summary>
    public Task Close(string key) => Closed(key);

    /// <summary>The studio of a key, which stays open until the use is disposed of.</summary>
    public async ValueTask<StudioUse> Enter(string key)
    {
        while (true)
        {
            OpenStudio open;
            bool isLeaving;
            lock (_lock)
            {
                if (_held.Contains(key))
                    throw new StoreTroubleException(StoreTrouble.Busy, new StoreException($"The studio {key} is closed for a moment."));
                open = _open.TryGetValue(key, out var known) ? known : _open[key] = Opened(key);
                isLeaving = open.IsLeaving;
                if (!isLeaving)
                    (open.Uses, open.Touched) = (open.Uses + 1, _clock.GetUtcNow());
            }

            if (isLeaving)
                await open.Closed;
            else
                return new StudioUse(await Ready(open), () => Leave(open));
        }
    }

    /// <summary>Closes a studio and keeps it closed while something is done to its folder.</summary>
    public async Task<T> WhileClosed<T>(string key, Func<Task<T>> act)
    {
        lock (_lock)
            if (!_held.Add(key))
                throw new StoreTroubleException(StoreTrouble.Busy, new StoreException($"The studio {key} is closed for a moment."));
        try
        {
            await Closed(key).WaitAsync(s_patience, _clock);
            return await act();
        }
        catch (TimeoutException e)
        {
            throw new StoreTroubleException(StoreTrouble.Busy, e); // a long request is still reading or writing
        }
        finally
        {
            lock (_lock)
                _held.Remove(key);
        }
    }

    public void Dispose()
    {
        _timer.Dispose();
        List<OpenStudio> all;
        lock (_lock)
            all = [.. _open.Values];
        Task.WhenAll(all.Select(open => Closed(open.Key))).Wait(s_patience);
    }

    private OpenStudio Opened(string key)
    {
        var place = _files.PlaceOf(key);
        var alone = new StoreLock(_files.FolderOf(key), _clock);
        return new OpenStudio(key, alone) { Opening = Task.Run(() => _make(key, place, _files.AreAlone ? alone.Take : () => { })) };
    }

    private async ValueTask<Studio> Ready(OpenStudio open)
    {
        try
        {
            return open.Opening.IsCompletedSuccessfully ? open.Opening.Result : await open.Opening;
        }
        catch (Exception e)
        {
            lock (_lock)
                open.IsLeaving = true; // who comes next tries again
            Leave(open);
            if (e is not StoreException refused)
                throw;
            Log.Error("The studio {Studio} cannot be opened: {Message}", open.Key, e.Message);
            throw new StoreTroubleException(refused.Trouble ?? StoreTrouble.CannotOpen, e);
        }
    }

    private void Leave(OpenStudio open)
    {
        lock (_lock)
        {
            (open.Uses, open.Touched) = (open.Uses - 1, _clock.GetUtcNow());
            if (open.IsLeaving)
                CloseIfUnused(open);
            if (!open.HasGrown())
                return;
            var sum = _open.Values.Sum(one => one.IsLeaving ? 0 : one.Bytes);
            if (sum <= _settings.StudiosOpenBytes)
                return;
            foreach (var one in Unused())
                if (sum > _settings.StudiosOpenBytes)
                {
                    sum -= one.Bytes;
                    LetGo(one);
                }
        }
    }

    private void CloseIdle()
    {
        lock (_lock)
            foreach (var one in Unused().Where(one => one.Touched + s_idle <= _clock.GetUtcNow()))
                LetGo(one);
    }

    /// <summary>Closes a studio as soon as nobody uses it.</summary>
    private Task Closed(string key)
    {
        lock (_lock)
        {
            if (!_open.TryGetValue(key, out var open))
                return Task.CompletedTask;
            if (!open.IsLeaving)
                LetGo(open);
            return open.Closed;
        }
    }

    /// <summary>The open studios that nobody uses, the least recently used first.</summary>
    private List<OpenStudio> Unused() => [.. _open.Values.Where(one => one is { Uses: 0, IsLeaving: false }).OrderBy(one => one.Touched)];

    private void LetGo(OpenStudio open)
    {
        open.IsLeaving = true;
        CloseIfUnused(open);
    }

    private void CloseIfUnused(OpenStudio open)
    {
        if (open.Uses == 0)
            _ = CloseAsync(open);
    }

    private async Task CloseAsync(OpenStudio open)
    {
        await open.CloseAsync().ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        lock (_lock)
            _open.Remove(open.Key);
        open.Gone();
    }
}

/// <summary>A studio that is in use.</summary>
public sealed class StudioUse(Studio studio, Action leave) : IDisposable
{
    public Studio Studio => studio;

    public void Dispose() => leave();
}
