using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Tests.Workbooks;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>
/// Requests to the operations of the contract: valid ones, some with one thing wrong, and hostile ones. The same seed makes the same requests.
/// </summary>
internal sealed class RequestsOfContract
{
    private const string Boundary = "a-boundary-of-the-fuzzer";

    private readonly Random _random;
    private readonly OddValues _odd;
    private readonly ValuesOfSchema _values;
    private readonly SpoiltRequest _spoilt;
    private readonly List<(string Path, string Method, JsonObject Operation)> _operations;
    private readonly ContractDocument _contract;
    private int _made;

    public RequestsOfContract(ContractDocument contract, Random random)
    {
        (_contract, _random, _odd, _values) = (contract, random, new OddValues(contract, random), new ValuesOfSchema(contract, random));
        _spoilt = new SpoiltRequest(_odd, random);
        _operations = [.. contract.Operations];
    }

    /// <summary>Each operation in turn; three of ten valid, five with one thing wrong, two hostile.</summary>
    public FuzzedRequest Next()
    {
        var request = Valid(_operations[_made++ % _operations.Count]);
        switch (_random.Next(10))
        {
            case < 3:
                break;
            case < 8:
                _spoilt.Spoil(request);
                break;
            default:
                _spoilt.Ruin(request);
                break;
        }

        if (request.Method == "GET" && _random.Next(20) == 0)
            request.Method = "HEAD";
        return request;
    }

    private FuzzedRequest Valid((string Path, string Method, JsonObject Operation) operation)
    {
        var request = new FuzzedRequest(operation.Path, operation.Method, operation.Operation);
        var parameters = operation.Operation["parameters"]?.AsArray().Select(one => _contract.Followed(one!)).ToList() ?? [];
        foreach (var parameter in parameters)
        {
            var (name, place) = (parameter["name"]!.GetValue<string>(), parameter["in"]!.GetValue<string>());
            if (place == "path")
                request.Keys[name] = Parameter(parameter, request.Path);
            else if (place == "query" && IsWithExamples(parameter) && _random.Next(4) > 0)
                request.Query.Add((name, Uri.EscapeDataString(ContractDocument.ExampleOf(parameter)!.ToString())));
            else if (place == "query" && (parameter["required"]?.GetValue<bool>() == true
                || _random.Next(Math.Max(4, parameters.Count)) == 0)) // of very many, one on average
                request.Query.Add((name, Uri.EscapeDataString(Parameter(parameter, request.Path))));
            else if (place == "header" && _random.Next(4) == 0)
                request.Headers.Add((name, _odd.Any(["\"1\"", "\"2\"", "*"])));
        }

        if (operation.Operation["requestBody"]?["content"] is JsonObject content)
            Fill(request, content);
        if (_random.Next(3) == 0 && Success(operation.Operation)?["content"] is JsonObject { Count: > 1 } answers)
            request.Headers.Add(("Accept", _odd.Any([.. answers.Select(answer => answer.Key)])));
        return request;
    }

    /// <summary>A parameter that the operation's examples of bodies need, such as the source of lines.</summary>
    private static bool IsWithExamples(JsonObject parameter) => parameter["examples"] is JsonObject;

    private JsonObject? Success(JsonObject operation) =>
        operation["responses"]!.AsObject().Where(one => one.Key[0] == '2').Select(one => _contract.Followed(one.Value!)).FirstOrDefault();

