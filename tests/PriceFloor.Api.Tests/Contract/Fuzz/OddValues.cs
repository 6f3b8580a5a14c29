using System.Text.Json;
using System.Text.Json.Nodes;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>Values that callers send by mistake or by malice, including the contract's own bounds and words.</summary>
internal sealed class OddValues
{
    private static readonly string[] s_json =
    [
        "null", "true", "\"\"", "\" \"", "\"x\"", "0", "-0", "-1", "0.0001", "1.5", "1e5", "1E+400", "-1e-400", "12345678901234567890",
        "79228162514264337593543950336", "0.123456789012345678901234567890", "\"1\"", "\"1e5\"", "\"01\"", "\"1,5\"", "\"NaN\"", "\"Infinity\"",
        "NaN", "01", "+1", ".5", "1.", "[]", "{}", "[null]", "[[]]", "[{}]", "{\"\":1}", "{\"a\":{\"a\":1}}",
        "\"\\u0000\"", "\"\\ud800\"", "\"\u0001\"", "\"\\u202e\"", "\"\uD83D\uDD25\"", "\"e\u0301\"", "\"2027-02-29\"", "\"2027-01-01T24:00:00Z\"",
        "\"0001-01-01\"", "\"9999-12-31T23:59:59.9999999+14:00\"", "\"=1+1\"", "\"main\"", "\"RB-014\"", "\"web\"", "\"USD\"", "\"JPY\"", "\"KWD\"",
        "\"usd\"", "\"' OR 1=1 --\"", "\"<script>\"", "\"../../etc/passwd\"", "\"%00\"", "//", "'x'",
    ];

    private static readonly string[] s_text =
    [
        "", "%20", "x", "0", "-1", "1e5", "1E400", "12345678901234567890", "58.00", "58,00", "+1", "%2B1", "true", "TRUE", "1", "null", "NaN",
        "2027-02-29", "2027-02-29T00:00:00Z", "2027-01-01T00:00:00", "2027-01-01T00:00:00+14:00",
        "0001-01-01T00:00:00Z", "9999-12-31T23:59:59.9999999Z", "9999-12-31", "%00", "%FF", "%C3%A9", "%0d%0aSet-Cookie:x=1", "%zz", "%", "a&b",
        "a=b", "a;b", "main", "web", "RB-014", "usd", "semicolon", "%F0%9F%94%A5", "[]", "{}", "'", "\"", "..",
    ];

    private static readonly string[] s_keys =
    [
        "a%20b", "%20", "%2F", "a%2Fb", "..", ".", "%2e%2e", "%00", "a%00b", "%C3%A9", "\u00E9", "%FF", "%", "%zz", "%0a", "a;b", "a,b", "'", "%22",
        "@", "*", "+", "~", ":", "-", "batch", "revisions", "prices", "0", "-1", "1.5", "9223372036854775807", "9223372036854775808",
        "rb-014", "RB-014%20",
    ];

    private static readonly string[] s_tags = ["\"1\"", "\"2\"", "1", "W/\"1\"", "*", "\"\"", "\"", "\"1\", \"2\"", "\"-1\"", "\"01\"",
        "\"99999999999999999999\"", "\"a\"", "", "\"1\"x", ",", "\"\u00E9\"", "\"1\",\"1\",*"];

    private static readonly string[] s_accepts =
    [
        "text/html", "text/csv", "application/x-ndjson", "image/svg+xml", "application/json", "application/problem+json", "*/*", "text/*",
        "application/xml", "application/json;q=0", "*/*;q=0", "text/csv;q=0.5, application/json;q=0.1", "", ";", "nonsense", "/", "a/b/c",
        "application/json;charset=utf-16", "application/json;q=2", "text/html,application/xhtml+xml,*/*;q=0.8", "image/png",
        "application/json, ,", "\u00E9/\u00E9",
    ];

    private static readonly string[] s_types =
    [
        "application/json; charset=utf-8", "application/json; charset=utf-16", "application/json;charset=nonsense", "text/plain", "text/csv",
        "text/csv; header=absent", "application/x-ndjson", "application/xml", "application/x-www-form-urlencoded", "multipart/form-data",
        "multipart/form-data; boundary=", "multipart/form-data; boundary=x", "application/merge-patch+json", "application/problem+json", "json", "",
        "application/", "image/png", "APPLICATION/JSON",
    ];

    private readonly Random _random;
    private readonly string[] _bounds, _words;

    public OddValues(ContractDocument contract, Random random)
    {
        _random = random;
        var schemas = Walk(contract.Root["components"]!["schemas"]!).OfType<JsonObject>().ToList();
        string[] bounds = ["minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum"];
        _bounds = [.. from schema in schemas from name in bounds let bound = schema[name] where bound is JsonValue value
            && value.GetValueKind() == JsonValueKind.Number select bound.ToJsonString()];
        _bounds = [.. _bounds.Distinct()];
        _words = [.. schemas.Select(schema => schema["enum"]).OfType<JsonArray>().SelectMany(words => words).Where(word => word is not null)
            .Select(word => word!.ToJsonString()).Distinct()];
    }

    public string Text => Any(s_text);

    public string Key => _random.Next(8) == 0 ? new string('k', _random.Next(60, 70)) : Any(s_keys);

    public string Tag => Any(s_tags);

    public string Accept => Any(s_accepts);

    public string MediaType => Any(s_types);

    /// <summary>JSON, or almost.</summary>
    public string Json => _random.Next(10) switch
    {
        < 5 => Any(s_json),
        < 7 => Bound,
        < 8 => Any(_words),
        8 => $"\"{new string('a', Any([64, 65, 128, 129, 200, 201, 4000, 4001, 70_000]))}\"",
        _ => Deep(Any([10, 31, 32, 33, 64, 65, 1000, 20_000])),
    };

    /// <summary>A bound of the contract, or a value beside it by one or by the smallest step of the field.</summary>
    private string Bound
    {
        get
        {
            var bound = Any(_bounds);
            if (!decimal.TryParse(bound, System.Globalization.CultureInfo.InvariantCulture, out var number))
                return bound;
            var beside = number + Any([0m, 0m, 1m, -1m, 0.01m, -0.01m, 0.000001m, -0.000001m, 0.00000001m, -0.000000001m]);
            return beside.ToString(System.Globalization.CultureInfo.InvariantCulture);
        }
    }

    public T Any<T>(IReadOnlyList<T> list) => list[_random.Next(list.Count)];

    private string Deep(int depth) => _random.Next(2) == 0
        ? $"{new string('[', depth)}{new string(']', depth)}"
        : $"{string.Concat(Enumerable.Repeat("{\"a\":", depth))}1{new string('}', depth)}";

    private static IEnumerable<JsonNode> Walk(JsonNode node) => node switch
    {
        JsonObject members => members.Where(member => member.Value is not null).SelectMany(member => Walk(member.Value!)).Prepend(node),
        JsonArray items => items.Where(item => item is not null).SelectMany(item => Walk(item!)).Prepend(node),
        _ => [node],
    };
}
