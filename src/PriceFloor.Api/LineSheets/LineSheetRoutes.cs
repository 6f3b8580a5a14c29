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
        var (asked, format, mayRead) = (query.Value, Offers.Of(context).Wanted(context.Request)!, Caller.Of(context).May(Scope.Read));
        var catalogue = await reader.Whole(asked.AsOf);
        if (UnknownNames.Of(catalogue, asked.Channel, asked.Profile, mayRead) is { Count: > 0 } unknown)
            return Problem.UnknownReference(unknown);
        var body = await catalogue.Kept((asked, format, mayRead), async () =>
        {
            var channel = catalogue.Channel(asked.Channel)!;
            var sheet = LineSheetAnswer.Of(catalogue, channel, asked.Profile);
            return TaggedBody.Of(
                format == Format.Csv ? await LineSheetTable.Of(sheet, asked.Dialect, context.RequestAborted)
                : format == Format.Html ? LineSheetPage.Of(sheet, channel.Document.Name ?? channel.Key)
                : JsonSerializer.SerializeToUtf8Bytes(
                    mayRead ? sheet with { Warnings = WarningAnswer.Of(LineSheetWarnings.In(catalogue, channel, sheet.Items)) } : sheet,
                    WireJson.Options));
        });
        return body.Answer(context, format);
    }
}
