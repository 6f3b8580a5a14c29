using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.Demands;

/// <summary>How often a design is ordered, and what that suggests to ask.</summary>
public static class DemandRoutes
{
    public static async Task<IResult> Get(PathKey path, FromQuery<DemandQuery> query, CatalogueReader reader, Store store, LogWatch watch,
        LoggedShelves shelves, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        var catalogue = await reader.Whole(asked.AsOf);
        if (catalogue.Design(path.Text) is not { } design)
            return Problem.Of(ProblemTypes.NotFound, $"There is no design \"{path.Text}\" (or there was none at that time).");
        if (asked.Channel is { } channel && catalogue.Channel(channel) is null)
            return Problem.UnknownReference(
                [Place.Query.Error("channel", InputCodes.UnknownChannel, $"There is no channel \"{channel}\"; case counts.")]);
        var choices = asked.Asked.Choices(catalogue.Today);
        return await LoggedEvidenceRoutes.Answered(context, catalogue, asked.AsOf, () => store.ReadAsync(async snapshot => await LoggedDemand.OfAsync(
            await LoggedQuestion.OfAsync(snapshot, watch, catalogue, choices, (asked.AsOf, Caller.Of(context).Access)), shelves, design, asked)));
    }
}
