namespace PriceFloor.Api.LogLines;

/// <summary>The source and the ref of a line in the path. A slash in a ref is written %2F.</summary>
public sealed record LineName(string Source, string Ref)
{
    public static ValueTask<LineName?> BindAsync(HttpContext context) => ValueTask.FromResult<LineName?>(new(
        (string)context.GetRouteValue("source")!,
        ((string)context.GetRouteValue("ref")!).Replace("%2F", "/", StringComparison.OrdinalIgnoreCase)));
}