    private string Parameter(JsonObject parameter, string path)
    {
        var name = parameter["name"]!.GetValue<string>();
        if (name == "name")
            return _odd.Any(["key-a", "key-b", "key-c", "key-d"]);
        if (name is "source" or "ref")
            return name == "source" ? "web-shop" : "1";
        if (name == "sheet")
            return _odd.Any(["fees", "fees", "stock", "channels", "plan-lines"]);
        if (name == "limit" || name == "number")
            return _odd.Any(["1", "1", "1", "1", "2", "100"]);
        if (name is "key" && (path.Contains("reading-rules", StringComparison.Ordinal)
            || path.Contains("statement-layouts", StringComparison.Ordinal) || path.Contains("/plans/", StringComparison.Ordinal)))
            return _odd.Any(["main", "second"]);
        if (name is "key" && path == "/v1/quotes/{key}")
            return _odd.Any(["Q-1", "Q-2027-014", "Q-2", "Q-3", "Q-3"]);
        if (name is "key" && path.Contains("/quotes/", StringComparison.Ordinal))
            return _odd.Any<string>(path.EndsWith("/revise", StringComparison.Ordinal)
                ? ["Q-2027-014", "Q-2"] // the first one is never superseded
                : ["Q-1", "Q-1", "Q-1", "Q-2027-014", "Q-2027-014", "Q-2027-014-2", "Q-2"]);
        if (name == "key" && path == "/v1/profiles/{key}")
            return _odd.Any(["main", "second", "third", "third"]); // nothing refers to the third, so it may be stored in any form
        if (name == "key" && path.StartsWith("/v1/channels/", StringComparison.Ordinal))
            return _odd.Any(["web", "stall", "third", "third"]); // likewise
        if (name is "asOf" or "since")
            return _odd.Any(["2027-01-02T09:00:00Z", "2027-01-02T09:30:00.5Z", "2027-01-01T00:00:00Z", "2028-01-01T00:00:00Z"]);
        if (name == "after")
            return _odd.Any(["RB-014", "main", "1"]);
        if (name is "dialect" or "dateOrder" || _random.Next(3) == 0)
            return ContractDocument.ExampleOf(parameter) is { } example ? example.ToString() : _odd.Any(["RB-014", "main", "1"]);
        return _values.Of(parameter["schema"]!, name) is { } value ? AsText(value) : "";
    }

    private static string AsText(JsonNode value) => value.GetValueKind() switch
    {
        JsonValueKind.String => value.GetValue<string>(),
        JsonValueKind.True => "true",
        JsonValueKind.False => "false",
        _ => value.ToJsonString(),
    };

    private void Fill(FuzzedRequest request, JsonObject content)
    {
        var (type, media) = _odd.Any([.. content]);
        request.ContentType = type;
        if (type == Format.Xlsx.MediaType)
        {
            request.Body = Book.Of(("expenses", ["profile|name|amount|per", $"main|Rent|{_random.Next(500, 600)}|month"]));
            return;
        }

        var example = ContractDocument.ExampleOf(media!)!;
        if (type == "multipart/form-data")
            (request.ContentType, request.Body) = ($"multipart/form-data; boundary={Boundary}", Form(example.AsObject()));
        else if (type is not ("application/json" or "application/merge-patch+json"))
            request.Body = Encoding.UTF8.GetBytes(type == "application/x-ndjson" && _random.Next(3) > 0
                ? Lines(content, example.GetValue<string>())
                : example.GetValue<string>());
        else
            request.Body = Encoding.UTF8.GetBytes(Named(request, _random.Next(10) switch
            {
                < 3 => example,
                < 9 => _values.Varied(example.DeepClone(), media!["schema"]!, ""),
                _ => _values.Of(media!["schema"]!, ""),
            })?.ToJsonString() ?? "null");
    }

    /// <summary>New keys have few names, so they clash with one another but never with the key of the requests themselves.</summary>
    private JsonNode? Named(FuzzedRequest request, JsonNode? body)
    {
        if (request.Path == "/v1/keys" && body is JsonObject key)
        {
            key = key.DeepClone().AsObject();
            key["name"] = _odd.Any(["key-a", "key-b", "key-c", "key-d"]);
            return key;
        }

        return body;
    }

    /// <summary>The elements of the JSON form of the same batch, one a line.</summary>
    private string Lines(JsonObject content, string otherwise)
    {
        var json = content["application/json"];
        var items = _values.Varied(json is null ? null : ContractDocument.ExampleOf(json)?.DeepClone(), json?["schema"] ?? new JsonObject(), "");
        return items is JsonArray { Count: > 0 } array ? string.Concat(array.Select(item => (item?.ToJsonString() ?? "null") + "\n")) : otherwise;
    }

    private static byte[] Form(JsonObject parts)
    {
        var form = new StringBuilder();
        foreach (var (name, text) in parts)
            form.Append(CultureInfo.InvariantCulture, $"--{Boundary}\r\nContent-Disposition: form-data; name=\"{name}\"; filename=\"{name}.csv\"\r\n"
                + $"Content-Type: text/csv\r\n\r\n{text}\r\n");
        return Encoding.UTF8.GetBytes(form.Append(CultureInfo.InvariantCulture, $"--{Boundary}--\r\n").ToString());
    }
}
