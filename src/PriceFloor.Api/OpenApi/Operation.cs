using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>What the OpenAPI document says of an address, said where the address is mapped.</summary>
public sealed record Operation(string Id, string Tag, string Summary, string Description)
{
    /// <summary>What a good answer's body is; none for 204.</summary>
    public Type? Answer { get; init; }

    /// <summary>The statuses of good answers, each with a few words.</summary>
    public IReadOnlyDictionary<int, string> Good { get; init; } = new Dictionary<int, string> { [200] = "The answer." };

    /// <summary>A request body that works; where there are several main cases, they have them.</summary>
    public Example? RequestExample { get; init; }

    /// <summary>Bodies in other formats than one JSON object, each with one that works.</summary>
    public IReadOnlyList<FormatExample> Bodies { get; init; } = [];

    /// <summary>What those bodies are.</summary>
    public string BodyWords { get; init; } = "One line after another, each answered in its place.";

    /// <summary>Answers in other formats than JSON.</summary>
    public IReadOnlyList<FormatExample> OtherAnswers { get; init; } = [];

    /// <summary>What is answered to it.</summary>
    public Example? AnswerExample { get; init; }

    /// <summary>Its main cases, where there is more than one or where parameters decide; then they stand instead of the examples above.</summary>
    public IReadOnlyList<MainCase> Cases { get; init; } = [];

    /// <summary>True where answers carry an ETag.</summary>
    public bool HasRevision { get; init; }

    /// <summary>True where the ETag stands for the whole answer instead of for a revision.</summary>
    public bool HasTag { get; init; }

    /// <summary>True where 201 says with Location where the new thing is.</summary>
    public bool HasLocation { get; init; }

    /// <summary>True where the answer is a page of documents.</summary>
    public bool IsPage { get; init; }

    /// <summary>True where a document in the answer may be its deletion.</summary>
    public bool TellsDeletions { get; init; }

    /// <summary>Parameters that this address needs, though others of the same query do not.</summary>
    public IReadOnlyList<string> Needed { get; init; } = [];

    /// <summary>The problems that the call can answer with, besides those that every call can.</summary>
    public IReadOnlyList<ProblemType> Problems { get; init; } = [];

    /// <summary>The same at the address that ends in a format.</summary>
    public Operation As(Format format) => this with
    {
        Id = Id + (format == Format.Svg ? "Svg" : "Html"),
        Answer = null,
        AnswerExample = null,
        Cases = [],
        OtherAnswers = [.. OtherAnswers.Where(other => other.Format == format)],
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = format == Format.Svg ? "A picture." : "A page.", [304] = "The caller has it already." },
    };
}

/// <summary>A format with its schema (null: text) and an example, unless the operation's cases have them.</summary>
public sealed record FormatExample(Format Format, Type? Schema, Example? Example = null)
{
    /// <summary>How every picture begins.</summary>
    public static readonly FormatExample Drawing = new(Format.Svg, null, new ExampleFolder(typeof(FormatExample))["drawing.answer.svg"]);
}

public static class OperationConventions
{
    public static RouteHandlerBuilder Tell(this RouteHandlerBuilder builder, Operation operation) =>
        builder.WithName(operation.Id).WithTags(operation.Tag).WithSummary(operation.Summary).WithDescription(operation.Description)
            .WithMetadata(operation);
}
