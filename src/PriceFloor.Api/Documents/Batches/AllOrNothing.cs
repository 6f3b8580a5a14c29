using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents.Batches;

/// <summary>Stores many documents in one transaction. If any of them has a fault, it stores none and reports every fault.</summary>
public static class AllOrNothing
{
    /// <summary>A batch is held in memory until it is stored.</summary>
    public const int MostLines = 10_000;

    /// <param name="store">The store.</param>
    /// <param name="reader">What the caller sees of the documents.</param>
    /// <param name="caller">Who writes.</param>
    /// <param name="kind">The kind of document.</param>
    /// <param name="lay">
    /// Lays the lines over the documents as they are when they are written, so a change that somebody made while the body arrived is not undone.
    /// </param>
    /// <param name="guard">Why nothing may be stored now, asked within the write.</param>
    /// <param name="answer">What is answered, from the keys and what was stored; by default that of a batch.</param>
    public static async Task<IResult> WriteAsync<T>(Store store, CatalogueReader reader, Caller caller, DocumentKind<T> kind,
        Func<WholeCatalogue, Task<Outcome<List<PlacedLine<T>>>>> lay, Func<Writing, ValueTask<Fault?>>? guard = null,
        Func<IReadOnlyList<string>, IReadOnlyList<Saved>, object>? answer = null) where T : class
    {
        var catalogue = await reader.Whole(null);
        var laid = await lay(catalogue);
        if (Against(laid) is { } unfit)
            return unfit;

        var (lines, saved, problem) = await store.WriteAsync(caller, async writing =>
        {
            var now = catalogue.Point.IsAt(await writing.Point()) ? laid : await lay(await reader.WholeWithin(writing));
            var against = guard is not null && await guard(writing) is { } fault ? Problem.Of([fault]) : Against(now);
            var done = new List<Outcome<Saved>>();
            foreach (var line in against is null ? now.Value : [])
                done.Add(await kind.Save(writing, line.Key!, line.Document!, caller.Access));
            if (done.Exists(one => one.Found is null))
                against = Refusal(now.Value, done);
            if (against is not null)
                writing.Undo();
            return (now.Found, done, against);
        });
        return problem ?? (IResult)JsonAnswer.Of((answer ?? AnswerOf)([.. lines!.Select(line => line.Key!)], [.. saved.Select(one => one.Value)]));
    }

    /// <summary>The whole batch gets the worst problem of its lines: what cannot be read comes before what breaks a rule.</summary>
    private static Problem? Against<T>(Outcome<List<PlacedLine<T>>> laid) where T : class
    {
        if (laid.Found is not { } lines)
            return Problem.Of(laid.Faults);
        var unreadable = InOrder(lines.Where(line => line.IsUnreadable).SelectMany(line => line.Faults));
        if (unreadable.Count > 0)
            return Problem.Unreadable(unreadable[0]).WithErrors(unreadable);
        var broken = lines.SelectMany(line => line.Faults).Concat(Doubled(lines)).ToList();
        return broken.Count > 0 ? Invalid(broken) : null;
    }

    /// <summary>One problem for all faults: their common kind, else invalid input.</summary>
    private static Problem Refusal<T>(IReadOnlyList<PlacedLine<T>> lines, IReadOnlyList<Outcome<Saved>> saved) where T : class
    {
        var refused = lines.Zip(saved)
            .SelectMany(pair => pair.Second.Faults.Select(RequestFault.Of), (pair, fault) => (Line: pair.First, Fault: fault)).ToList();
        var errors = InOrder(refused.Select(one => one.Line.Placed(one.Fault.InBatch)));
        var first = refused[0].Fault;
        var isOneKind = first.Type != ProblemTypes.NotFound && refused.TrueForAll(one => one.Fault.Type == first.Type);
        return isOneKind ? Problem.Of(saved.First(one => one.Found is null).Faults).WithErrors(errors) : Invalid(errors);
    }

    /// <summary>Faults in the order of the lines that were sent, so that the sender can go through both side by side.</summary>
    private static List<InputError> InOrder(IEnumerable<InputError> errors) =>
        [.. errors.Distinct().OrderBy(error => error.Line).ThenBy(error => error.Column).ThenBy(error => error.Pointer, StringComparer.Ordinal)];

    private static Problem Invalid(IEnumerable<InputError> errors)
    {
        var sorted = InOrder(errors);
        return Problem.Invalid(sorted).WithErrors(sorted);
    }

    private static IEnumerable<InputError> Doubled<T>(IReadOnlyList<PlacedLine<T>> lines) where T : class
    {
        var seen = new Dictionary<string, long>();
        foreach (var line in lines.Where(line => line.Key is not null))
            if (!seen.TryAdd(line.Key!, line.Line))
                yield return line.Placed(new InputError
                {
                    Code = FaultCodes.Duplicate,
                    Detail = FormattableString.Invariant($"\"{line.Key}\" is already in line {seen[line.Key!]}; leave one of them out."),
                });
    }

    /// <summary>How many were created, changed or unchanged.</summary>
    public static BatchCounts CountsOf(IReadOnlyList<Saved> saved) =>
        new(saved.Count(Is(BatchResult.Created)), saved.Count(Is(BatchResult.Changed)), saved.Count(Is(BatchResult.Unchanged)));

    /// <summary>What storing did to a document.</summary>
    public static BatchResult ResultOf(Saved saved) =>
        saved.Before is null ? BatchResult.Created : saved.Before.Number == saved.Revision.Number ? BatchResult.Unchanged : BatchResult.Changed;

    private static WriteBatchAnswer AnswerOf(IReadOnlyList<string> keys, IReadOnlyList<Saved> saved) => new()
    {
        Items = [.. keys.Zip(saved, ItemOf)],
        Summary = CountsOf(saved),
    };

    private static BatchItemAnswer ItemOf(string key, Saved saved)
    {
        var listed = ListedPriceKey.Read(key);
        return new BatchItemAnswer
        {
            Sku = listed?.Sku ?? key,
            Channel = listed?.Channel,
            Alias = listed?.Alias,
            Result = ResultOf(saved),
            Revision = saved.Revision.Number,
        };
    }

    private static Func<Saved, bool> Is(BatchResult result) => saved => ResultOf(saved) == result;
}
