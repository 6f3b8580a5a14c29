using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Telemetry;

namespace PriceFloor.Api.PriceChecks;

public static class PriceCheckRoutes
{
    public static ValueTask<Results<JsonAnswer<PriceCheckAnswer>, Problem>> Get(FromQuery<PriceCheckQuery> query, CatalogueReader reader,
        ServiceCounts counts, HttpContext context) =>
            Answer(query.Value.Request, query.Value.AsOf, query.Value.Workings, Place.Query, reader, counts, context);

    public static ValueTask<Results<JsonAnswer<PriceCheckAnswer>, Problem>> Post(JsonBody<PriceCheckRequest> body, FromQuery<ComputeQuery> query,
        CatalogueReader reader, ServiceCounts counts, HttpContext context) =>
            Answer(body.Value, query.Value.AsOf, query.Value.Workings, Place.Body, reader, counts, context);

    private static ValueTask<Results<JsonAnswer<PriceCheckAnswer>, Problem>> Answer(PriceCheckRequest request, DateTimeOffset? asOf, bool workings,
        Place place, CatalogueReader reader, ServiceCounts counts, HttpContext context)
    {
        var caller = Caller.Of(context);
        if (workings && !caller.May(Scope.Read))
            return new(Problem.Of(ProblemTypes.KeyNotAllowed, "Workings reveal costs; they need a key with the scope \"read\"."));
        Answers.ForThisCallerOnly(context);
        return reader.Read<Results<JsonAnswer<PriceCheckAnswer>, Problem>>(asOf, catalogue =>
        {
            var check = CheckedPrice.ForAnswer(catalogue, request, place, caller.May(Scope.Read));
            if (check.Found is not { } found)
                return Problem.Of(check.Faults);
            counts.Checked(found.Verdict);
            return JsonAnswer.Of(found.Answer(caller, workings));
        });
    }
}
