using System.Text;
using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>A stored quote with what became of it, as a caller may see it at one moment.</summary>
/// <param name="Revision">The revision.</param>
/// <param name="Text">Its text, taken apart.</param>
/// <param name="Document">The document.</param>
/// <param name="Outcome">Its outcome at the moment; null if there is none.</param>
/// <param name="State">Its state on the day.</param>
internal sealed record StoredQuote(Revision Revision, QuoteText Text, Quote Document, QuoteOutcome? Outcome, QuoteState State)
{
    public string Key => Revision.Key;

    /// <summary>The day of a moment, or today, in UTC.</summary>
    public static DateOnly DayOf(DateTimeOffset? asOf, TimeProvider clock) => DateOnly.FromDateTime((asOf ?? clock.GetUtcNow()).UtcDateTime);

    /// <summary>The quote with its state. Throws <see cref="DamagedDocumentException"/>.</summary>
    /// <param name="snapshot">Where its outcome is.</param>
    /// <param name="revision">A revision that is not a deletion.</param>
    /// <param name="asOf">The moment; now if null.</param>
    /// <param name="today">The day of that moment in UTC.</param>
    public static async ValueTask<StoredQuote> Of(Snapshot snapshot, Revision revision, DateTimeOffset? asOf, DateOnly today)
    {
        var text = QuoteText.Of(revision);
        var quote = StoredText<Quote>.Read(text.Document).Document
            ?? throw new DamagedDocumentException(revision.Kind, revision.Key, revision.Number);
        if (text.Issued is null)
            return new StoredQuote(revision, text, quote, null, QuoteState.Draft);
        long? moment = asOf is { } at ? Moment.Of(at) : null;
        var outcome = await snapshot.Find(Kinds.QuoteOutcome, revision.Key, moment) is { } stored ? StoredText<QuoteOutcome>.Of(stored) : null;
        return new StoredQuote(revision, text, quote, outcome, await StateOf(snapshot, revision.Key, (text, quote, outcome), moment, today));
    }

    /// <summary>The quote of a key as a caller sees it; null if there is none.</summary>
    public static async ValueTask<StoredQuote?> Find(Snapshot snapshot, string key, ProfileAccess access, DateTimeOffset? asOf, DateOnly today) =>
        await access.Seen(snapshot, snapshot.Find(Kinds.Quote, key, asOf is { } at ? Moment.Of(at) : null)) is { } revision
            ? await Of(snapshot, revision, asOf, today) : null;

    /// <summary>A quote whose later quote was deleted again is not superseded.</summary>
    private static async ValueTask<QuoteState> StateOf(Snapshot snapshot, string key, (QuoteText Text, Quote Quote, QuoteOutcome? Outcome) it,
        long? moment, DateOnly today) =>
            it.Outcome?.Result == QuoteResult.Accepted && await snapshot.Find(Kinds.QuoteActual, key, moment) is not null ? QuoteState.Done
            : it.Text.SupersededBy is { } later && await snapshot.Find(Kinds.Quote, later, moment) is not null ? QuoteState.Superseded
            : it.Outcome?.Result switch
            {
                QuoteResult.Accepted => QuoteState.Accepted,
                QuoteResult.Declined => QuoteState.Declined,
                QuoteResult.Withdrawn => QuoteState.Withdrawn,
                _ => today > it.Quote.ValidUntil ? QuoteState.Lapsed : QuoteState.Issued,
            };

    /// <summary>The revision as answers have it: what was frozen is not part of the document, its state is.</summary>
    public Revision Shown() => Shown(Text.Document[..^1] + ",");

    /// <summary>The same for a caller: one who may write and not read is told how far the quote is, and nothing that another stored.</summary>
    public Revision ShownTo(Caller caller) => caller.May(Scope.Read) ? Shown() : Shown("{");

    private Revision Shown(string before)
    {
        var shown = new StringBuilder(before, before.Length + 200);
        shown.Append($"\"state\":\"{KebabWords.Of(State)}\"");
        if (Text.Issued is { } issued)
            shown.Append($",\"issuedAt\":\"{TimeText.Write(issued.At)}\"");
        if (Text.SupersededBy is { } later)
            shown.Append($",\"supersededBy\":\"{later}\"");
        return Revision with { Body = shown.Append('}').ToString() };
    }

    /// <summary>
    /// Whether it reads the same until its next revision. What became of an issued quote is stored beside it, and it lapses by itself.
    /// </summary>
    public async ValueTask<bool> IsSettled(Snapshot snapshot) => State switch
    {
        QuoteState.Draft => true,
        QuoteState.Issued => Text.SupersededBy is null && await snapshot.Newest(Kinds.QuoteOutcome, Key) is null,
        _ => false,
    };
}
