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
        ClearingPrices clearing, ServiceCounts counts, HttpContext context) =>
            Answer(query.Value.Request, query.Value.AsOf, query.Value.Workings, Place.Query, (reader, clearing), counts, context);

    public static ValueTask<Results<JsonAnswer<PriceCheckAnswer>, Problem>> Post(JsonBody<PriceCheckRequest> body, FromQuery<ComputeQuery> query,
        CatalogueReader reader, ClearingPrices clearing, ServiceCounts counts, HttpContext context) =>
            Answer(body.Value, query.Value.AsOf, query.Value.Workings, Place.Body, (reader, clearing), counts, context);

    private static ValueTask<Results<JsonAnswer<PriceCheckAnswer>, Problem>> Answer(PriceCheckRequest request, DateTimeOffset? asOf, bool workings,
        Place place, (CatalogueReader Reader, ClearingPrices Clearing) stored, ServiceCounts counts, HttpContext context)
    {
        var caller = Caller.Of(context);
        if (workings && !caller.May(Scope.Read))
            return new(Problem.Of(ProblemTypes.KeyNotAllowed, "Workings reveal costs; they need a key with the scope \"read\"."));
        Answers.ForThisCallerOnly(context);
        var read = stored.Reader.Read<Read>(asOf, catalogue =>
        {
            var check = CheckedPrice.ForAnswer(catalogue, request, place, caller.May(Scope.Read));
            if (check.Found is not { } found)
                return new(null, null, Problem.Of(check.Faults));
            counts.Checked(found.Verdict);
            return new(found.Answer(caller, workings), found.Clears, null);
        });
        // Nearly always all is at hand, and no price clears anything.
        return read is { IsCompletedSuccessfully: true, Result: { Clears: null } now } ? new(now.Told) : Told(read, stored.Clearing, asOf);
    }

    private static async ValueTask<Results<JsonAnswer<PriceCheckAnswer>, Problem>> Told(ValueTask<Read> read, ClearingPrices clearing,
        DateTimeOffset? asOf)
    {
        var now = await read;
        return now is { Answer: { } answer, Clears: { } clears } && await clearing.IsOpen(clears, asOf)
            ? JsonAnswer.Of(answer with { Clearing = true }) : now.Told;
    }

    /// <summary>A check as read from the documents; whether pieces are still sold off at its price only the log knows.</summary>
    private readonly record struct Read(PriceCheckAnswer? Answer, Stored<ListedPrice>? Clears, Problem? Problem)
    {
        public Results<JsonAnswer<PriceCheckAnswer>, Problem> Told => Answer is { } answer ? JsonAnswer.Of(answer) : Problem!;
    }
}
