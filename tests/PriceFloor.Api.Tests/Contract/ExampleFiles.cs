using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Tests.Conventions;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>The files of the examples in the repository, and a folder with their proposed new contents.</summary>
public static class ExampleFiles
{
    /// <summary>What to do when an example no longer matches the service's answer.</summary>
    public const string HowToRewrite =
        "The service's answers are in artifacts/examples. Look at them, then copy them over: cp -r artifacts/examples/. .";

    /// <summary>The operations of the contract by their ids.</summary>
    public static IReadOnlyDictionary<string, Operation> Operations(Studio studio) =>
        studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.Select(endpoint => endpoint.Metadata.GetMetadata<Operation>())
            .OfType<Operation>().ToDictionary(operation => operation.Id);

    /// <summary>Every example that an operation names.</summary>
    public static IEnumerable<Example> Of(Operation operation) =>
        new[] { operation.RequestExample, operation.AnswerExample }
            .Concat(operation.Cases.SelectMany(one => new[] { one.Request, one.Answer }.Concat(one.Parts.Values)))
            .Concat(operation.Bodies.Concat(operation.OtherAnswers).Select(one => one.Example))
            .OfType<Example>();

    /// <summary>The example of an answer, by its format and by the name of its case.</summary>
    public static Example OfAnswer(Operation operation, string mediaType, string name) =>
        operation.OtherAnswers.FirstOrDefault(other => other.Format.MediaType == mediaType)?.Example
            ?? operation.Cases.FirstOrDefault(one => one.Name == name)?.Answer
            ?? operation.AnswerExample!;

    /// <summary>Where the file is, from the root of the repository.</summary>
    public static string PathOf(Example example)
    {
        var folder = example.Feature.Namespace!["PriceFloor.Api.".Length..].Replace('.', '/');
        return $"src/PriceFloor.Api/{folder}/Examples/{example.File}";
    }

    /// <summary>Writes the proposed content of an example. A page is written by the example of the document on it.</summary>
    public static void Propose(Example example, string text)
    {
        if (example.IsOnAPage)
            return;
        var path = Proposed(example);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, example.File.EndsWith(".json", StringComparison.Ordinal) ? ExampleText.Readable(text) : text);
    }

    /// <summary>Writes the proposed content of a page that has copies of examples.</summary>
    public static void ProposePage(string path, string text)
    {
        var proposed = Repository.File($"artifacts/examples/{path}");
        Directory.CreateDirectory(Path.GetDirectoryName(proposed)!);
        File.WriteAllText(proposed, text);
    }

    /// <summary>Deletes an earlier proposal if the example is right.</summary>
    public static void Keep(Example example)
    {
        if (File.Exists(Proposed(example)))
            File.Delete(Proposed(example));
    }

    private static string Proposed(Example example) => Repository.File($"artifacts/examples/{PathOf(example)}");
}
