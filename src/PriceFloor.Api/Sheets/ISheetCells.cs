namespace PriceFloor.Api.Sheets;

/// <summary>Writes the cells of a row one after the other, in a sheet of text or of a workbook.</summary>
public interface ISheetCells
{
    /// <summary>A text, so written that no spreadsheet runs it as a formula.</summary>
    void Text(string? text);

    void Number(decimal? number);

    void Day(DateOnly day);

    void Flag(bool flag);

    void Empty();
}
