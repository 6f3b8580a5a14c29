using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.Statements;

/// <summary>How each file of a request is written: as its own part says, else as the stored layout of its account, else as the query.</summary>
public static class FileLayouts
{
    /// <summary>The files, each with its whole layout. A key that may not read, or that is limited to some profiles, finds no stored one.</summary>
    public static async ValueTask<List<SentFile>> OfAsync(IReadOnlyList<SentFile> files, StatementQuery query, Store store, Caller caller)
    {
        if (!caller.May(Scope.Read) || !caller.Access.IsWhole)
            return [.. files.Select(file => file with { Layout = file.Layout.Over(query.Layout) })];
        var asOf = query.AsOf is { } moment ? Moment.Of(moment) : (long?)null;
        var stored = await store.ReadAsync(snapshot => StoredAsync(snapshot, files.Select(file => file.Name).Distinct(), asOf));
        return [.. files.Select(file => stored.TryGetValue(file.Name, out var revision) ? file with
        {
            Layout = file.Layout.Over(StoredText<StatementLayout>.Of(revision)).Over(query.Layout),
            LayoutBasis = FormattableString.Invariant($"{revision.Key}@{revision.Number}"),
        } : file with { Layout = file.Layout.Over(query.Layout) })];
    }

    private static async ValueTask<Dictionary<string, Revision>> StoredAsync(Snapshot snapshot, IEnumerable<string> names, long? asOf)
    {
        var found = new Dictionary<string, Revision>();
        foreach (var name in names)
            if (await snapshot.Find(Kinds.StatementLayout, name, asOf) is { } revision)
                found.Add(name, revision);
        return found;
    }
}
