using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Workbooks;

/// <summary>The documents of one kind in a workbook.</summary>
internal interface IDocumentDrafts
{
    /// <summary>Everything that is wrong before anything is stored.</summary>
    IEnumerable<InputError> Faults { get; }

    /// <summary>How many differ from what is stored.</summary>
    int Changed { get; }

    /// <summary>Stores those that differ; what prevents it, at its cells. What others still use is asked for when all are stored.</summary>
    ValueTask<List<(RequestFault Fault, InputError Placed)>> Save(Writing writing, ProfileAccess access);

    /// <summary>What took something away that other documents still use.</summary>
    ValueTask<List<(RequestFault Fault, InputError Placed)>> AgainstNarrowing(Writing writing);

    /// <summary>What was done to each.</summary>
    IEnumerable<WorkbookItemAnswer> Items { get; }
}
