using PriceFloor.Api.Http;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.LogLines;

/// <summary>Counts what became of lines, over all sources of a request.</summary>
internal sealed class LogTally
{
    private const int MostRefused = 1000, MostNames = 200;

    private readonly Dictionary<LogState, LineCount> _states = [];
    private readonly List<RefusedLogLine> _refused = [];
    private readonly Dictionary<string, LineCount> _unplaced = [];
    private LineCount _withdrawn, _cancelled, _duplicate, _outside, _refusedCount;
    private int _missing;

    /// <summary>Lines of one source, and what the store did with them.</summary>
    public void Add<T>(SettledLines<T> settled, LogAppended done)
    {
        foreach (var (line, state) in settled.Used.Zip(done.States))
            if (state is LogState.MadeTwice or LogState.OfAnother)
                Refuse(line.Line, CodeOf(state), line.Money);
            else
                _states[state] = _states.GetValueOrDefault(state) + new LineCount(1, line.Money);
        var withdrawn = settled.Cancelled.Where(line => line.Ref is not null).Zip(done.Withdrawn).Where(pair => pair.Second)
            .Select(pair => pair.First).ToHashSet();
        _withdrawn += LineCount.Of(withdrawn.Select(line => line.Money));
        _cancelled += LineCount.Of(settled.Cancelled.Where(line => !withdrawn.Contains(line)).Select(line => line.Money));
        _missing += done.Missing;
        _refused.AddRange(settled.Refused);
        _refusedCount += settled.RefusedCount;
        _duplicate += settled.Duplicate;
        _outside += settled.Outside;
        foreach (var name in settled.Unplaced)
            _unplaced[name.Name] = _unplaced.GetValueOrDefault(name.Name) + name.Count;
    }

    /// <summary>Why the store did not take a line.</summary>
    public static Code CodeOf(LogState state) => state == LogState.MadeTwice ? SheetLineCodes.MadeTwice : InputCodes.UnknownReference;

    public LogBatchAnswer Answer()
    {
        var unplaced = _unplaced.Values.Aggregate(default(LineCount), (sum, one) => sum + one);
        var (stored, unchanged, corrected) = (Of(LogState.Stored), Of(LogState.Unchanged), Of(LogState.Corrected));
        var read = stored + unchanged + corrected + _withdrawn + _cancelled + _duplicate + _outside + unplaced + _refusedCount;
        return new LogBatchAnswer
        {
            Stored = stored.Lines,
            Unchanged = unchanged.Lines,
            Corrected = corrected.Lines,
            Withdrawn = _withdrawn.Lines + _missing,
            Refused = [.. _refused.OrderBy(line => line.Line).Take(MostRefused).Select(line => new RefusedLogLineAnswer(line.Line, line.Code))],
            Unplaced = [.. _unplaced.OrderByDescending(one => decimal.Abs(one.Value.Money)).ThenByDescending(one => one.Value.Lines)
                .ThenBy(one => one.Key, StringComparer.Ordinal).Take(MostNames)
                .Select(one => new UnplacedNameAnswer(one.Key, one.Value.Lines, one.Value.Money))],
            Accounted = new LogAccountedAnswer(LineCountAnswer.Of(read), LineCountAnswer.Of(stored), LineCountAnswer.Of(unchanged),
                LineCountAnswer.Of(corrected), LineCountAnswer.Of(_withdrawn), LineCountAnswer.Of(_cancelled), LineCountAnswer.Of(_duplicate),
                LineCountAnswer.Of(_outside), LineCountAnswer.Of(unplaced), LineCountAnswer.Of(_refusedCount)),
        };
    }

    private LineCount Of(LogState state) => _states.GetValueOrDefault(state);

    private void Refuse(int line, Code code, decimal money)
    {
        _refused.Add(new RefusedLogLine(line, code));
        _refusedCount += new LineCount(1, money);
    }
}
