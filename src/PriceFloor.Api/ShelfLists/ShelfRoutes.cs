using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Evidence;
using PriceFloor.Storage;

namespace PriceFloor.Api.ShelfLists;

/// <summary>All designs of a profile beside each other.</summary>
public static class ShelfRoutes
{
    public static async Task<IResult> Get(FromQuery<ShelfQuery> query, CatalogueReader reader, Store store, LogWatch watch, LoggedShelves shelves,
        HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (asked, format) = (query.Value, Offers.Of(context).Wanted(context.Request)!);
        var catalogue = await reader.Whole(asked.AsOf);
        if (catalogue.Profile(asked.Profile) is not { } profile)
            return Problem.UnknownReference(
                [Place.Query.Error("profile", InputCodes.UnknownProfile, $"There is no profile \"{asked.Profile}\"; case counts.")]);
        var year = catalogue.Year(profile);
        if (year.Found is not { } found)
            return Problem.Of(year.Faults);
        var choices = asked.Asked.Choices(catalogue.Today);
        return await LoggedEvidenceRoutes.Answered(context, format, catalogue, asked.AsOf, async () =>
        {
            var shelf = await store.ReadAsync(async snapshot =>
            {
                var question = await LoggedQuestion.OfAsync(snapshot, watch, catalogue, choices, (asked.AsOf, Caller.Of(context).Access));
                var good = await shelves.Good(question, profile);
                return ShelfAnswer.Of(profile, found, await shelves.OfAsync(question, profile, good),
                    EvidenceWarnings.OfAge(question.SeesAll ? await question.Log.NewestDay() : null, choices.To), question.Log.Basis);
            });
            return format == Format.Csv ? await ShelfSheet.Of(shelf, asked.Dialect, context.RequestAborted)
                : format == Format.Svg ? ShelfPicture.Of(shelf)
                : format == Format.Html ? ShelfPage.Of(shelf, profile.Document.Name ?? profile.Key, choices.To)
                : System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(shelf, WireJson.Options);
        });
    }
}
