using System.Text;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>Bytes that are not text, and text with a meaning elsewhere, in every kind of place of an address.</summary>
internal static class OddAddresses
{
    private static readonly string[] s_get = ["GET"];
    private static readonly string[] s_methods = ["GET", "DELETE", "PUT"];
    private static readonly string[] s_odd =
    [
        "%FF", "%ED%A0%80", "%C0%80", "%C3%28", "%92", "%01", "%0d%0a", "%F0%9F%94%A5", "%EF%BF%BF", "%", "%zz", "%25", "%5c", "%E2%80%AE", "é",
    ];

    private static readonly string[] s_paths =
    [
        "/v1/designs/@", "/v1/designs/@/floor-price", "/v1/designs/@/revisions", "/v1/designs/RB-014/prices/@", "/v1/channels/@",
        "/v1/profiles/@/requirement", "/problems/@", "/@", "/v1/designs?after=@",
        "/v1/price-checks?sku=@&channel=@&price=58", "/v1/price-list?channel=@", "/v1/floor-changes?since=@",
        "/v1/price-checks?sku=RB-014&channel=web&price=@", "/v1/designs?asOf=@", "/v1/designs?@=1",
    ];

    public static IEnumerable<FuzzedRequest> All =>
        from path in s_paths
        from odd in s_odd
        from method in path.Contains('?', StringComparison.Ordinal) ? s_get : s_methods
        select new FuzzedRequest(path.Replace("@", odd, StringComparison.Ordinal), method)
        {
            ContentType = method == "PUT" ? "application/json" : null,
            Body = method == "PUT" ? Encoding.UTF8.GetBytes(Sample.Shop) : null,
            Spoilt = { $"{odd} in the address" },
        };
}
