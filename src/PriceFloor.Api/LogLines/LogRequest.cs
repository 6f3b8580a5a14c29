using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.LogLines;

/// <summary>Stores the lines of one request, source by source.</summary>
internal sealed class LogRequest(LogBatchQuery query, WholeCatalogue catalogue, Store store, Caller caller)
{
    private const int MostErrors = 100;

    /// <summary>Settles lines of one source.</summary>
    public delegate SettledLines<TEntry> Settling<TSent, TEntry>(IReadOnlyList<TSent> sent, string source, KnownNames names, LogWindow window);

    /// <param name="sent">The lines.</param>
    /// <param name="refuse">A line with a fault.</param>
    /// <param name="of">The fault of a line, its ref, and whether it is cancelled.</param>
    /// <param name="settle">Settles the lines of a source.</param>
    /// <param name="lineOf">A line as it is stored.</param>
    public async Task<IResult> StoreAsync<TSent, TEntry, TLine>(IReadOnlyList<Sent<TSent>> sent, Func<TSent, Code, TSent> refuse,
        Func<TSent, (Code? Fault, string? Ref, bool IsCancelled)> of, Settling<TSent, TEntry> settle,
        Func<StoredLines, UsedLine<TEntry>, TLine> lineOf)
        where TLine : LogLine
    {
        if (Against(sent, of) is { } unfit)
            return unfit;
        using var marks = await store.ReadAsync(snapshot => snapshot.Marks());
        var (tally, names) = (new LogTally(), new LogNamesIn(catalogue).Known);
        foreach (var source in sent.GroupBy(line => line.Source ?? query.Source!, line => line.Line).DefaultIfEmpty(new Nobody<TSent>(query.Source!)))
        {
            var lines = source.Select(line => query.IsWhole || of(line) is not (null, null, false) ? line : refuse(line, FaultCodes.Required));
            var settled = settle([.. lines], source.Key, names, query.Window);
            if (query.IsWhole && settled.Refused.Count > 0)
                return NotWhole(settled.Refused);
            var stored = new StoredLines(catalogue, marks, source.Key);
            var done = await store.AppendAsync(caller, new LogAppend<TLine>
            {
                Source = source.Key,
                Lines = [.. settled.Used.Select(line => lineOf(stored, line))],
                Withdrawn = [.. settled.Cancelled.Where(line => line.Ref is not null).Select(line => marks.OfRef(source.Key, line.Ref!))],
                Whole = query.IsWhole ? new LogDays(query.From!.Value.DayNumber, query.To!.Value.DayNumber) : null,
                WholeDays = query.WholeDays,
                CountsAsMade = query.CountsAsMade,
                Designs = DesignsOf(catalogue, caller.Access),
            });
            if (query.IsWhole && settled.Used.Zip(done.States).Where(pair => pair.Second is LogState.MadeTwice or LogState.OfAnother).ToList()
                    is { Count: > 0 } undone)
                return NotWhole([.. undone.Select(pair => new RefusedLogLine(pair.First.Line, LogTally.CodeOf(pair.Second)))]);
            tally.Add(settled, done);
        }

        return JsonAnswer.Of(tally.Answer());
    }

    /// <summary>The designs whose lines a key may change; null: all.</summary>
    public static IReadOnlyCollection<string>? DesignsOf(Catalogue catalogue, ProfileAccess access) =>
        access.IsWhole ? null : [.. catalogue.Designs.Select(design => design.Key)];

    /// <summary>Without a source, or without ids and days, nobody could send the lines twice.</summary>
    private Problem? Against<TSent>(IReadOnlyList<Sent<TSent>> sent, Func<TSent, (Code? Fault, string? Ref, bool IsCancelled)> of)
    {
        if (query.Source is null && (sent.Count == 0 || sent.Any(line => line.Source is null)))
            return Missing("source", "Say who sends the lines with ?source=, a name of your own for the shop or book.");
        if (query.IsWhole && sent.Any(line => line.Source is { } own && own != query.Source))
            return Missing("source", "With from and to all lines are of one source: name it with ?source=.");
        var readable = sent.Select(line => of(line.Line)).Where(line => line.Fault is null);
        return !query.IsWhole && readable.Any() && readable.All(line => line.Ref is null)
            ? Missing("refColumn", "No line has an id of its own: name the column with ?refColumn= (ref in JSON), so that lines can be sent again, "
                + "or send all lines of some days with ?from= and ?to=.")
            : null;
    }

    private static Problem Missing(string parameter, string detail) =>
        Problem.Invalid([new InputError { Parameter = parameter, Code = FaultCodes.Required, Detail = detail }]);

    /// <summary>A refused line would withdraw a sale, so nothing is stored.</summary>
    private static Problem NotWhole(IReadOnlyList<RefusedLogLine> refused) => Problem.Invalid(refused.Take(MostErrors).Select(line => new InputError
    {
        Pointer = "#",
        Code = line.Code,
        Detail = FormattableString.Invariant($"Line {line.Line}: {line.Code.Meaning} {line.Code.Cure} Nothing was stored."),
        Line = line.Line,
    }));

    /// <summary>A request without lines still says something of its source, or that its days are empty.</summary>
    private sealed class Nobody<T>(string key) : IGrouping<string, T>
    {
        public string Key => key;

        public IEnumerator<T> GetEnumerator() => Enumerable.Empty<T>().GetEnumerator();

        System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
