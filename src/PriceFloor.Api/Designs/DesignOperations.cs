using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Patches;

namespace PriceFloor.Api.Designs;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class DesignOperations
{
    private static readonly ExampleFolder s_files = new(typeof(DesignOperations));

    private static readonly Noun s_noun = new("design", "designs", "Design", "Designs", typeof(Design),
        s_files["design.pieces-a-day.request.json"], s_files["design.pieces-a-day.answer.json"])
    {
        Cases = DesignCases.Designs,
    };

    private static readonly Operation ListOfDesigns = DocumentOperations.List(s_noun) with
    {
        Description = "The designs in order of key, a page at a time; all of them as NDJSON or CSV, "
            + "for an export that can come back through POST /v1/designs/batch. Scope: read.",
        OtherAnswers = [new(Format.Ndjson, null, s_files["listDesigns.answer.ndjson"]), new(Format.Csv, null, s_files["listDesigns.answer.csv"])],
    };

    private static readonly Operation DesignBatch = new("putDesigns", "Designs", "Store many designs, all or nothing",
        "A JSON array, NDJSON or CSV of designs, each with its key as GET gives it. Either all are stored, "
        + "or none is and every fault is reported with its line. A sheet has the columns of GET /v1/designs as text/csv; "
        + "a column that the sheet does not have stays as it is stored. The answer says which were created, changed or unchanged. Scope: write.")
    {
        Answer = typeof(WriteBatchAnswer),
        Cases = DesignCases.DesignBatches,
        Bodies = [new(Format.Json, typeof(Design[])), new(Format.Ndjson, null), new(Format.Csv, null)],
        Problems = [ProblemTypes.InUse, ProblemTypes.UnknownReference],
    };

    public static void MapDesigns(this RouteGroupBuilder v1, BatchSlots slots)
    {
        v1.MapGet("/designs", DesignBatchRoutes.List).Needs(Scope.Read).Offer(Format.Json, Format.Ndjson, Format.Csv).Tell(ListOfDesigns);
        v1.MapGet("/designs/{sku}", DocumentRoutes.Get<Design>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_noun));
        v1.MapPut("/designs/{sku}", DocumentRoutes.Put<Design>).Needs(Scope.Write).Tell(DocumentOperations.Put(s_noun));
        v1.MapPatch("/designs/{sku}", PatchRoutes.Patch<Design>).Needs(Scope.Write)
            .Tell(PatchOperations.Patch(s_noun, s_files["patchDesign.request.json"], s_files["patchDesign.answer.json"]));
        v1.MapDelete("/designs/{sku}", DocumentRoutes.Delete<Design>).Needs(Scope.Write).Tell(DocumentOperations.Delete(s_noun));
        v1.MapGet("/designs/{sku}/revisions", DocumentRoutes.Revisions<Design>).Needs(Scope.Read).Tell(DocumentOperations.Revisions(s_noun));
        v1.MapGet("/designs/{sku}/revisions/{number}", DocumentRoutes.Revision<Design>).Needs(Scope.Read).Tell(DocumentOperations.Revision(s_noun));
        v1.MapPost("/designs/batch", DesignBatchRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Write).Tell(DesignBatch);
    }
}
