using System.Text.Json.Nodes;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>Every property of the contract has a description and an example.</summary>
public sealed class SchemaExampleTests
{
    [Fact]
    public async Task Every_property_says_what_it_means_and_every_text_and_number_shows_a_value_that_fits()
    {
        await using var studio = new Studio();
        var contract = await ContractDocument.Of(studio);
        var schemas = new ContractSchemas(contract);
        var faults = new List<string>();
        var count = 0;
        foreach (var (place, property) in Properties(contract.Root, "#"))
        {
            if (property["description"] is null && property["$ref"] is null && property["oneOf"] is null)
                faults.Add($"{place} has no description");
            foreach (var scalar in Scalars(property))
            {
                count++;
                if (scalar["examples"]?.AsArray() is not { Count: > 0 } examples)
                    faults.Add($"{place} has no example");
                else
                    faults.AddRange(examples.SelectMany(example => schemas.Faults(scalar, example!.ToJsonString()))
                        .Select(fault => $"{place}: its example breaks its schema {fault}"));
            }
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
        Assert.InRange(count, 400, 4000);
    }

    [Fact]
    public async Task Every_example_of_a_parameter_fits_it()
    {
        await using var studio = new Studio();
        var contract = await ContractDocument.Of(studio);
        var schemas = new ContractSchemas(contract);
        var parameters = contract.Operations.SelectMany(one => one.Operation["parameters"]?.AsArray() ?? [],
            (one, parameter) => (Id: one.Operation["operationId"]!.GetValue<string>(), Parameter: parameter!.AsObject())).ToList();
        Assert.InRange(parameters.Count, 100, 2000);
        foreach (var (id, parameter) in parameters)
        {
            var examples = ContractDocument.ExamplesOf(parameter);
            Assert.True(examples.Count > 0 || IsBoolean(parameter["schema"]!), $"{id} {parameter["name"]} has no example");
            Assert.All(examples.Values, example =>
                Assert.Empty(schemas.Faults(parameter["schema"]!, example.ToJsonString()).Select(fault => $"{id} {parameter["name"]}: {fault}")));
        }
    }

    /// <summary>Each property of each schema, wherever it is; examples are not schemas.</summary>
    private static IEnumerable<(string Place, JsonObject Property)> Properties(JsonNode? node, string place)
    {
        if (node is JsonArray items)
            foreach (var found in items.SelectMany((item, index) => Properties(item, $"{place}/{index}")))
                yield return found;
        foreach (var (name, member) in node as JsonObject ?? [])
        {
            if (name == "properties")
                foreach (var (property, schema) in member!.AsObject())
                    yield return ($"{place}/{property}", schema!.AsObject());
            if (name is not ("example" or "examples" or "default"))
                foreach (var found in Properties(member, $"{place}/{name}"))
                    yield return found;
        }
    }

    /// <summary>The parts of it, its elements or its branches that are a text, a number or anything, and not one of a few words.</summary>
    private static IEnumerable<JsonObject> Scalars(JsonObject schema)
    {
        if ((schema["oneOf"] ?? schema["anyOf"]) is JsonArray branches)
            return branches.SelectMany(branch => Scalars(branch!.AsObject()));
        if (schema["items"] is JsonObject items && schema["examples"] is null)
            return Scalars(items);
        if (schema["$ref"] is not null || schema["enum"] is not null || schema["const"] is not null || schema["properties"] is not null
                || schema["additionalProperties"] is JsonObject)
            return [];
        var types = schema["type"] is JsonArray several ? [.. several.Select(type => type!.GetValue<string>())]
            : schema["type"] is { } one ? new[] { one.GetValue<string>() }
            : [];
        return types.Length == 0 || types.Intersect(["string", "number", "integer", "array"]).Any() ? [schema] : [];
    }

    private static bool IsBoolean(JsonNode schema) => schema["type"]?.ToString() == "boolean";
}
