using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.StockLists;

/// <summary>Pieces on hand that are slow to sell.</summary>
public static class StockRoutes
{
    public static async Task<IResult> Get(FromQuery<StockQuery> query, CatalogueReader reader, Store store, LogWatch watch, LoggedShelves shelves,
        HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        var catalogue = await reader.Whole(asked.AsOf);
        if (asked.Sku is { } sku && catalogue.Design(sku) is null)
            return Problem.UnknownReference([Place.Query.Error("sku", InputCodes.UnknownDesign, $"There is no design \"{sku}\"; case counts.")]);
        if (asked.Profile is { } key && catalogue.Profile(key) is null)
            return Problem.UnknownReference(
                [Place.Query.Error("profile", InputCodes.UnknownProfile, $"There is no profile \"{key}\"; case counts.")]);
        var choices = asked.Asked.Choices(catalogue.Today);
        return await LoggedEvidenceRoutes.Answered(context, catalogue, asked.AsOf, () => store.ReadAsync(async snapshot =>
        {
            var question = await LoggedQuestion.OfAsync(snapshot, watch, catalogue, choices, (asked.AsOf, Caller.Of(context).Access));
            return (Outcome<StockAnswer>)await LoggedStock.OfAsync(question, shelves, Profiles(catalogue, asked), asked);
        }));
    }

    /// <summary>The profiles that are asked about, in order of key.</summary>
    private static List<Stored<CostProfile>> Profiles(Catalogue catalogue, StockQuery asked)
    {
        var wanted = asked.Profile ?? (asked.Sku is { } sku ? catalogue.Design(sku)!.Sound?.Profile : null);
        return
        [
            .. catalogue.Designs.Select(design => design.Sound?.Profile).OfType<string>().Distinct().Order(StringComparer.Ordinal)
                .Where(key => wanted is null || key == wanted).Select(catalogue.Profile).OfType<Stored<CostProfile>>()
                .Where(profile => profile.Sound is not null),
        ];
    }
}
