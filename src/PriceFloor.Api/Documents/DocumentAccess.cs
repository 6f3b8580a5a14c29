using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>
/// What a key sees of the store: everything, or only some cost profiles, the designs and plans that use them and those designs' listed prices.
/// What it may not see is absent for it. Channels are shared: a key that is limited to some profiles reads them and cannot change one. Reading
/// rules and statement layouts are about the household of all profiles together: such a key can neither see nor change them.
/// </summary>
public static class DocumentAccess
{
    /// <summary>
    /// Whether a revision is visible: a design, quote or scenario by the profile that it names, a deletion like the deleted document, a listed
    /// price like its design, what became of a quote like the quote.
    /// </summary>
    public static async ValueTask<bool> Sees(this ProfileAccess access, Snapshot snapshot, Revision revision) =>
        access.IsWhole || revision.Kind switch
        {
            Kinds.Profile => access.Sees(revision.Key),
            Kinds.Design or Kinds.Quote or Kinds.Scenario or Kinds.Plan => await access.SeesByProfile(snapshot, revision),
            Kinds.ReadingRules or Kinds.StatementLayout => false,
            Kinds.ListedPrice => await snapshot.Newest(Kinds.Design, ListedPriceKey.Of(revision.Key).Sku) is { } design
                && await access.SeesByProfile(snapshot, design),
            Kinds.QuoteOutcome or Kinds.QuoteActual => await snapshot.Newest(Kinds.Quote, revision.Key) is { } quote
                && await access.SeesByProfile(snapshot, quote),
            _ => true,
        };

    /// <summary>The revision, if there is one and the key sees it.</summary>
    public static async ValueTask<Revision?> Seen(this ProfileAccess access, Snapshot snapshot, ValueTask<Revision?> question) =>
        await question is { } revision && await access.Sees(snapshot, revision) ? revision : null;

    /// <summary>A page of what the key sees.</summary>
    public static ValueTask<List<Revision>> List(this ProfileAccess access, Snapshot snapshot, string kind, string prefix, string after,
        int limit, long? asOf) =>
            access.Page(snapshot, limit, last => snapshot.List(kind, prefix, last?.Key ?? after, limit, asOf));

    /// <summary>The revisions of a document that the key sees.</summary>
    public static ValueTask<List<Revision>> History(this ProfileAccess access, Snapshot snapshot, string kind, string key, long after,
        int limit, long? asOf) =>
            access.Page(snapshot, limit, last => snapshot.History(kind, key, last?.Number ?? after, limit, asOf));

    /// <summary>Those revisions that the key sees.</summary>
    public static async ValueTask<List<Revision>> Seen(this ProfileAccess access, Snapshot snapshot, IEnumerable<Revision> revisions)
    {
        var seen = new List<Revision>();
        foreach (var revision in revisions)
            if (await access.Sees(snapshot, revision))
                seen.Add(revision);
        return seen;
    }

    /// <summary>Why a document may not be written whose name does not say whether the key may see it.</summary>
    public static async ValueTask<RequestFault?> Against(this ProfileAccess access, Snapshot snapshot, string kind, string key) =>
        access.IsWhole ? null : kind switch
        {
            Kinds.Channel =>
                RequestFault.Of(ProblemTypes.KeyNotAllowed, "Channels are shared by all profiles; a key with few profiles cannot change one."),
            Kinds.ReadingRules =>
                RequestFault.Of(ProblemTypes.KeyNotAllowed, "Reading rules serve all profiles; a key with few profiles cannot change them."),
            Kinds.StatementLayout =>
                RequestFault.Of(ProblemTypes.KeyNotAllowed, "Statement layouts serve all profiles; a key with few profiles cannot change them."),
            Kinds.Profile when !access.Sees(key) => RequestFault.Of(ProblemTypes.KeyNotAllowed, "This key is limited to other profiles."),
            Kinds.Design or Kinds.Quote or Kinds.Scenario or Kinds.Plan
                when await snapshot.Newest(kind, key) is { } stored && !await access.Sees(snapshot, stored) => Taken(key),
            _ => null,
        };

    /// <summary>Keys are unique in the whole store, so a taken key must be reported; the answer does not say by what it is taken.</summary>
    public static RequestFault Taken(string name) => RequestFault.InUse($"The name \"{name}\" is taken; choose another.", []);

    private static async ValueTask<List<Revision>> Page(this ProfileAccess access, Snapshot snapshot, int limit,
        Func<Revision?, ValueTask<List<Revision>>> read)
    {
        var page = await read(null);
        if (access.IsWhole)
            return page;
        var seen = await access.Seen(snapshot, page);
        while (seen.Count < limit && page.Count == limit)
        {
            page = await read(page[^1]);
            seen.AddRange(await access.Seen(snapshot, page));
        }

        return seen.Count > limit ? seen[..limit] : seen;
    }

    private static async ValueTask<bool> SeesByProfile(this ProfileAccess access, Snapshot snapshot, Revision revision) => revision.Body is { } body
        ? ProfileIn(body) is { } profile && access.Sees(profile)
        : await snapshot.RevisionOf(revision.Kind, revision.Key, revision.Number - 1) is { } before && await access.SeesByProfile(snapshot, before);

    /// <summary>Null if the text is damaged: nobody can say whose it is, so no key that is limited to profiles sees it.</summary>
    private static string? ProfileIn(string body)
    {
        try
        {
            using var json = JsonDocument.Parse(body);
            return json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty("profile", out var profile)
                && profile.ValueKind == JsonValueKind.String ? profile.GetString() : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
