
namespace PriceFloor.Api.Workbooks.Files;

/// <summary>Why a file is no workbook that can be read. It never leaves this folder.</summary>
internal sealed class WorkbookException(Code? code, string detail) : Exception(detail)
{
    /// <summary>Null if the workbook is too large.</summary>
    public Code? Code { get; } = code;
}
