namespace PriceFloor.Api.DocumentSheets;

/// <summary>The sheets of stored documents.</summary>
/// <param name="Items">All of them.</param>
public sealed record SheetListAnswer(IReadOnlyList<SheetInListAnswer> Items);

/// <summary>One sheet.</summary>
/// <param name="Name" example="stock">The last part of its address, /v1/sheets/{sheet}.</param>
/// <param name="About" example="stock materials">What its rows are.</param>
/// <param name="Columns" example="[&quot;profile&quot;,&quot;material&quot;,&quot;unit&quot;,&quot;price&quot;]">
/// Its columns; the first has the key of the document that a row belongs to.
/// </param>
public sealed record SheetInListAnswer(string Name, string About, IReadOnlyList<string> Columns);
