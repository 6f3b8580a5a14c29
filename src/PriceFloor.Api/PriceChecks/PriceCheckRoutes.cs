using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceChecks;

public static class PriceCheckRoutes
{
    public static Results<Ok<PriceCheckAnswer>, Problem> Get(FromQuery<PriceCheckQuery> query, RecordKeeper keeper, HttpContext context) =>
        Answer(query.Value, at: null, keeper, context);

    public static Results<Ok<PriceCheckAnswer>, Problem> Post(JsonBody<PriceCheckRequest> body, FromQuery<ComputeQuery> query, RecordKeeper keeper, HttpContext context) =>
        Answer(new PriceCheckQuery(body.Value, query.Value.AsOf, query.Value.Workings), at: "#", keeper, context);

    private static Results<Ok<PriceCheckAnswer>, Problem> Answer(PriceCheckQuery asked, string? at, RecordKeeper keeper, HttpContext context)
    {
        var caller = Caller.Of(context);
        if (asked.Workings && !caller.May(Scope.Read))
            return Problem.Of(ProblemTypes.KeyNotAllowed, "Workings reveal costs; they need a key with the scope \"read\".");
        Answers.ForThisCallerOnly(context);
        return keeper.Read<Results<Ok<PriceCheckAnswer>, Problem>>(asked.AsOf, records =>
        {
            var check = CheckedPrice.Of(records, asked.Request, at, mayRead: caller.May(Scope.Read));
            return check.Problem is { } problem ? problem : TypedResults.Ok(check.Found!.Answer(caller, asked.Workings));
        });
    }
}
