using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Quotes;
using PriceFloor.Api.Scenarios;
using PriceFloor.Evidence.Findings;
using PriceFloor.Storage;

namespace PriceFloor.Api.Sureness;

public static class SurenessRoutes
{
    public static async Task<IResult> Post(JsonBody<SurenessRequest> body, FromQuery<ReadQuery> query,
        CatalogueReader reader, Store store, LogWatch watch, LoggedDesigns designs, IDesignLearning learning,
        HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (request, asOf) = (body.Value, query.Value.AsOf);
        var catalogue = await reader.Whole(asOf);
        if (catalogue.Profile(request.Profile) is not { } profile)
            return Problem.Of([RequestFault.Unknown(Place.Body.Error("profile", InputCodes.UnknownProfile,
                $"There is no profile \"{request.Profile}\"; case counts."))]);
        var stored = await StoredScenarios.Of(store, Caller.Of(context), profile.Key, [request.Scenario], asOf);
        var named = await SurenessNames.Of(request, catalogue, profile, store, context, asOf);
        if (named.Found is not { } names)
            return Problem.Of(named.Faults);
        var (quote, learned) = (names.Quote, QuotedLearning.None);
        if (quote is not null)
        {
            learned = await QuotedLearning.Of(store, learning, reader, quote.Document, asOf);
            quote = quote.With(learned.In(quote.Document));
        }

        var scope = new ChangeScope(catalogue, profile, names.Plan) { Quote = quote };
        var logged = request.Ranges?.Word is null ? null : await store.ReadAsync(async snapshot =>
        {
            var choices = new EvidenceChoices { To = catalogue.Today, Level = LoggedRanges.Level };
            var access = Caller.Of(context).Access;
            var design = request.Sku is { } sku && catalogue.DesignNamed(sku) is { } one && one.Document.Profile == profile.Key ? one : null;
            return await LoggedRanges.OfAsync(await LoggedQuestion.OfAsync(snapshot, watch, catalogue, choices, (asOf, access)), designs, profile,
                design, access);
        });
        if (logged is { Found: null })
            return Problem.Of(logged.Faults);
        var script = GuessedChanges.Of(request, scope, stored.Values.FirstOrDefault(), logged?.Found);
        if (script.Found is not { } guessed)
            return Problem.Of(script.Faults);
        var question = SurenessQuestion.Of(request, scope, guessed);
        if (question.Found is not { } asked)
            return Problem.Of(question.Faults);
        var answer = SurenessText.Of(request, asked, guessed, new SurenessBasisAnswer
        {
            Profile = profile.Basis,
            Design = asked.Design?.Basis,
            Channel = asked.Channel?.Basis,
            Plan = names.Plan?.Basis,
            Quote = names.Quote?.Basis,
            Scenario = stored.Values.FirstOrDefault()?.Basis,
            Log = logged?.Found!.Log ?? learned.Log,
            Changed = scope.BasisOf(guessed.Likely.All.Keys),
        }, catalogue.Today, context.RequestAborted);
        return answer.Found is not { } found ? Problem.Of(answer.Faults)
            : Offers.Of(context).Wanted(context.Request) == Format.Svg ? TaggedBody.Unnamed(SurenessPicture.Of(found), Format.Svg)
            : JsonAnswer.Of(found);
    }
}
