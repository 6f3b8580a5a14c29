using System.Globalization;
using System.Text;
using System.Text.Json;

namespace PriceFloor.Api.OpenApi.Reading;

/// <summary>The bodies of the contract, each with its fields, and links to them.</summary>
internal sealed class ContractSchemas(JsonElement contract)
{
    private static readonly (string Name, string Words)[] s_bounds =
        [("minimum", "at least {0}"), ("exclusiveMinimum", "above {0}"), ("maximum", "at most {0}"), ("maxLength", "at most {0} characters")];

    public void Write(StringBuilder page)
    {
        var schemas = contract.GetProperty("components").GetProperty("schemas").EnumerateObject();
        foreach (var schema in schemas.OrderBy(one => one.Name, StringComparer.Ordinal))
        {
            page.Append($"<details id=\"body-{Html.Of(schema.Name)}\"><summary><b>{Html.Of(schema.Name)}</b> "
                + $"<span>{Html.Prose(schema.Value.Text("description"))}</span></summary>\n");
            Fields(page, schema.Value);
            page.Append("</details>\n");
        }
    }

    /// <summary>What a value may be, in words, with a link if it has a body of its own.</summary>
    public string TypeOf(JsonElement schema)
    {
        if (schema.TryGetProperty("$ref", out var reference))
            return Link(reference.GetString()!.Split('/')[^1]);
        foreach (var several in new[] { "oneOf", "anyOf" })
            if (schema.TryGetProperty(several, out var choices))
                return string.Join(" or ", choices.EnumerateArray().Select(TypeOf));
        if (schema.TryGetProperty("enum", out var words))
            return string.Join(" or ", words.EnumerateArray().Select(word => $"<code>{Html.Of(word.ToString())}</code>"));
        var types = !schema.TryGetProperty("type", out var type) ? "any value"
            : type.ValueKind == JsonValueKind.Array
                ? string.Join(" or ", type.EnumerateArray().Select(one => one.GetString()).Order(StringComparer.Ordinal))
            : type.GetString()!;
        return types.Contains("array", StringComparison.Ordinal) && schema.TryGetProperty("items", out var items)
            ? $"list of {TypeOf(items)}" : types + Format(schema) + Bounds(schema);
    }

    private static string Link(string name) => $"<a href=\"#body-{Html.Of(name)}\">{Html.Of(name)}</a>";

    private static string Format(JsonElement schema) => schema.Text("format") is "date" or "date-time"
        ? $" ({schema.Text("format")})" : "";

    private static string Bounds(JsonElement schema)
    {
        List<string> bounds = [];
        foreach (var (name, words) in s_bounds)
            if (schema.TryGetProperty(name, out var bound))
                bounds.Add(string.Format(CultureInfo.InvariantCulture, words, bound.GetRawText()));
        return bounds.Count > 0 ? ", " + string.Join(", ", bounds) : "";
    }

    private void Fields(StringBuilder page, JsonElement schema)
    {
        if (!schema.TryGetProperty("properties", out var properties))
        {
            page.Append($"<p>{TypeOf(schema)}</p>\n");
            return;
        }

        var required = schema.TryGetProperty("required", out var names) ? names.EnumerateArray().Select(name => name.GetString()).ToHashSet() : [];
        page.Append("<dl>");
        foreach (var field in properties.EnumerateObject())
            page.Append($"<dt><code>{Html.Of(field.Name)}</code> <i>{TypeOf(field.Value)}{(required.Contains(field.Name) ? ", always there" : "")}"
                + $"{(field.Value.TryGetProperty("default", out var fallback) ? $"; default {Html.Of(fallback.ToString())}" : "")}</i></dt>"
                + $"<dd>{Html.Prose(field.Value.Text("description"))}</dd>");
        page.Append("</dl>\n");
    }
}
