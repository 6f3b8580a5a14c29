using System.Globalization;
using System.Text.Json.Nodes;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>
/// Changes in a newer contract that would break a client made for an older one. Requests may only become more lenient: no narrower type, bound or
/// list of words, nothing newly required. Answers may only become stricter: nothing gone, no new type or word, nothing less certain to be there.
/// </summary>
public sealed class BreakingChanges
{
    private readonly ContractDocument _old;
    private readonly ContractDocument _new;
    private readonly List<string> _found = [];
    private readonly HashSet<(string, string, bool)> _compared = [];

    private BreakingChanges(ContractDocument older, ContractDocument newer) => (_old, _new) = (older, newer);

    public static IReadOnlyList<string> Between(JsonNode older, JsonNode newer)
    {
        var changes = new BreakingChanges(new ContractDocument(older), new ContractDocument(newer));
        foreach (var (path, method, operation) in changes._old.Operations)
            changes.OfOperation($"{method.ToUpperInvariant()} {path}", operation, changes._new.Root["paths"]?[path]?[method]?.AsObject());
        return changes._found;
    }

    private void OfOperation(string place, JsonObject older, JsonObject? newer)
    {
        if (newer is null)
        {
            _found.Add($"{place}: gone");
            return;
        }

        if ($"{older["operationId"]}" != $"{newer["operationId"]}")
            _found.Add($"{place}: operationId {older["operationId"]} is now {newer["operationId"]}, which renames methods of generated clients");
        OfParameters(place, older, newer);
        OfRequest(place, older["requestBody"], newer["requestBody"]);
        foreach (var (status, response) in older["responses"]?.AsObject() ?? [])
            if (status[0] == '2' || status[0] == '3')
                OfResponse($"{place} {status}", _old.Followed(response!), newer["responses"]?[status] is { } now ? _new.Followed(now) : null);
    }

    private void OfParameters(string place, JsonObject older, JsonObject newer)
    {
        var before = Parameters(_old, older);
        var now = Parameters(_new, newer);
        foreach (var (name, parameter) in before)
            if (!now.TryGetValue(name, out var other))
                _found.Add($"{place}: parameter {name} is gone");
            else
                OfSchema($"{place} parameter {name}", parameter["schema"], other["schema"], isSent: true);
        foreach (var (name, parameter) in now.Where(one => IsTrue(one.Value["required"])))
            if (!before.TryGetValue(name, out var other) || !IsTrue(other["required"]))
                _found.Add($"{place}: parameter {name} is newly required");
    }

    private void OfRequest(string place, JsonNode? older, JsonNode? newer)
    {
        if (newer is not null && IsTrue(newer["required"]) && !IsTrue(older?["required"]))
            _found.Add($"{place}: a body is newly required");
        foreach (var (format, media) in older?["content"]?.AsObject() ?? [])
            if (newer?["content"]?[format] is { } now)
                OfSchema($"{place} body", media!["schema"], now["schema"], isSent: true);
            else
                _found.Add($"{place}: a body in {format} is no longer read");
    }

    private void OfResponse(string place, JsonObject older, JsonObject? newer)
    {
        if (newer is null)
        {
            _found.Add($"{place}: no longer answered");
            return;
        }

        foreach (var (name, _) in older["headers"]?.AsObject() ?? [])
            if (newer["headers"]?[name] is null)
                _found.Add($"{place}: header {name} is gone");
        foreach (var (format, media) in older["content"]?.AsObject() ?? [])
            if (newer["content"]?[format] is { } now)
                OfSchema($"{place} answer", media!["schema"], now["schema"], isSent: false);
            else
                _found.Add($"{place}: no longer answered in {format}");
    }

    private void OfSchema(string place, JsonNode? older, JsonNode? newer, bool isSent)
    {
        if (older is null || newer is null || !_compared.Add(
                ($"{older["$ref"]}" is { Length: > 0 } name ? name : place, $"{newer["$ref"]}" is { Length: > 0 } other ? other : place, isSent)))
            return;
        var (before, now) = (_old.Followed(older), _new.Followed(newer));
        var (from, to) = isSent ? (before, now) : (now, before); // whatever "from" allows, "to" must allow too
        if (Types(from).Except(Types(to)).ToList() is { Count: > 0 } types && Types(to).Count > 0)
            _found.Add($"{place}: {string.Join(", ", types)} is {(isSent ? "no longer taken" : "answered now")}");
        if ($"{before["format"]}" != $"{now["format"]}")
            _found.Add($"{place}: format {before["format"]} is now \"{now["format"]}\"");
        OfWords(place, from, to, isSent);
        if (isSent)
            OfBounds(place, before, now);
        OfProperties(place, before, now, isSent);
        if (before["items"] is { } items)
            OfSchema($"{place}/0", items, now["items"], isSent);
        OfBranches(place, before, now, isSent);
    }

