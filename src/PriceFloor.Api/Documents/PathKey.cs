namespace PriceFloor.Api.Documents;

/// <summary>
/// The key that a path names: a profile's, a design's, a channel's, a set of reading rules', or a design's and a channel's for a listed price.
/// </summary>
public sealed record PathKey(string Text)
{
    /// <summary>The parts that the caller chooses here, to be checked when a document is made; a name that is known already is none.</summary>
    public IReadOnlyList<string> Chosen { get; init; } = Text.Split('/');

    private static readonly string[] s_names = ["sku", "channel", "key"];

    public static ValueTask<PathKey?> BindAsync(HttpContext context) =>
        ValueTask.FromResult<PathKey?>(new(string.Join('/', s_names.Select(name => context.GetRouteValue(name)).OfType<string>())));
}
