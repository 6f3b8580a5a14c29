using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents.Batches;

/// <summary>Stores many documents in one transaction, or, where anything stands against any of them, none and says all that does.</summary>
public static class AllOrNothing
{
    /// <summary>A batch is held in memory until it is stored.</summary>
    public const int MostLines = 10_000;

    /// <param name="store">The store.</param>
    /// <param name="reader">What the caller sees of the documents.</param>
    /// <param name="caller">Who writes.</param>
    /// <param name="kind">The kind of document.</param>
    /// <param name="lay">
    /// The lines, laid over the documents that are given: those that stand when they are written, so that a change which somebody made while the
    /// body was on its way is not taken back.
    /// </param>
    public static async Task<IResult> WriteAsync<T>(Store store, CatalogueReader reader, Caller caller, DocumentKind<T> kind, Func<WholeCatalogue, Task<(IReadOnlyList<PlacedLine<T>>? Lines, Problem? Problem)>> lay) where T : class
    {
        var catalogue = reader.Whole(null);
        var laid = Checked(await lay(catalogue));
        if (laid.Problem is not null)
            return laid.Problem;

        var (lines, saved, problem) = await store.WriteAsync(caller, writing =>
        {
            var (now, fault) = writing.Position == catalogue.Position ? laid : Checked(lay(reader.WholeWithin(writing)).GetAwaiter().GetResult());
            var done = fault is null ? now!.Select(line => kind.Save(writing, line.Key!, line.Document!, caller.Access)).ToList() : [];
            if (fault is null && !done.TrueForAll(one => one.Problem is null))
                fault = Refusal(now!, done);
            if (fault is not null)
                writing.Undo();
            return (now, done, fault);
        });
        return problem ?? (IResult)JsonAnswer.Of(new WriteBatchAnswer
        {
            Items = [.. lines!.Zip(saved, (line, one) => ItemOf(line.Key!, one))],
            Summary = new BatchCounts(saved.Count(Is(BatchResult.Created)), saved.Count(Is(BatchResult.Changed)), saved.Count(Is(BatchResult.Unchanged))),
        });
    }

    private static (IReadOnlyList<PlacedLine<T>>? Lines, Problem? Problem) Checked<T>((IReadOnlyList<PlacedLine<T>>? Lines, Problem? Problem) laid) where T : class
    {
        if (laid.Lines is not { } lines)
            return laid;
        // The whole is what the worst of its lines would be alone: what cannot be read comes before what breaks a rule.
        var unreadable = lines.Where(line => line.IsUnreadable).SelectMany(line => line.Faults).ToList();
        if (unreadable.Count > 0)
            return (null, Problem.Unreadable(unreadable[0]).WithErrors(unreadable));
        var broken = lines.SelectMany(line => line.Faults).Concat(Doubled(lines)).ToList();
        return broken.Count > 0 ? (null, Problem.Invalid(broken)) : laid;
    }

    /// <summary>One problem for all: of the kind that they all are, else invalid input.</summary>
    private static Problem Refusal<T>(IReadOnlyList<PlacedLine<T>> lines, IReadOnlyList<Saved> saved) where T : class
    {
        var against = lines.Zip(saved).Where(pair => pair.Second.Problem is not null).Select(pair => (Line: pair.First, Problem: pair.Second.Problem!)).ToList();
        var errors = against.SelectMany(one => one.Problem.Errors is { Count: > 0 } told
            ? told.Select(one.Line.Placed)
            : [one.Line.Placed(new InputError { Code = one.Problem.Code, Detail = one.Problem.Detail })]).ToList();
        var first = against[0].Problem;
        return against.TrueForAll(one => one.Problem.Type == first.Type) && first.Type != ProblemTypes.NotFound ? first.WithErrors(errors) : Problem.Invalid(errors);
    }

    private static IEnumerable<InputError> Doubled<T>(IReadOnlyList<PlacedLine<T>> lines) where T : class
    {
        var seen = new Dictionary<string, long>();
        foreach (var line in lines.Where(line => line.Key is not null))
            if (!seen.TryAdd(line.Key!, line.Line))
                yield return line.Placed(new InputError { Code = FaultCodes.Duplicate, Detail = FormattableString.Invariant($"\"{line.Key}\" stands in line {seen[line.Key!]} already; leave one of them out.") });
    }

    private static BatchItemAnswer ItemOf(string key, Saved saved)
    {
        var slash = key.IndexOf('/', StringComparison.Ordinal);
        return new BatchItemAnswer { Sku = slash < 0 ? key : key[..slash], Channel = slash < 0 ? null : key[(slash + 1)..], Result = ResultOf(saved), Revision = saved.Revision!.Number };
    }

    private static Func<Saved, bool> Is(BatchResult result) => saved => ResultOf(saved) == result;

    private static BatchResult ResultOf(Saved saved) =>
        saved.Before is null ? BatchResult.Created : saved.Before.Number == saved.Revision!.Number ? BatchResult.Unchanged : BatchResult.Changed;
}