    private void OfWords(string place, JsonObject from, JsonObject to, bool isSent)
    {
        if (to["enum"] is null)
            return;
        var words = Words(from).Except(Words(to)).ToList();
        if (words.Count > 0)
            _found.Add($"{place}: {string.Join(", ", words)} is {(isSent ? "no longer taken" : "a new word in an answer")}");
        else if (from["enum"] is null)
            _found.Add($"{place}: only certain words are {(isSent ? "taken now" : "told of before")}");
    }

    private void OfBounds(string place, JsonObject before, JsonObject now)
    {
        foreach (var bound in new[] { "maximum", "exclusiveMaximum", "maxLength", "maxItems" })
            if (Number(now[bound]) is { } most && !(Number(before[bound]) <= most))
                _found.Add($"{place}: {bound} {before[bound]} is now {most}");
        foreach (var bound in new[] { "minimum", "exclusiveMinimum", "minLength", "minItems" })
            if (Number(now[bound]) is { } least && !(Number(before[bound]) >= least)
                    && !(bound == "minimum" && Number(before["exclusiveMinimum"]) >= least))
                _found.Add($"{place}: {bound} {before[bound]} is now {least}");
        if (now["pattern"] is not null && $"{before["pattern"]}" != $"{now["pattern"]}")
            _found.Add($"{place}: pattern {before["pattern"]} is now {now["pattern"]}");
    }

    private void OfProperties(string place, JsonObject before, JsonObject now, bool isSent)
    {
        foreach (var (name, property) in before["properties"]?.AsObject() ?? [])
            if (now["properties"]?[name] is { } other)
                OfSchema($"{place}/{name}", property, other, isSent);
            else if (!isSent || IsFalse(now["additionalProperties"]))
                _found.Add($"{place}/{name}: gone");
        var newly = isSent ? Required(now).Except(Required(before)) : Required(before).Except(Required(now));
        foreach (var name in newly.Where(name => isSent || now["properties"]?[name] is not null))
            _found.Add($"{place}/{name}: {(isSent ? "newly required" : "no longer sure to be there")}");
    }

    private void OfBranches(string place, JsonObject before, JsonObject now, bool isSent)
    {
        var (older, newer) = ((before["oneOf"] ?? before["anyOf"])?.AsArray() ?? [], (now["oneOf"] ?? now["anyOf"])?.AsArray() ?? []);
        if (older.Count == 0 && newer.Count == 0)
            return;
        if (isSent ? newer.Count < older.Count : newer.Count > older.Count)
            _found.Add($"{place}: {older.Count} kinds are now {newer.Count}");
        foreach (var (one, other) in older.Zip(newer))
            OfSchema($"{place} (one of)", one, other, isSent);
    }

    private static Dictionary<string, JsonObject> Parameters(ContractDocument contract, JsonObject operation) =>
        (operation["parameters"]?.AsArray() ?? []).Select(one => contract.Followed(one!)).ToDictionary(one => $"{one["in"]} {one["name"]}");

    private static IEnumerable<string> Words(JsonObject schema) => (schema["enum"]?.AsArray() ?? []).Select(word => $"{word}");

    private static IEnumerable<string> Required(JsonObject schema) => (schema["required"]?.AsArray() ?? []).Select(name => $"{name}");

    private static List<string> Types(JsonObject schema) => schema["type"] switch
    {
        JsonArray several => [.. several.Select(type => $"{type}")],
        { } one => [$"{one}"],
        _ => [],
    };

    private static decimal? Number(JsonNode? bound) =>
        bound is null ? null : decimal.Parse($"{bound}", NumberStyles.Float, CultureInfo.InvariantCulture);

    private static bool IsTrue(JsonNode? node) => $"{node}" is "true";

    private static bool IsFalse(JsonNode? node) => $"{node}" is "false";
}
