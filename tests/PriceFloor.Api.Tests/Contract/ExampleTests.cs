using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Tests.ManyStudios;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>
/// Every operation is called as each of its examples says, on a store that is filled by the examples: the answer is the example of the same name,
/// fits its schema and has its headers.
/// </summary>
public sealed class ExampleTests
{
    /// <summary>Requests that fill the store come first, requests that change it last; the others in between, in the order of the contract.</summary>
    private static readonly string[] s_first = ["putProfile", "putDesign", "putChannel", "putListedPrice", "putReadingRules",
        "putStatementLayout", "putQuote", "putScenario", "putPlan"];

    /// <summary>Further cases come after all first ones have been sent to a small store: those that store more, and those that need it.</summary>
    private static readonly string[] s_further = ["putProfile", "getFloorPrice", "computeFloorPrice", "putDesign", "putChannel"];

    private static readonly string[] s_quotes = ["issueQuote", "getQuoteFigures", "getQuotePage", "putQuoteOutcome", "getQuoteOutcome",
        "listQuoteOutcomeRevisions", "getQuoteOutcomeRevision", "getQuoteLoad", "putQuoteActual", "getQuoteActual", "listQuoteActualRevisions",
        "getQuoteActualRevision", "deleteQuoteActual", "reviseQuote", "patchQuote", "deleteQuoteOutcome", "deleteQuote"];

    private static readonly string[] s_last = ["getDesignEvidence", "getDesignLearningSvg", "getDesignDemand", "getChannelEvidence",
        "getProfileEvidence", "getShelf", "getShelfSvg", "getShelfHtml", "getStock",
        "withdrawMovement", "withdrawBenchEntry",
        "putListedPrices", "putDesigns", "putSheet", "createKey", "getKey", "listKeys", "rotateKey",
        "listAudit", "deleteKey", "createBackup", "patchProfile", "patchDesign", "patchChannel", "patchListedPrice", "patchReadingRules",
        "patchPlan", "patchScenario", "patchStatementLayout",
        "deletePlan", "deleteScenario", "deleteStatementLayout", "deleteReadingRules", "deleteListedPrice", "deleteChannel", "deleteDesign",
        "deleteProfile", "postStudio", "putHostedStudio",
        "getHostedStudio", "listHostedStudios", "importHostedStudio", "exportHostedStudio", "createHostedStudioKey", "deleteHostedStudio"];

