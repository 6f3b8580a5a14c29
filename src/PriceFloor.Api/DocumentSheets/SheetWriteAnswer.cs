using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>All documents of a sheet were stored together.</summary>
public sealed record SheetWriteAnswer
{
    /// <summary>One for each document that the sheet names, in the order in which it names them.</summary>
    public required IReadOnlyList<SheetWriteItemAnswer> Items { get; init; }

    /// <summary>How many of each.</summary>
    public required BatchCounts Summary { get; init; }

    internal static SheetWriteAnswer Of(IReadOnlyList<string> keys, IReadOnlyList<Saved> saved)
    {
        List<SheetWriteItemAnswer> items =
            [.. keys.Zip(saved, (key, one) => new SheetWriteItemAnswer(key, AllOrNothing.ResultOf(one), one.Revision.Number))];
        return new SheetWriteAnswer { Items = items, Summary = AllOrNothing.CountsOf(saved) };
    }
}

/// <summary>The result for one document of a sheet.</summary>
/// <param name="Key">Key of the document.</param>
/// <param name="Result">Created, changed, or unchanged.</param>
/// <param name="Revision">The revision that is now current.</param>
public sealed record SheetWriteItemAnswer(string Key, BatchResult Result, long Revision);
