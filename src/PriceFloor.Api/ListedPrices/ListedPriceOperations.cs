using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Patches;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.ListedPrices;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class ListedPriceOperations
{
    private static readonly ExampleFolder s_files = new(typeof(ListedPriceOperations));

    private static readonly Noun s_noun = new("listed price", "listed prices of a design", "ListedPrice", "Listed prices", typeof(ListedPrice),
        s_files["listedPrice.request.json"], s_files["listedPrice.answer.json"]);

    private static readonly Operation ListingBatch = new("putListedPrices", "Listed prices", "Store what a shop lists today, all or nothing",
        "The same lines and sheets that a batch of price checks takes, stored as listed prices. Either all are stored, "
        + "or none is and every fault is reported with its line, in order of line. Aliases lead to their designs; where several names of a design "
        + "are listed on a channel, each name has a price of its own. Scope: prices.")
    {
        Answer = typeof(WriteBatchAnswer),
        Cases = ListedPriceCases.ListingBatches,
        Bodies = [new(Format.Json, typeof(PriceCheckRequest[])), new(Format.Ndjson, null), new(Format.Csv, null)],
        Problems = [ProblemTypes.CurrencyMismatch],
    };

    public static void MapListedPrices(this RouteGroupBuilder v1, BatchSlots slots)
    {
        var named = new ListedNames();
        v1.MapGet("/designs/{sku}/prices", ListedPriceRoutes.List).Needs(Scope.Read).Tell(DocumentOperations.List(s_noun));
        v1.MapGet("/designs/{sku}/prices/{channel}", DocumentRoutes.Get<ListedPrice>).AddEndpointFilter(named).Needs(Scope.Read)
            .Tell(DocumentOperations.Get(s_noun));
        v1.MapPut("/designs/{sku}/prices/{channel}", DocumentRoutes.Put<ListedPrice>).AddEndpointFilter(named).Needs(Scope.Prices)
            .Tell(DocumentOperations.Put(s_noun));
        v1.MapPatch("/designs/{sku}/prices/{channel}", PatchRoutes.Patch<ListedPrice>).AddEndpointFilter(named).Needs(Scope.Prices)
            .Tell(PatchOperations.Patch(s_noun, s_files["patchListedPrice.request.json"], s_files["patchListedPrice.answer.json"]));
        v1.MapDelete("/designs/{sku}/prices/{channel}", DocumentRoutes.Delete<ListedPrice>).AddEndpointFilter(named).Needs(Scope.Prices)
            .Tell(DocumentOperations.Delete(s_noun));
        v1.MapGet("/designs/{sku}/prices/{channel}/revisions", DocumentRoutes.Revisions<ListedPrice>).AddEndpointFilter(named).Needs(Scope.Read)
            .Tell(DocumentOperations.Revisions(s_noun));
        v1.MapGet("/designs/{sku}/prices/{channel}/revisions/{number}", DocumentRoutes.Revision<ListedPrice>).AddEndpointFilter(named)
            .Needs(Scope.Read)
            .Tell(DocumentOperations.Revision(s_noun));
        v1.MapPost("/listed-prices/batch", ListingBatchRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Prices).Tell(ListingBatch);
    }
}
