using System.Text.Json;
using System.Text.Json.Nodes;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>What must be true of every answer, whatever the request.</summary>
internal sealed class AnswerCheck(ContractDocument contract)
{
    private const string Problem = "application/problem+json";

    private readonly ContractSchemas _schemas = new(contract);
    private readonly List<(string[] Path, string Method, JsonObject Operation)> _operations =
        [.. contract.Operations.Select(one => (one.Path.Split('/'), one.Method.ToUpperInvariant(), one.Operation))];

    public IEnumerable<string> Faults(FuzzedRequest request, Uri sent, Answer answer, bool wrote)
    {
        if (answer.Status >= 500)
            yield return $"{answer.Status}";
        if (answer.Status >= 400 && wrote)
            yield return $"{answer.Status}, but something was written";
        if (answer.Status >= 400)
            foreach (var fault in ProblemFaults(request, answer))
                yield return fault;
        if (OperationAt(request.Method, sent.AbsolutePath) is { } operation)
            foreach (var fault in ContractFaults(operation, request, answer))
                yield return fault;
        else if (answer.Status < 400 && answer.Status != 404)
            yield return $"{answer.Status} from an address that the contract does not have";
    }

    private static IEnumerable<string> ProblemFaults(FuzzedRequest request, Answer answer)
    {
        if (answer.ContentType != Problem)
            yield return $"{answer.Status} as {answer.ContentType ?? "nothing"}";
        else if (request.Method != "HEAD" && answer.Json.GetProperty("status").GetInt32() != answer.Status)
            yield return $"{answer.Status}, whose problem has another status";
    }

    private IEnumerable<string> ContractFaults(JsonObject operation, FuzzedRequest request, Answer answer)
    {
        if (operation["responses"]![$"{answer.Status}"] is not { } told)
        {
            yield return $"{answer.Status} is not in the contract for this operation";
            yield break;
        }

        var content = contract.Followed(told)["content"]?.AsObject();
        if (request.Method == "HEAD" || answer.Text.Length == 0)
        {
            if (content is not null && request.Method != "HEAD" && answer.ContentType != "application/x-ndjson") // no lines are an answer in lines
                yield return $"{answer.Status} without the body in the contract";
            yield break;
        }

        if (content?[answer.ContentType ?? ""] is not { } media)
            yield return $"{answer.Status} as {answer.ContentType}, which is not in the contract";
        else if (answer.ContentType is "application/json" or Problem)
            foreach (var fault in SchemaFaults(media["schema"]!, answer.Text))
                yield return $"{answer.Status}: {fault}";
        else if (answer.ContentType == "application/x-ndjson")
            foreach (var line in answer.Text.Split('\n').SkipLast(1).Where(line => !IsJson(line)))
                yield return $"{answer.Status}: a line that is not JSON: {line}";
    }

    private IReadOnlyList<string> SchemaFaults(JsonNode schema, string text)
    {
        try
        {
            return _schemas.Faults(schema, text);
        }
        catch (JsonException)
        {
            return ["the body is not JSON"];
        }
    }

    private static bool IsJson(string line)
    {
        try
        {
            using var read = JsonDocument.Parse(line);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    /// <summary>The operation of the address as it was sent; a fixed segment of the contract goes before a place for a key.</summary>
    public JsonObject? OperationAt(string method, string path)
    {
        method = method == "HEAD" ? "GET" : method;
        var parts = path.Split('/');
        return _operations.Where(one => one.Method == method && Fits(one.Path, parts)).OrderBy(one => one.Path.Count(part => part.StartsWith('{')))
            .Select(one => one.Operation).FirstOrDefault();
    }

    /// <summary>Routes match in any case, and with an extra slash at the end.</summary>
    private static bool Fits(string[] template, string[] parts)
    {
        if (parts.Length == template.Length + 1 && parts[^1].Length == 0)
            parts = parts[..^1];
        return template.Length == parts.Length && template.Zip(parts)
            .All(pair => pair.First.StartsWith('{') ? pair.Second.Length > 0 : pair.First.Equals(pair.Second, StringComparison.OrdinalIgnoreCase));
    }
}
