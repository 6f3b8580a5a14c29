using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>Every operation is called as its own example says, on a store that is filled by the examples: the answer is the example, fits its schema and has its headers.</summary>
public sealed class ExampleTests
{
    /// <summary>What fills the store comes first, what changes it comes last; everything else in between, in the order of the contract.</summary>
    private static readonly string[] s_first = ["putProfile", "putDesign", "putChannel", "putListedPrice", "putReadingRule"];

    private static readonly string[] s_last = ["putListedPrices", "putDesigns", "createKey", "listKeys", "rotateKey", "listAudit", "deleteKey", "createBackup", "deleteReadingRule", "deleteListedPrice", "deleteChannel", "deleteDesign", "deleteProfile"];

    /// <summary>What differs from run to run: secrets, ids of requests, the microsecond of a write; and listKeys also shows the key that the tests use.</summary>
    private static readonly (Regex Pattern, string Instead)[] s_volatile =
    [
        (new("\"key\":\"pf_[^\"]*\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"key\":\"pf_...\""),
        (new("\"requestId\":\"[0-9a-f]{32}\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"requestId\":\"...\""),
        (new("2027-01-0[23]T09:00:0[01](?:\\.[0-9]{6})?Z", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)), "2027-01-02T09:00:00.000000Z"),
        (new("\"next\":\"p[45]\\.[0-9a-f]{12}\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"next\":\"p4.(life)\""),
        (new("\"next\":\"[0-9]{19}\\.[0-9]+\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"next\":\"(older)\""),
        (new("\"bytes\":[0-9]+,\"sha256\":\"[0-9a-f]{64}\",\"schema\":[0-9]+", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"bytes\":0,\"sha256\":\"...\",\"schema\":0"),
        (new("\\{\"name\":\"first-admin-key\"[^}]*\\},?", RegexOptions.None, TimeSpan.FromSeconds(1)), ""),
    ];

    [Fact]
    public async Task Every_operation_answers_its_example_in_full()
    {
        await using var studio = new Studio();
        var contract = await ContractDocument.Of(studio);
        var schemas = new ContractSchemas(contract);
        var faults = new List<string>();
        var operations = contract.Operations.OrderBy(one => Order(Id(one.Operation))).ToList();
        foreach (var (path, method, operation) in operations)
        {
            if (Id(operation) == "deleteProfile")
                await DeleteEveryDesign(studio); // putDesigns stored some that lean on it
            var (type, request) = operation["requestBody"]?["content"]?.AsObject().OrderBy(content => content.Key == "application/json" ? 0 : 1).First() ?? default;
            var body = type == "application/json" ? request!["example"]?.ToJsonString() : request?["example"]?.GetValue<string>();
            if (type == "application/json" && body is not null)
                faults.AddRange(schemas.Faults(request!["schema"]!, body).Select(fault => $"{Id(operation)}: its request breaks its schema: {fault}"));
            var answer = await studio.SendBytes(method.ToUpperInvariant(), Address(path, operation), body is null ? null : System.Text.Encoding.UTF8.GetBytes(body), type);
            faults.AddRange(FaultsOf(contract, schemas, operation, answer).Select(fault => $"{Id(operation)} {Address(path, operation)}: {fault}"));
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
        Assert.True(operations.Count > 45);
    }

    [Fact]
    public async Task Every_example_of_a_problem_fits_the_schema_of_problems()
    {
        await using var studio = new Studio();
        var contract = await ContractDocument.Of(studio);
        var schemas = new ContractSchemas(contract);
        var schema = JsonNode.Parse("""{"$ref":"#/components/schemas/ProblemBody"}""")!;
        var examples = contract.Root["components"]!["examples"]!.AsObject();
        Assert.True(examples.Count > 12);
        foreach (var (slug, example) in examples)
            Assert.Empty(schemas.Faults(schema, example!["value"]!.ToJsonString()).Select(fault => $"{slug}: {fault}"));
        Assert.NotEmpty(schemas.Faults(schema, """{"type":"/problems/busy"}""")); // the check itself can fail
    }

    private static async Task DeleteEveryDesign(Studio studio)
    {
        foreach (var design in (await studio.Get("/v1/designs")).Json.GetProperty("items").EnumerateArray())
            Assert.Equal(204, (await studio.Delete($"/v1/designs/{design.GetProperty("key").GetString()}")).Status);
    }

    private static IEnumerable<string> FaultsOf(ContractDocument contract, ContractSchemas schemas, JsonObject operation, Answer answer)
    {
        if (answer.Status >= 400 || operation["responses"]![answer.Status.ToString()] is not { } told)
        {
            yield return $"{answer.Status} {answer.Text}";
            yield break;
        }

        var response = contract.Followed(told);
        foreach (var (name, _) in response["headers"]!.AsObject())
            if (answer[name] is null && name != "Link") // a page that is the last has no link
                yield return $"its contract tells a header {name} that is not there";
        if (response["content"]?["application/json"] is not { } media)
            yield break;
        foreach (var fault in schemas.Faults(media["schema"]!, answer.Text))
            yield return $"its answer breaks its schema: {fault}";
        var (expected, actual) = (Settled(media["example"]!.ToJsonString()), Settled(JsonNode.Parse(answer.Text)!.ToJsonString()));
        if (expected != actual)
            yield return $"another answer than its example\n  {expected}\n  {actual}";
    }

    private static string Settled(string json) => s_volatile.Aggregate(json, (text, one) => one.Pattern.Replace(text, one.Instead));

    private static string Id(JsonObject operation) => operation["operationId"]!.GetValue<string>();

    private static int Order(string id) => Array.IndexOf(s_first, id) is var first and >= 0 ? first : Array.IndexOf(s_last, id) is var last and >= 0 ? 1000 + last : 500;

    /// <summary>The path with the examples of its parameters, and the query parameters that it cannot do without.</summary>
    private static string Address(string path, JsonObject operation)
    {
        var parameters = operation["parameters"]?.AsArray() ?? [];
        foreach (var parameter in parameters.Where(one => one!["in"]!.GetValue<string>() == "path"))
            path = path.Replace($"{{{parameter!["name"]}}}", parameter["example"]!.ToString(), StringComparison.Ordinal);
        var query = parameters.Where(one => one!["in"]!.GetValue<string>() == "query" && (one["required"]?.GetValue<bool>() == true || NeededByExample(operation, one))).Select(one => $"{one!["name"]}={one["example"]}");
        if (Id(operation) == "listAudit")
            query = query.Append("limit=1"); // its example shows the newest change alone
        return string.Join('&', query) is { Length: > 0 } text ? $"{path}?{text}" : path;
    }

    /// <summary>Prices that are optional where one is listed: the example names one.</summary>
    private static bool NeededByExample(JsonObject operation, JsonNode parameter) =>
        (Id(operation), parameter["name"]!.GetValue<string>()) is ("getBreakEven" or "getRemedies", "channel" or "price") or ("draftProfile", "account") or ("getPriceParts", "channel");
}
