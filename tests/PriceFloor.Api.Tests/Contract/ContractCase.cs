using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>One request that the contract gives as an example, and the place of its answer.</summary>
/// <param name="Id">The operation.</param>
/// <param name="Name">The name of the example; empty if there is only one.</param>
/// <param name="Rank">0 for the first of the operation's names.</param>
public sealed record ContractCase(string Id, string Name, int Rank, string Method, string Address, string? ContentType, byte[]? Body, JsonNode? Json,
    string? Accept, JsonObject Operation)
{
    private const string Boundary = "between-the-files";

    /// <summary>Every example of every operation, in each format of request and answer.</summary>
    public static IEnumerable<ContractCase> Of(ContractDocument contract) =>
        contract.Operations.SelectMany(one => Of(contract, one.Path, one.Method, one.Operation));

    private static IEnumerable<ContractCase> Of(ContractDocument contract, string path, string method, JsonObject operation)
    {
        var id = operation["operationId"]!.GetValue<string>();
        var names = new List<string>();
        ContractCase One(string name, string? type, JsonNode? body, string? accept)
        {
            if (!names.Contains(name))
                names.Add(name);
            var (sentAs, bytes) = Sent(type, body);
            return new(id, name, names.IndexOf(name), method.ToUpperInvariant(), AddressOf(path, operation, id, name, accept), sentAs, bytes,
                type == "application/json" ? body : null, accept, operation);
        }

        if (operation["requestBody"]?["content"] is JsonObject bodies)
        {
            if (bodies.ContainsKey(Workbooks.Book.Type))
                yield return One("", Workbooks.Book.Type, null, null); // bytes, which the contract cannot show
            foreach (var (type, media) in bodies)
                foreach (var (name, body) in ContractDocument.ExamplesOf(media!))
                    yield return One(name, type, body, null);
            if (bodies["application/json"] is { } sent && IsDrawnToo(contract, operation))
                yield return One("", "application/json", ContractDocument.ExamplesOf(sent).Values.First(), "image/svg+xml");
            yield break;
        }

        var good = operation["responses"]!.AsObject().Where(response => response.Key[0] == '2')
            .Select(response => contract.Followed(response.Value!)).First();
        if (good["content"] is not JsonObject contents)
            yield return One("", null, null, null);
        else
            foreach (var (type, media) in contents)
                foreach (var name in ContractDocument.ExamplesOf(media!).Keys)
                    yield return One(name, null, null, type);
    }

    /// <summary>Whether a question that is sent is answered with a picture if Accept asks for one.</summary>
    private static bool IsDrawnToo(ContractDocument contract, JsonObject operation) =>
        operation["responses"]!["200"] is { } response && contract.Followed(response)["content"] is JsonObject answers
        && answers.ContainsKey("image/svg+xml") && answers.ContainsKey("application/json");

    private static (string? Type, byte[]? Bytes) Sent(string? type, JsonNode? body) => type switch
    {
        null => (null, null),
        Workbooks.Book.Type => (type, Workbooks.Book.Example),
        "application/json" or "application/merge-patch+json" => (type, Encoding.UTF8.GetBytes(body!.ToJsonString())),
        "multipart/form-data" => ($"{type}; boundary={Boundary}", Form(body!.AsObject())),
        _ => (type, Encoding.UTF8.GetBytes(body!.GetValue<string>())),
    };

    private static byte[] Form(JsonObject files)
    {
        using var form = new MultipartFormDataContent(Boundary);
        foreach (var (name, text) in files)
        {
            var file = new StringContent(text!.GetValue<string>());
            file.Headers.ContentDisposition = new ContentDispositionHeaderValue("form-data") { Name = name, FileName = name };
            form.Add(file);
        }

        using var stream = new MemoryStream();
        form.CopyTo(stream, null, CancellationToken.None);
        return stream.ToArray();
    }

    /// <summary>The path and the query with the example's values for each parameter; optional parameters without a value are left out.</summary>
    private static string AddressOf(string path, JsonObject operation, string id, string name, string? accept)
    {
        var query = new List<string>();
        foreach (var parameter in operation["parameters"]?.AsArray() ?? [])
        {
            var (called, place) = (parameter!["name"]!.GetValue<string>(), parameter["in"]!.GetValue<string>());
            // only one channel at a time can be drawn
            var isNeeded = parameter["required"]?.GetValue<bool>() == true || (id, called, accept) is ("getPriceList", "channel", "image/svg+xml");
            var examples = ContractDocument.ExamplesOf(parameter);
            var value = examples.GetValueOrDefault(name) ?? (isNeeded ? examples.Values.First() : null);
            if (examples.ContainsKey("") && !isNeeded)
                value = null; // an example that shows how it is written
            if (place == "path")
                path = path.Replace($"{{{called}}}", value!.ToString(), StringComparison.Ordinal);
            else if (place == "query" && value is not null)
                query.Add($"{called}={Uri.EscapeDataString(value.ToString())}");
        }

        return query.Count == 0 ? path : $"{path}?{string.Join('&', query)}";
    }
}
