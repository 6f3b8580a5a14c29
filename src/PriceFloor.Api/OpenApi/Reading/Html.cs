using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace PriceFloor.Api.OpenApi.Reading;

/// <summary>Texts of the contract as HTML.</summary>
internal static partial class Html
{
    public static string Of(string text) => WebUtility.HtmlEncode(text);

    /// <summary>A sentence; what stands between backticks is code.</summary>
    public static string Prose(string text) => BetweenBackticks().Replace(Of(text), "<code>${code}</code>");

    /// <summary>The text of a property; empty if it has none.</summary>
    public static string Text(this JsonElement element, string property) =>
        element.TryGetProperty(property, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString()! : "";

    [GeneratedRegex("`(?<code>[^`]+)`", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex BetweenBackticks();
}
