namespace PriceFloor.Api.OpenApi;

/// <summary>The words for a kind of document.</summary>
public sealed record Noun(string One, string Many, string Id, string Tag, Type Type, Example Example, Example StoredExample)
{
    /// <summary>The main cases of storing one; none if its example is the only one.</summary>
    public IReadOnlyList<MainCase> Cases { get; init; } = [];
}
