using System.Globalization;

namespace PriceFloor.Api.Running;

/// <summary>
/// One line on standard error that says how far long work is, written over itself and erased at the end. Only on a terminal, and only if the work
/// takes more than a moment: logs, files and other programs never get it.
/// </summary>
public sealed class ProgressLine : IDisposable
{
    private static readonly TimeSpan s_moment = TimeSpan.FromMilliseconds(700), s_often = TimeSpan.FromMilliseconds(250);

    private readonly Lock _writing = new();
    private readonly long _begun = TimeProvider.System.GetTimestamp();
    private readonly string _what;
    private readonly Func<decimal?> _share;
    private readonly Timer _timer;
    private int _shown;

    private ProgressLine(string what, Func<decimal?> share)
    {
        (_what, _share) = (what, share);
        _timer = new Timer(_ => Show(), null, s_moment, s_often);
    }

    /// <param name="what">The work.</param>
    /// <param name="share">How much of it is done, from 0 to 1; null as long as nobody knows.</param>
    /// <returns>Null if standard error is no terminal.</returns>
    public static ProgressLine? Start(string what, Func<decimal?> share) => Console.IsErrorRedirected ? null : new ProgressLine(what, share);

    /// <summary>Does the work with such a line, which is gone when this returns.</summary>
    public static T During<T>(string what, Func<decimal?> share, Func<T> work)
    {
        using var _ = Start(what, share);
        return work();
    }

    public void Dispose()
    {
        _timer.Dispose();
        lock (_writing)
        {
            if (_shown > 0)
                Console.Error.Write($"\r{new string(' ', _shown)}\r");
            _shown = -1; // a timer that is just running writes nothing more
        }
    }

    private void Show()
    {
        lock (_writing)
        {
            if (_shown < 0)
                return;
            var line = LineOf(_what, _share(), TimeProvider.System.GetElapsedTime(_begun));
            Console.Error.Write($"\r{line.PadRight(_shown)}");
            _shown = int.Max(_shown, line.Length);
        }
    }

    /// <summary>The line: the work, its share in whole per cent if it is known, and the seconds.</summary>
    public static string LineOf(string what, decimal? share, TimeSpan elapsed) => string.Create(CultureInfo.InvariantCulture,
        $"{what}: {(share is { } known ? $"{Rounding.Down(decimal.Clamp(known, 0, 1) * 100, 0)} %, " : "")}{(int)elapsed.TotalSeconds} s");
}
