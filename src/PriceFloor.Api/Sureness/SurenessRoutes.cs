using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Scenarios;
using PriceFloor.Storage;

namespace PriceFloor.Api.Sureness;

public static class SurenessRoutes
{
    public static async Task<Results<JsonAnswer<SurenessAnswer>, Problem>> Post(JsonBody<SurenessRequest> body, FromQuery<ReadQuery> query,
        CatalogueReader reader, Store store, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (request, asOf) = (body.Value, query.Value.AsOf);
        var catalogue = await reader.Whole(asOf);
        if (catalogue.Profile(request.Profile) is not { } profile)
            return Problem.Of([RequestFault.Unknown(Place.Body.Error("profile", InputCodes.UnknownProfile,
                $"There is no profile \"{request.Profile}\"; case counts."))]);
        var stored = await StoredScenarios.Of(store, Caller.Of(context), profile.Key, [request.Scenario], asOf);
        var scope = new ChangeScope(catalogue, profile);
        var script = GuessedChanges.Of(request, scope, stored.Values.FirstOrDefault());
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
            Scenario = stored.Values.FirstOrDefault()?.Basis,
            Changed = scope.BasisOf(guessed.Likely.All.Keys),
        }, catalogue.Today, context.RequestAborted);
        return answer.Found is { } found ? JsonAnswer.Of(found) : Problem.Of(answer.Faults);
    }
}
