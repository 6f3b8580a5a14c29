namespace PriceFloor.Storage.Postgres;

/// <summary>
/// Asks where studios stand that other processes write too. An answer was given after the call, so it holds everything that anybody acknowledged
/// before: whoever comes while a question is under way shares the next one, whichever studio they ask about.
/// </summary>
/// <param name="ask">Asks about studios at once; null for one that is gone.</param>
internal sealed class Questions(Func<IReadOnlyList<ServedStudio>, Task<IReadOnlyList<StorePoint?>>> ask)
{
    private readonly Lock _lock = new();
    private Round? _next;
    private bool _isAsking;

    /// <summary>Where a studio stands.</summary>
    public async ValueTask<StorePoint> Ask(ServedStudio studio)
    {
        Round round;
        int place;
        lock (_lock)
        {
            round = _next ??= new Round();
            place = round.PlaceOf(studio);
            if (!_isAsking)
                _ = Task.Run(RunAsync);
            _isAsking = true;
        }

        return (await round.Answers)[place] ?? throw new StoreGoneException();
    }

    private async Task RunAsync()
    {
        while (Taken() is { } round)
            await round.AskAsync(ask);
    }

    /// <summary>From here on whoever comes is too late for it.</summary>
    private Round? Taken()
    {
        lock (_lock)
        {
            var round = _next;
            (_next, _isAsking) = (null, round is not null);
            return round;
        }
    }

    /// <summary>One question about some studios.</summary>
    private sealed class Round
    {
        private readonly TaskCompletionSource<IReadOnlyList<StorePoint?>> _answers = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly List<ServedStudio> _studios = [];
        private readonly Dictionary<ServedStudio, int> _places = [];

        public Task<IReadOnlyList<StorePoint?>> Answers => _answers.Task;

        public int PlaceOf(ServedStudio studio)
        {
            if (_places.TryAdd(studio, _studios.Count))
                _studios.Add(studio);
            return _places[studio];
        }

        public async Task AskAsync(Func<IReadOnlyList<ServedStudio>, Task<IReadOnlyList<StorePoint?>>> ask)
        {
            try
            {
                _answers.SetResult(await ask(_studios));
            }
            catch (Exception fault)
            {
                _answers.SetException(fault);
            }
        }
    }
}
