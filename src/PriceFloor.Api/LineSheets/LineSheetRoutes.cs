using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceLists;

namespace PriceFloor.Api.LineSheets;

public static class LineSheetRoutes
{
    public static async Task<IResult> Get(FromQuery<LineSheetQuery> query, CatalogueReader reader, HttpContext context)
    {
        var (asked, format) = (query.Value, Offers.Of(context).Wanted(context.Request)!);
        var catalogue = await reader.Whole(asked.AsOf);
        if (UnknownNames.Of(catalogue, asked.Channel, asked.Profile, Caller.Of(context).May(Scope.Read)) is { Count: > 0 } unknown)
            return Problem.UnknownReference(unknown);
        var body = await catalogue.Kept((asked, format), async () =>
        {
            var channel = catalogue.Channel(asked.Channel)!;
            var sheet = LineSheetAnswer.Of(catalogue, channel, asked.Profile);
            return TaggedBody.Of(
                format == Format.Csv ? await LineSheetTable.Of(sheet, asked.Dialect, context.RequestAborted)
                : format == Format.Html ? LineSheetPage.Of(sheet, channel.Document.Name ?? channel.Key)
                : JsonSerializer.SerializeToUtf8Bytes(sheet, WireJson.Options));
        });
        return body.Answer(context, format);
    }
}
