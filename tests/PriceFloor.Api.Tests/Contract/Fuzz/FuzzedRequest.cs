using System.Text;
using System.Text.Json.Nodes;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>A request that is still being made, and told so that it can be sent again by hand.</summary>
internal sealed class FuzzedRequest(string path, string method, JsonObject? operation = null)
{
    /// <summary>As the contract writes it, with places for keys.</summary>
    public string Path { get; } = path;

    public string Method { get; set; } = method.ToUpperInvariant();

    public JsonObject Operation { get; } = operation ?? [];

    /// <summary>Of the operation that it was made for, if it was made for one.</summary>
    public string? Id => Operation["operationId"]?.GetValue<string>();

    /// <summary>What stands in the places of the path, as it is sent.</summary>
    public Dictionary<string, string> Keys { get; } = [];

    /// <summary>As it is sent.</summary>
    public List<(string Name, string Value)> Query { get; } = [];

    public List<(string Name, string Value)> Headers { get; } = [];

    public string? ContentType { get; set; }

    public byte[]? Body { get; set; }

    /// <summary>What was done to a valid one.</summary>
    public List<string> Spoilt { get; init; } = [];

    public string Address
    {
        get
        {
            var address = Keys.Aggregate(Path, (text, key) => text.Replace($"{{{key.Key}}}", key.Value, StringComparison.Ordinal));
            return Query.Count == 0 ? address : $"{address}?{string.Join('&', Query.Select(one => $"{one.Name}={one.Value}"))}";
        }
    }

    public override string ToString()
    {
        var told = new StringBuilder($"{Method} {Cut(Address)} [{string.Join(", ", Spoilt)}]");
        foreach (var (name, value) in Headers)
            told.Append($"\n  {name}: {Cut(value)}");
        if (Body is not null)
            told.Append($"\n  Content-Type: {ContentType}\n  {Cut(Encoding.Latin1.GetString(Body))}");
        return told.ToString();
    }

    private static string Cut(string text) => text.Length <= 1500 ? text : $"{text[..1500]}... ({text.Length})";
}
