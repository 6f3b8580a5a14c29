using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.PriceChecks;

public static class PriceCheckRoutes
{
    public static Results<Ok<PriceCheckAnswer>, Problem> Get(FromQuery<PriceCheckQuery> query, Store store, TimeProvider clock, HttpContext context) =>
        Answer(query.Value, at: null, store, clock, context);

    public static Results<Ok<PriceCheckAnswer>, Problem> Post(JsonBody<PriceCheckRequest> body, FromQuery<ComputeQuery> query, Store store, TimeProvider clock, HttpContext context) =>
        Answer(new PriceCheckQuery(body.Value, query.Value.AsOf, query.Value.Workings), at: "#", store, clock, context);

    private static Results<Ok<PriceCheckAnswer>, Problem> Answer(PriceCheckQuery asked, string? at, Store store, TimeProvider clock, HttpContext context)
    {
        var caller = Caller.Of(context);
        if (asked.Workings && !caller.May(Scope.Read))
            return Problem.Of(ProblemTypes.KeyNotAllowed, "Workings reveal costs; they need a key with the scope \"read\".");
        Answers.ForThisCallerOnly(context);
        return store.Read<Results<Ok<PriceCheckAnswer>, Problem>>(snapshot =>
        {
            var check = CheckedPrice.Of(new Records(snapshot, asked.AsOf, clock.GetUtcNow()), asked.Request, at);
            return check.Problem is { } problem ? problem : TypedResults.Ok(check.Found!.Answer(caller, asked.Workings));
        });
    }
}
