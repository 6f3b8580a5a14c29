using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>The layout of example files: JSON with a line for each part that does not fit on one.</summary>
public static class ExampleText
{
    private const int Width = 120;

    private static readonly JsonSerializerOptions s_readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>JSON as the service answers it, with every number as it is written.</summary>
    public static string OnOneLine(string json) => JsonNode.Parse(json)!.ToJsonString(s_readable);

    /// <summary>JSON for people, with every number as it is written.</summary>
    public static string Readable(string json) => Written(JsonNode.Parse(json), 0, 0) + "\n";

    private static string Written(JsonNode? node, int indent, int before)
    {
        var line = Line(node);
        if (node is not (JsonObject or JsonArray) || before + line.Length <= Width)
            return line;
        var inner = new string(' ', indent + 2);
        var parts = node is JsonObject members
            ? members.Select(member => Name(member.Key) + Written(member.Value, indent + 2, indent + 2 + Name(member.Key).Length))
            : node.AsArray().Select(item => Written(item, indent + 2, indent + 2));
        var (open, close) = node is JsonObject ? ('{', '}') : ('[', ']');
        return new StringBuilder().Append(open).Append('\n').Append(inner).AppendJoin(",\n" + inner, parts)
            .Append('\n').Append(' ', indent).Append(close).ToString();
    }

    private static string Line(JsonNode? node) => node switch
    {
        JsonObject { Count: > 0 } members => $"{{ {string.Join(", ", members.Select(member => Name(member.Key) + Line(member.Value)))} }}",
        JsonArray items => $"[{string.Join(", ", items.Select(Line))}]",
        _ => node?.ToJsonString(s_readable) ?? "null",
    };

    private static string Name(string name) => $"\"{name}\": ";
}
