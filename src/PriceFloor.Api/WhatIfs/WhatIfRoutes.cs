using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Scenarios;
using PriceFloor.Storage;

namespace PriceFloor.Api.WhatIfs;

public static class WhatIfRoutes
{
    public static async Task<IResult> Post(JsonBody<WhatIfRequest> body, FromQuery<ReadQuery> query,
        CatalogueReader reader, Store store, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (request, asOf) = (body.Value, query.Value.AsOf);
        var catalogue = await reader.Whole(asOf);
        if (catalogue.Profile(request.Profile) is not { } profile)
            return Problem.Of([RequestFault.Unknown(Place.Body.Error("profile", InputCodes.UnknownProfile,
                $"There is no profile \"{request.Profile}\"; case counts."))]);
        var plan = request.Plan is { } key && catalogue.Plan(key) is { } known && known.Document.Profile == profile.Key ? known : null;
        if (request.Plan is not null && plan is null)
            return Problem.Of([RequestFault.Unknown(Place.Body.Error("plan", InputCodes.UnknownPlan,
                $"There is no plan \"{request.Plan}\" for the profile \"{profile.Key}\"; case counts."))]);
        var stored = await StoredScenarios.Of(store, Caller.Of(context), profile.Key, request.Scenarios.Select(one => one.Key), asOf);
        var asked = new WhatIfFinder(new ChangeScope(catalogue, profile, plan), stored).Of(request);
        var answer = asked.Found is { } found ? WhatIfText.Of(found) : asked.Faults.ToList();
        return answer.Found is not { } said ? Problem.Of(answer.Faults)
            : Offers.Of(context).Wanted(context.Request) == Format.Svg ? TaggedBody.Unnamed(WhatIfPicture.Of(said), Format.Svg)
            : new LongAnswer<WhatIfAnswer>(said);
    }
}
