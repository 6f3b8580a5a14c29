using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>The description of an address in the OpenAPI document, given where the address is mapped.</summary>
public sealed record Operation(string Id, string Tag, string Summary, string Description)
{
    /// <summary>The body of a good answer; none for 204.</summary>
    public Type? Answer { get; init; }

    /// <summary>The statuses of good answers, each with a few words.</summary>
    public IReadOnlyDictionary<int, string> Good { get; init; } = new Dictionary<int, string> { [200] = "The answer." };

    /// <summary>A request body that works; if there are several main cases, they have their own.</summary>
    public Example? RequestExample { get; init; }

    /// <summary>Bodies in other formats than one JSON object, each with an example that works.</summary>
    public IReadOnlyList<FormatExample> Bodies { get; init; } = [];

    /// <summary>The description of those bodies.</summary>
    public string BodyWords { get; init; } = "One line after another, each answered in its place.";

    /// <summary>Answers in other formats than JSON.</summary>
    public IReadOnlyList<FormatExample> OtherAnswers { get; init; } = [];

    /// <summary>The answer to it.</summary>
    public Example? AnswerExample { get; init; }

    /// <summary>Its main cases, if there are several or if parameters decide; they replace the examples above.</summary>
    public IReadOnlyList<MainCase> Cases { get; init; } = [];

    /// <summary>True if answers have an ETag.</summary>
    public bool HasRevision { get; init; }

    /// <summary>True if the ETag is for the whole answer instead of for a revision.</summary>
    public bool HasTag { get; init; }

    /// <summary>True if 201 has a Location with the address of the new resource.</summary>
    public bool HasLocation { get; init; }

    /// <summary>True if the answer is a page of documents.</summary>
    public bool IsPage { get; init; }

    /// <summary>True if a document in the answer may be its deletion.</summary>
    public bool TellsDeletions { get; init; }

    /// <summary>Another body of a good answer: what a key is told that may not read it, or the part of it that a parameter asks for.</summary>
    public Type? AnswerOtherwise { get; init; }

    /// <summary>Parameters that this address needs, though others of the same query do not.</summary>
    public IReadOnlyList<string> Needed { get; init; } = [];

    /// <summary>The key in the path of its example, if it is not the one of its neighbours.</summary>
    public string? KeyExample { get; init; }

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
        Good = new Dictionary<int, string> { [200] = format == Format.Svg ? "A picture." : "A page.", [304] = "The caller already has it." },
    };

    /// <summary>The picture of a question that is sent, at the address that ends in its format.</summary>
    /// <param name="request">A body that works.</param>
    public Operation AsDrawing(Example request) => As(Format.Svg) with
    {
        RequestExample = request,
        HasTag = false,
        Good = new Dictionary<int, string> { [200] = "A picture." },
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
