using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Evidence.Findings;
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
    public static async ValueTask<QuotedLearning> Of(Store store, LogWatch watch, CatalogueReader reader, QuoteTerms terms, DateTimeOffset? asOf)
    {
        if (!IsAsked(terms))
            return None;
        var catalogue = await reader.Whole(asOf);
        return await store.ReadAsync(async snapshot =>
            await Of(snapshot, await StoredLog.OfAsync(snapshot, watch, asOf, new EvidenceChoices { To = catalogue.Today }), catalogue, terms, asOf));
    }

    /// <summary>For a write, whose own lines nobody else may know of yet.</summary>
    public static async ValueTask<QuotedLearning> Of(Writing writing, LogWatch watch, Catalogue catalogue, QuoteTerms terms) => IsAsked(terms)
        ? await Of(writing, await StoredLog.ApartAsync(writing, watch, new EvidenceChoices { To = catalogue.Today }), catalogue, terms, null) : None;

    private static async ValueTask<QuotedLearning> Of(Snapshot snapshot, StoredLog log, Catalogue catalogue, QuoteTerms terms, DateTimeOffset? asOf)
    {
        var (filled, found) = (new QuotedLearning(log.Basis), new Dictionary<string, Learning?>(StringComparer.Ordinal));
        foreach (var (index, line) in terms.Lines.Index())
            if (line.IsLeftToTheLog() && catalogue.Design(line.Design.Key!) is { } design)
            {
                if (!found.TryGetValue(design.Key, out var learning))
                    found[design.Key] = learning = await Of(snapshot, log, catalogue, design, asOf);
                filled._byLine[index] = (new Learning
                {
                    Rate = learning?.Rate ?? 1,
                    MadeBefore = line.Learning!.MadeBefore ?? learning?.MadeBefore ?? 0,
                }, learning is not null);
            }

        return filled;
    }

    private static async ValueTask<Learning?> Of(Snapshot snapshot, StoredLog log, Catalogue catalogue, Stored<Design> design, DateTimeOffset? asOf)
    {
        var bench = await log.BenchOf(design.Key);
        if (bench.Count == 0 || catalogue.Profile(design.Document.Profile) is not { } profile)
            return null;
        var history = await StoredHistory.OfAsync(snapshot, [design.Key], [], asOf);
        return LoggedLearning.Of(design.Document, profile.Document.Calendar, bench, history.MadeSoSince(design.Key), log.Choices);
    }

    private static bool IsAsked(QuoteTerms terms) => terms.Lines.Any(line => line.IsLeftToTheLog());
}
