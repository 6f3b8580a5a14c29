using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.ListedPrices;

public static class ListedPriceRoutes
{
    /// <summary>The prices listed for one design, by channel.</summary>
    public static async Task<IResult> List(PathKey key, FromQuery<ListQuery> query, Store store, CatalogueReader reader,
        DocumentKind<ListedPrice> kind, HttpRequest request) =>
            await reader.Read(query.Value.AsOf, catalogue => catalogue.Design(key.Text)) is null
                ? Problem.Of(ProblemTypes.NotFound, $"There is no design \"{key.Text}\"{(query.Value.AsOf is null ? "" : " at that time")}.")
                : await DocumentRoutes.ListBelow(ListedPriceKey.Beginning(key.Text), query, store, kind, request);
}