    /// <summary>
    /// The values that differ from run to run: secrets, ids of requests, the microsecond of a write; and listKeys also shows the key that the tests
    /// use.
    /// </summary>
    private static readonly (Regex Pattern, string Instead)[] s_volatile =
    [
        (new("\"key\":\"pf_[^\"]*\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"key\":\"pf_...\""),
        (new("\"requestId\":\"[0-9a-f]{32}\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"requestId\":\"...\""),
        (new("2027-01-0[23]T09:00:0[01](?:\\.[0-9]{6})?Z", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)), "2027-01-02T09:00:00.000000Z"),
        (new("\"next\":\"p[4-9]\\.[0-9a-f]{12}\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"next\":\"p4.(life)\""),
        (new("\"next\":\"[0-9]{19}\\.[0-9]+\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"next\":\"(older)\""),
        (new("\"bytes\":[0-9]+,\"sha256\":\"[0-9a-f]{64}\",\"schema\":[0-9]+", RegexOptions.None, TimeSpan.FromSeconds(1)),
            "\"bytes\":0,\"sha256\":\"...\",\"schema\":0"),
        (new("\"commit\":\"[0-9a-f]{40}\",\"runtime\":\"[.]NET 10[^\"]*\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"runtime\":\"...\""),
        (new("\"name\":\"[0-9a-f]{12}\",\"numbersAbove\"", RegexOptions.None, TimeSpan.FromSeconds(1)), "\"name\":\"...\",\"numbersAbove\""),
        (new("\\{\"end\":\\{\"lines\":3,\"sha256\":\"[0-9a-f]{64}\"\\}\\}", RegexOptions.None, TimeSpan.FromSeconds(1)), "{\"end\":{}}"),
        (new("\\{\"name\":\"first-admin-key\"[^}]*\\},?", RegexOptions.None, TimeSpan.FromSeconds(1)), ""),
    ];

    [Fact]
    public async Task Every_example_of_a_request_is_answered_by_the_example_of_the_same_name()
    {
        await using var studio = new Studio();
        await using var host = HostedService.Start();
        var contract = await ContractDocument.Of(studio);
        var schemas = new ContractSchemas(contract);
        var operations = ExampleFiles.Operations(studio);
        var (faults, met) = (new List<string>(), new HashSet<string>());
        var cases = ContractCase.Of(contract).OrderBy(Order).ToList();
        foreach (var one in cases)
        {
            if (one.Id == "deleteProfile")
                await DeleteEvery(studio, "designs"); // putDesigns stored some that use it
            if (one.Id == "deleteListedPrice")
                await DeleteEvery(studio, "quotes", "?state=draft"); // they hold what is deleted next
            if (one.Json is not null)
                faults.AddRange(schemas.Faults(one.Operation["requestBody"]!["content"]!["application/json"]!["schema"]!, one.Json.ToJsonString())
                    .Select(fault => $"{one.Id} {one.Name}: its request breaks its schema: {fault}"));
            var maySayCreated = one.Method == "PUT" && one.Operation["responses"]!["201"] is not null;
            foreach (var _ in maySayCreated ? [1, 2] : new[] { 1 }) // 201, then 200 for the same content
            {
                // the bench entries of the examples are of days to come
                var address = one.Id == "getDesignLearningSvg" ? one.Address + "?to=2027-03-31" : one.Address;
                var service = one.Address.StartsWith("/v1/studios", StringComparison.Ordinal) ? host : studio;
                var answer = await service.SendBytes(one.Method, address, one.Body, one.ContentType, null,
                    one.Accept is null ? [] : [("Accept", one.Accept)]);
                faults.AddRange(FaultsOf(contract, schemas, operations[one.Id], one, answer, met)
                    .Select(fault => $"{one.Id} {one.Name} {one.Address}: {fault}"));
            }
        }

        Assert.True(faults.Count == 0, $"{string.Join('\n', faults)}\n{ExampleFiles.HowToRewrite}");
        Assert.Empty(ExamplesOfAnswers(contract).Except(met));
        Assert.InRange(cases.Count, 100, 1000);
    }

    [Fact]
    public async Task Every_example_of_a_problem_fits_the_schema_of_problems()
    {
        await using var studio = new Studio();
        var contract = await ContractDocument.Of(studio);
        var schemas = new ContractSchemas(contract);
        var schema = JsonNode.Parse("""{"$ref":"#/components/schemas/ProblemBody"}""")!;
        var examples = contract.Root["components"]!["examples"]!.AsObject()
            .Where(example => ProblemTypes.All.Any(type => type.Slug == example.Key)).ToList();
        Assert.True(examples.Count > 12);
        foreach (var (slug, example) in examples)
            Assert.Empty(schemas.Faults(schema, example!["value"]!.ToJsonString()).Select(fault => $"{slug}: {fault}"));
        Assert.NotEmpty(schemas.Faults(schema, """{"type":"/problems/busy"}""")); // the check itself can fail
    }

    private static async Task DeleteEvery(Studio studio, string kind, string query = "")
    {
        foreach (var document in (await studio.Get($"/v1/{kind}{query}")).Json.GetProperty("items").EnumerateArray())
            Assert.Equal(204, (await studio.Delete($"/v1/{kind}/{document.GetProperty("key").GetString()}")).Status);
    }

    private static IEnumerable<string> FaultsOf(ContractDocument contract, ContractSchemas schemas, Operation operation,
        ContractCase one, Answer answer, HashSet<string> met)
    {
        if (one.Operation["responses"]![answer.Status.ToString(CultureInfo.InvariantCulture)] is not { } told)
        {
            yield return $"{answer.Status} {answer.Text}";
            yield break;
        }

        var response = contract.Followed(told);
        foreach (var (name, _) in response["headers"]!.AsObject())
            if (answer[name] is null && name != "Link") // a page that is the last has no link
                yield return $"its contract has a header {name} that is not there";
        if (response["content"] is null)
            yield break;
        if (response["content"]![answer.ContentType!] is not { } media
            || ContractDocument.ExamplesOf(media).GetValueOrDefault(one.Name) is not { } expected)
        {
            yield return $"no example for this answer: {answer.Status} {answer.ContentType} {answer.Text}";
            yield break;
        }

        met.Add(PlaceOf(one.Id, answer.Status.ToString(CultureInfo.InvariantCulture), answer.ContentType!, one.Name));
        var isJson = answer.ContentType!.EndsWith("json", StringComparison.Ordinal)
            && !answer.ContentType.EndsWith("ndjson", StringComparison.Ordinal);
        foreach (var fault in isJson ? schemas.Faults(media["schema"]!, answer.Text) : [])
            yield return $"its answer breaks its schema: {fault}";
        var (shown, given) = isJson
            ? (ExampleText.OnOneLine(expected.ToJsonString()), ExampleText.OnOneLine(answer.Text))
            : (expected.GetValue<string>(), answer.Text);
        var example = ExampleFiles.OfAnswer(operation, answer.ContentType, one.Name);
        var isDrawn = answer.ContentType is "text/html" or "image/svg+xml";
        if (isDrawn ? IsShortened(Settled(shown), Settled(given)) : Settled(shown) == Settled(given))
        {
            ExampleFiles.Keep(example);
            yield break;
        }

        if (!isDrawn) // a page or a picture is shortened by hand
            ExampleFiles.Propose(example, WithVolatileOf(shown, given));
        yield return $"another answer than {ExampleFiles.PathOf(example)}\n  {Settled(shown)}\n  {Settled(given)}";
    }

    /// <summary>
    /// A page or a picture is shown with "..." for omitted parts; the rest must be in it, in order, from its beginning to its end.
    /// </summary>
    private static bool IsShortened(string shown, string whole)
    {
        var parts = shown.Split("...");
        if (!whole.StartsWith(parts[0], StringComparison.Ordinal) || !whole.TrimEnd().EndsWith(parts[^1], StringComparison.Ordinal))
            return false;
        var at = 0;
        foreach (var part in parts)
            if ((at = whole.IndexOf(part, at, StringComparison.Ordinal)) < 0)
                return false;
        return true;
    }

    /// <summary>The place of every example of a good answer.</summary>
    private static IEnumerable<string> ExamplesOfAnswers(ContractDocument contract) =>
        from one in contract.Operations
        from response in one.Operation["responses"]!.AsObject()
        where response.Key[0] == '2'
        from content in contract.Followed(response.Value!)["content"]?.AsObject() ?? []
        from name in ContractDocument.ExamplesOf(content.Value!).Keys
        select PlaceOf(one.Operation["operationId"]!.GetValue<string>(), response.Key, content.Key, name);

    private static string PlaceOf(string id, string status, string type, string name) => $"{id} {status} {type} {name}";

    private static string Settled(string json) => s_volatile.Aggregate(json, (text, one) => one.Pattern.Replace(text, one.Instead));

    /// <summary>An answer with what differs from run to run as its example has it.</summary>
    private static string WithVolatileOf(string example, string answer) => s_volatile.Aggregate(answer, (text, one) =>
    {
        var shown = new Queue<string>(one.Pattern.Matches(example).Select(match => match.Value));
        return one.Pattern.Replace(text, _ => shown.TryDequeue(out var same) ? same : one.Instead);
    });

    private static int Order(ContractCase one) =>
        Array.IndexOf(s_last, one.Id) is var last and >= 0 ? 10_000 + last
        : Array.IndexOf(s_quotes, one.Id) is var step and >= 0 ? 9_000 + step
        : one.Rank == 0 ? (Array.IndexOf(s_first, one.Id) is var first and >= 0 ? first : 500)
        : Array.IndexOf(s_further, one.Id) is var further and >= 0 ? 1000 + further : 1500;
}
