using PriceFloor.Api.Documents.Batches;

namespace PriceFloor.Api.Workbooks;

/// <summary>All documents of a workbook were stored together.</summary>
/// <param name="Items">One for each document that the workbook names.</param>
/// <param name="Summary">How many of each.</param>
public sealed record WorkbookWriteAnswer(IReadOnlyList<WorkbookItemAnswer> Items, BatchCounts Summary)
{
    internal static WorkbookWriteAnswer Of(IReadOnlyList<WorkbookItemAnswer> items) => new(items, new BatchCounts(
        items.Count(item => item.Result == BatchResult.Created), items.Count(item => item.Result == BatchResult.Changed),
        items.Count(item => item.Result == BatchResult.Unchanged)));
}

/// <summary>The result for one document of a workbook.</summary>
/// <param name="Kind" example="profile">What kind of document it is.</param>
/// <param name="Key" example="main">Its key; of a listed price, the design and the channel.</param>
/// <param name="Result">Created, changed, or unchanged.</param>
/// <param name="Revision" example="2">The revision that is now current.</param>
public sealed record WorkbookItemAnswer(string Kind, string Key, BatchResult Result, long Revision);
