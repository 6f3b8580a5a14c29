namespace PriceFloor.Api.OpenApi;

/// <summary>How a kind of document is spoken of.</summary>
public sealed record Noun(string One, string Many, string Id, string Tag, Type Type, Example Example, Example StoredExample)
{
    /// <summary>The main cases of storing one; none where its example is the only one.</summary>
    public IReadOnlyList<MainCase> Cases { get; init; } = [];
}
