using PriceFloor.Api.Http;

namespace PriceFloor.Api.Documents.Batches;

/// <summary>One document of a batch, or why it cannot be read, and its place in the body.</summary>
/// <param name="Key">The store's key of the document; null if it cannot be read.</param>
/// <param name="Document">The document; null with faults.</param>
/// <param name="Faults">Everything that is wrong with it, placed in the body.</param>
/// <param name="Pointer">Its place in a JSON array, such as <c>#/3</c>; <c>#</c> for a line of its own; null for a row of a sheet.</param>
/// <param name="Line">Line in the body, from 1.</param>
/// <param name="Column">Column in that line, from 1.</param>
public sealed record PlacedLine<T>(string? Key, T? Document, IReadOnlyList<InputError> Faults, string? Pointer, long Line, long Column)
    where T : class
{
    /// <summary>It is not JSON, or not a row of these columns: alone it would be a 400.</summary>
    public bool IsUnreadable { get; init; }

    public static PlacedLine<T> Faulty(IReadOnlyList<InputError> faults, string? pointer, long line, long column) =>
        new(null, null, faults, pointer, line, column);

    /// <summary>A fault of the document as a fault of the body.</summary>
    public InputError Placed(InputError error) => error with
    {
        Pointer = Pointer is null ? null
            : Pointer + (error.Pointer is { Length: > 1 } pointer ? pointer[1..] : error.Parameter is null ? "" : "/" + error.Parameter),
        Parameter = Pointer is null ? error.Parameter ?? error.Pointer?.Split('/')[^1] : null,
        Line = Line,
        Column = Column,
    };
}

/// <summary>The result for one document of a batch.</summary>
public sealed record BatchItemAnswer
{
    /// <summary>Key of the design.</summary>
    public required string Sku { get; init; }

    /// <summary>For a listed price: the channel.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    /// <summary>For the listed price of one of the design's other names: the name.</summary>
    /// <example>RB-014 blue</example>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public string? Alias { get; init; }

    /// <summary>Created, changed, or unchanged.</summary>
    public required BatchResult Result { get; init; }

    /// <summary>The revision that is now current.</summary>
    public required long Revision { get; init; }
}

/// <summary>What a batch did to a document.</summary>
public enum BatchResult { Created, Changed, Unchanged }

/// <summary>How many documents were created, changed or unchanged.</summary>
/// <param name="Created">Documents that did not exist before.</param>
/// <param name="Changed">Documents that got another revision.</param>
/// <param name="Unchanged">Documents that were already the same.</param>
public sealed record BatchCounts(int Created, int Changed, int Unchanged);

/// <summary>All documents of a batch were stored together.</summary>
public sealed record WriteBatchAnswer
{
    /// <summary>One for each line, in order.</summary>
    public required IReadOnlyList<BatchItemAnswer> Items { get; init; }

    /// <summary>How many of each.</summary>
    public required BatchCounts Summary { get; init; }
}
