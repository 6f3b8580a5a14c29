using PriceFloor.Api.Catalogues;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>What lines of a quote leave to the log: how the work of their stored designs gets quicker. The log is read only if a line does.</summary>
internal sealed class QuotedLearning
{
    private readonly Dictionary<int, (Learning Learning, bool IsTold)> _byLine = [];

    private QuotedLearning(string? log) => Log = log;

    /// <summary>Of quotes that say all themselves.</summary>
    public static QuotedLearning None { get; } = new(null);

    /// <summary>How far the log had come; null if it was not read.</summary>
    public string? Log { get; }

    /// <summary>The numbers that lines do not say: the log's, or that nothing is learned.</summary>
    public IEnumerable<Assumption> Assumed(QuoteTerms asked) => _byLine.OrderBy(line => line.Key).SelectMany(line =>
    {
        var at = FormattableString.Invariant($"/lines/{line.Key}/learning");
        var rate = new Assumption(at + "/rate", line.Value.Learning.Rate!.Value);
        return line.Value.IsTold && asked.Lines[line.Key].Learning!.MadeBefore is null
            ? new[] { rate, new Assumption(at + "/madeBefore", line.Value.Learning.MadeBefore!.Value) } : [rate];
    });

    /// <summary>The terms with what the log says filled in.</summary>
    public T In<T>(T terms) where T : QuoteTerms => _byLine.Count == 0 ? terms : (T)(terms with
    {
        Lines = [.. terms.Lines.Select((line, i) => _byLine.TryGetValue(i, out var found) ? line with { Learning = found.Learning } : line)],
    });

    /// <summary>For the documents of now or of a moment.</summary>
    public static async ValueTask<QuotedLearning> Of(Store store, IDesignLearning learning, CatalogueReader reader, QuoteTerms terms,
        DateTimeOffset? asOf)
    {
        if (!IsAsked(terms))
            return None;
        var catalogue = await reader.Whole(asOf);
        return await store.ReadAsync(snapshot => Of(snapshot, learning, catalogue, terms, asOf));
    }

    /// <summary>For documents that are at hand.</summary>
    public static async ValueTask<QuotedLearning> Of(Snapshot snapshot, IDesignLearning learning, Catalogue catalogue, QuoteTerms terms,
        DateTimeOffset? asOf)
    {
        if (!IsAsked(terms))
            return None;
        var lines = terms.Lines.Index().Where(line => line.Item.IsLeftToTheLog())
            .Select(line => (line.Index, line.Item, Design: catalogue.Design(line.Item.Design.Key!))).Where(line => line.Design is not null).ToList();
        var found = await learning.Of(snapshot, catalogue, lines.Select(line => line.Design!), asOf);
        var filled = new QuotedLearning(found.Log);
        foreach (var (index, line, design) in lines)
        {
            var told = found.BySku[design!.Key];
            filled._byLine[index] = (new Learning
            {
                Rate = told?.Rate ?? 1,
                MadeBefore = line.Learning!.MadeBefore ?? told?.MadeBefore ?? 0,
            }, told is not null);
        }

        return filled;
    }

    private static bool IsAsked(QuoteTerms terms) => terms.Lines.Any(line => line.IsLeftToTheLog());
}
