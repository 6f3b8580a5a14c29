namespace PriceFloor.Api.Tests.Access;

/// <summary>A request that is sent with a key of every scope.</summary>
/// <param name="Path">Path and query.</param>
/// <param name="Body">The body; null for none.</param>
/// <param name="Type">Its media type.</param>
internal sealed record ScopeRequest(string Path, string? Body = null, string Type = "application/json")
{
    public string? Accept { get; init; }

    /// <summary>True for a request that is refused whatever the key: refusals reveal nothing either.</summary>
    public bool IsRefused { get; init; }

    /// <summary>What the answer may reveal beyond what the key may find in any answer.</summary>
    public IReadOnlyDictionary<string, Told> Also { get; init; } = new Dictionary<string, Told>();

    public string Text => $"{Path} {Body}";

    /// <summary>The same for a list of prices, in which a checker finds every design and channel.</summary>
    public ScopeRequest AsPriceList() =>
        this with { Also = new Dictionary<string, Told> { ["check"] = Told.Names | Told.Listed | Told.OtherProfile } };

    /// <summary>The same for documents that others refer to: a writer learns the others' names, and no figure.</summary>
    public ScopeRequest AsInUse(Told told = Told.Names) => this with { IsRefused = true, Also = new Dictionary<string, Told> { ["write"] = told } };

    /// <summary>The same for what an admin learns about documents: their names.</summary>
    public ScopeRequest AsTrail() => this with { Also = new Dictionary<string, Told> { ["admin"] = Told.Names | Told.OtherProfile } };

    public static implicit operator ScopeRequest(string path) => new(path);
}
