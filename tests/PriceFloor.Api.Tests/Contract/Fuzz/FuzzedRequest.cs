using System.Text;
using System.Text.Json.Nodes;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>A request under construction, with a description to repeat it by hand.</summary>
internal sealed class FuzzedRequest(string path, string method, JsonObject? operation = null)
{
    /// <summary>As in the contract, with places for keys.</summary>
    public string Path { get; } = path;

    public string Method { get; set; } = method.ToUpperInvariant();

    public JsonObject Operation { get; } = operation ?? [];

    /// <summary>The operation that it was made for, if any.</summary>
    public string? Id => Operation["operationId"]?.GetValue<string>();

    /// <summary>The values for the places of the path, as sent.</summary>
    public Dictionary<string, string> Keys { get; } = [];

    /// <summary>As it is sent.</summary>
    public List<(string Name, string Value)> Query { get; } = [];

    public List<(string Name, string Value)> Headers { get; } = [];

    public string? ContentType { get; set; }

    public byte[]? Body { get; set; }

    /// <summary>The changes to a valid request.</summary>
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
