using System.Globalization;
using System.Text.Json.Nodes;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Tests.Http.Reading;
using PriceFloor.Api.Tests.ManyStudios;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>Every bound that the contract states for a request is enforced: its last value passes, the next is refused.</summary>
public sealed class BoundsTests
{
    /// <summary>A place in a body, a value for it, and whether that is past the bound.</summary>
    private sealed record Trial(string Pointer, string Bound, JsonNode Kept, JsonNode Broken);

    [Fact]
    public async Task One_past_every_bound_is_refused_and_the_bound_itself_is_not()
    {
        await using var one = new Studio();
        await using var host = HostedService.Start();
        await one.HasASmallShop();
        await host.HasStudio("trial");
        var contract = await ContractDocument.Of(one);
        var count = 0;
        var faults = new List<string>();
        foreach (var (path, method, operation) in contract.Operations.Where(each =>
            each.Operation["requestBody"]?["content"]?["application/json"] is not null && !each.Path.EndsWith("/batch", StringComparison.Ordinal)))
        {
            var address = path.Replace("{key}", "trial", StringComparison.Ordinal).Replace("{sku}", "RB-014", StringComparison.Ordinal)
                .Replace("{channel}", "trial", StringComparison.Ordinal).Replace("{key}", "trial", StringComparison.Ordinal);
            var studio = GoodBodies.IsHosts(path) ? host : one;
            var schema = operation["requestBody"]!["content"]!["application/json"]!["schema"]!;
            foreach (var trial in Trials(contract, schema, "", new HashSet<JsonObject>()))
            {
                count++;
                var past = await RefusalsAt(studio, method, address, trial.Pointer, trial.Broken);
                var kept = await RefusalsAt(studio, method, address, trial.Pointer, trial.Kept);
                if (past.Count == 0)
                    faults.Add($"{method} {path} {trial.Pointer}: {trial.Bound} is stated, but a value past it passes");
                else if (past.Intersect(kept).Any())
                    faults.Add(
                        $"{method} {path} {trial.Pointer}: {trial.Bound} is stated, but already refused ({string.Join(", ", past.Intersect(kept))})");
            }
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
        Assert.InRange(count, 400, 4000);
    }

    [Fact]
    public async Task Null_is_accepted_only_where_the_contract_says_so() =>
        await EachProperty(async (studio, method, address, pointer, types) =>
        {
            var refused = (await RefusalsAt(studio, method, address, pointer, null))
                .Any(refusal => refusal.StartsWith("null:", StringComparison.Ordinal));
            return refused == types.Contains("null") ? $"null is {(refused ? "told and refused" : "not told and taken")}" : null;
        });

    [Fact]
    public async Task A_number_may_be_sent_as_text_only_where_the_contract_says_so() =>
        await EachProperty(async (studio, method, address, pointer, types) =>
        {
            if (!types.Overlaps(["number", "integer"]))
                return null;
            var refused = (await RefusalsAt(studio, method, address, pointer, JsonValue.Create("1")))
                .Any(refusal => refusal.StartsWith("wrong-type:", StringComparison.Ordinal));
            return refused == types.Contains("string") ? $"text is {(refused ? "told and refused" : "not told and taken")}" : null;
        });

    [Fact]
    public async Task Every_property_that_may_be_left_out_says_what_it_is_then() =>
        await EachProperty((_, _, _, _, _) => Task.FromResult<string?>(null), (schema, name, property, types) =>
            schema["required"]?.AsArray().Any(required => required!.GetValue<string>() == name) == true || property["default"] is not null
            || types.Contains("null")
                || name == "profile" // the design's own, or of an inline design the one that the request names
                ? null : "it may be left out, has no default and takes no null");

    private delegate Task<string?> PropertyTrial(Studio studio, string method, string address, string pointer, IReadOnlySet<string> types);

    /// <summary>Each property of each JSON body, wherever it is, with the types that it accepts.</summary>
    private static async Task EachProperty(PropertyTrial trial, Func<JsonObject, string, JsonObject, IReadOnlySet<string>, string?>? look = null)
    {
        await using var one = new Studio();
        await using var host = HostedService.Start();
        await one.HasASmallShop();
        await host.HasStudio("trial");
        var contract = await ContractDocument.Of(one);
        var (count, faults) = (0, new List<string>());
        foreach (var (path, method, operation) in contract.Operations.Where(each =>
            each.Operation["requestBody"]?["content"]?["application/json"] is not null && !each.Path.EndsWith("/batch", StringComparison.Ordinal)))
        {
            var address = path.Replace("{key}", "trial", StringComparison.Ordinal).Replace("{sku}", "RB-014", StringComparison.Ordinal)
                .Replace("{channel}", "trial", StringComparison.Ordinal);
            var studio = GoodBodies.IsHosts(path) ? host : one;
            foreach (var (pointer, parent, name, property) in Properties(contract,
                operation["requestBody"]!["content"]!["application/json"]!["schema"]!, "", new HashSet<JsonObject>()))
            {
                count++;
                var types = AllTypes(contract, property);
                if ((look?.Invoke(parent, name, property.AsObject(), types) ?? await trial(studio, method, address, pointer, types)) is { } fault)
                    faults.Add($"{method} {path} {pointer}: {fault}");
            }
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
        Assert.InRange(count, 200, 2000);
    }

    private static IEnumerable<(string Pointer, JsonObject Parent, string Name, JsonNode Property)> Properties(ContractDocument contract,
        JsonNode node, string pointer, IReadOnlySet<JsonObject> above)
    {
        var schema = contract.Followed(node);
        if (above.Contains(schema))
            yield break;
        var seen = above.Append(schema).ToHashSet();
        foreach (var branch in BranchesOf(schema))
            foreach (var found in Properties(contract, branch!, pointer, seen))
                yield return found;
        if (schema["items"] is { } items)
            foreach (var found in Properties(contract, items, pointer + "/0", seen))
                yield return found;
        foreach (var (name, property) in (schema["properties"]?.AsObject() ?? []).Where(one => one.Value!["readOnly"] is null))
        {
            yield return ($"{pointer}/{name}", schema, name, property!);
            foreach (var found in Properties(contract, property!, $"{pointer}/{name}", seen))
                yield return found;
        }
    }

    /// <summary>A body that may be a list too is a batch then, in which each element has its own problem; it is tried alone.</summary>
    private static IEnumerable<JsonNode?> BranchesOf(JsonObject schema) =>
        ((schema["oneOf"] ?? schema["anyOf"])?.AsArray() ?? []).Where(branch => branch!["type"]?.ToString() != "array");

    private static HashSet<string> AllTypes(ContractDocument contract, JsonNode node)
    {
        var schema = contract.Followed(node);
        return [.. Types(schema), .. ((schema["oneOf"] ?? schema["anyOf"])?.AsArray() ?? []).SelectMany(branch => AllTypes(contract, branch!))];
    }

    private static IEnumerable<Trial> Trials(ContractDocument contract, JsonNode node, string pointer, IReadOnlySet<JsonObject> above)
    {
        var schema = contract.Followed(node);
        if (above.Contains(schema))
            yield break;
        var seen = above.Append(schema).ToHashSet();
        foreach (var branch in BranchesOf(schema))
            foreach (var trial in Trials(contract, branch!, pointer, seen))
                yield return trial;
        foreach (var trial in OfNumber(schema, pointer).Concat(OfText(schema, pointer)).Concat(OfWords(schema, pointer)))
            yield return trial;
        if (schema["minItems"] is { } least)
            yield return new Trial(pointer, $"minItems {least}", Many(Filler(contract, schema["items"]!), least.GetValue<int>()),
                Many(new JsonObject(), least.GetValue<int>() - 1));
        if (schema["maxItems"] is { } most)
        {
            var item = Filler(contract, schema["items"]!);
            yield return new Trial(pointer, $"maxItems {most}", Many(item, most.GetValue<int>()), Many(item, most.GetValue<int>() + 1));
        }

        if (schema["items"] is { } items)
            foreach (var trial in Trials(contract, items, pointer + "/0", seen))
                yield return trial;
        foreach (var (name, property) in schema["properties"]?.AsObject() ?? [])
            if (property!["readOnly"] is null)
                foreach (var trial in Trials(contract, property, $"{pointer}/{name}", seen))
                    yield return trial;
    }

    private static IEnumerable<Trial> OfNumber(JsonObject schema, string pointer)
    {
        if (!Types(schema).Overlaps(["number", "integer"]))
            yield break;
        var step = Types(schema).Contains("integer") ? 1m : 0.01m;
        if (Number(schema["minimum"]) is { } least)
            yield return new Trial(pointer, $"minimum {least}", JsonValue.Create(least), JsonValue.Create(least - step));
        if (Number(schema["exclusiveMinimum"]) is { } above)
            yield return new Trial(pointer, $"exclusiveMinimum {above}", JsonValue.Create(above + step), JsonValue.Create(above));
        if (Number(schema["maximum"]) is { } most)
            yield return new Trial(pointer, $"maximum {most}", JsonValue.Create(most), JsonValue.Create(most + step));
    }

    private static IEnumerable<Trial> OfText(JsonObject schema, string pointer)
    {
        if (!Types(schema).Contains("string") || schema["enum"] is not null)
            yield break;
        if (Number(schema["maxLength"]) is { } most)
            yield return new Trial(pointer, $"maxLength {most}", Letters(most), Letters(most + 1));
        if (Number(schema["minLength"]) is { } least and > 0)
            yield return new Trial(pointer, $"minLength {least}", Letters(least), Letters(least - 1));
    }

    private static IEnumerable<Trial> OfWords(JsonObject schema, string pointer)
    {
        foreach (var word in schema["enum"]?.AsArray() ?? [])
            yield return new Trial(pointer, $"enum {word}", word!.DeepClone(), JsonValue.Create("no-such-word"));
    }

    /// <summary>
    /// The faults reported at that place, for a body that has nothing else: faults elsewhere are reported elsewhere, and rules between fields have
    /// their own words.
    /// </summary>
    private static async Task<IReadOnlyList<string>> RefusalsAt(Studio studio, string method, string address, string pointer, JsonNode? value)
    {
        var answer = await studio.Send(method.ToUpperInvariant(), address, BodyWith(pointer, value).ToJsonString());
        if (answer.Status < 400 || !answer.Json.TryGetProperty("errors", out var errors))
            return [];
        return [.. errors.EnumerateArray().Where(error => error.TryGetProperty("pointer", out var place) && place.GetString() == "#" + pointer)
            .Select(error => $"{error.GetProperty("code")}: {error.GetProperty("detail")}")];
    }

    private static JsonNode BodyWith(string pointer, JsonNode? value) => pointer.Split('/').Skip(1).Reverse()
        .Aggregate(value?.DeepClone(), (inner, name) => name == "0" ? new JsonArray(inner) : new JsonObject { [name] = inner })!;

    /// <summary>The smallest valid element of a list, so only the length can be wrong.</summary>
    private static JsonNode Filler(ContractDocument contract, JsonNode node)
    {
        var schema = contract.Followed(node);
        return Types(schema).Contains("number") ? JsonValue.Create(0.5m)
            : Types(schema).Contains("string") ? schema["enum"]?[0]!.DeepClone() ?? JsonValue.Create("a")
            : schema["oneOf"] is not null ? JsonValue.Create("web")
            : new JsonObject();
    }

    private static JsonArray Many(JsonNode item, int count) => [.. Enumerable.Repeat(item, count).Select(one => one.DeepClone())];

    private static JsonValue Letters(decimal count) => JsonValue.Create(new string('a', (int)count));

    private static decimal? Number(JsonNode? bound) =>
        bound is null ? null : decimal.Parse(bound.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture);

    private static HashSet<string> Types(JsonObject schema) => schema["type"] switch
    {
        JsonArray several => [.. several.Select(type => type!.GetValue<string>())],
        { } one => [one.GetValue<string>()],
        _ => [],
    };
}
