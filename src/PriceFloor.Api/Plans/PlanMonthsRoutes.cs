using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Quotes;
using PriceFloor.Storage;

namespace PriceFloor.Api.Plans;

public static class PlanMonthsRoutes
{
    public static async Task<IResult> Get(PathKey path, FromQuery<PlanMonthsQuery> query, Store store, CatalogueReader reader, TimeProvider clock,
        HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (lines, asOf, workings) = query.Value;
        var format = Offers.Of(context).Wanted(context.Request)!;
        var promised = await PromisedHours.Of(store, context, asOf, clock);
        return await reader.Read<IResult>(asOf, catalogue =>
        {
            if (catalogue.Plan(path.Text) is not { } plan)
                return Problem.Of(ProblemTypes.NotFound, $"There is no plan \"{path.Text}\"{(asOf is null ? "" : " at that time")}.");
            var found = PlanInQuestion.Of(catalogue, plan);
            if (found.Found is not { } asked)
                return Problem.Of(found.Faults);
            var answer = PlanMonthsText.Of(asked, catalogue.Today, promised.Of(asked.Profile), lines, workings);
            return format == Format.Svg ? TaggedBody.Of(PlanPicture.Of(answer, asked)).Answer(context, format)
                : format == Format.Html ? TaggedBody.Of(PlanPage.Of(answer, asked)).Answer(context, format)
                : JsonAnswer.Of(answer);
        });
    }

    public static async Task<IResult> Post(JsonBody<PlanMonthsRequest> body, FromQuery<PlanMonthsQuery> query, Store store,
        CatalogueReader reader, TimeProvider clock, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var ((lines, asOf, workings), request) = (query.Value, body.Value);
        var promised = await PromisedHours.Of(store, context, asOf, clock);
        return await reader.Read<IResult>(asOf, catalogue =>
        {
            var unknown = new List<InputError>();
            var plan = Resolve(request.Plan, catalogue.Plan, "plan", InputCodes.UnknownPlan, unknown);
            var profile = request.Profile is { } given ? Resolve(given, catalogue.Profile, "profile", InputCodes.UnknownProfile, unknown) : null;
            if (unknown.Count > 0)
                return Problem.UnknownReference(unknown);
            var found = PlanInQuestion.Of(catalogue, plan!, profile, request.Plan.Document is null ? "#" : "#/plan");
            return found.Found is { } asked
                ? JsonAnswer.Of(PlanMonthsText.Of(asked, catalogue.Today, promised.Of(asked.Profile), lines, workings))
                : Problem.Of(found.Faults);
        });
    }

    private static Stored<T>? Resolve<T>(KeyOr<T> given, Func<string, Stored<T>?> find, string at, Code code, List<InputError> unknown)
        where T : class
    {
        if (given.Document is { } document)
            return Stored<T>.Inline(document);
        if (find(given.Key!) is { } stored)
            return stored;
        unknown.Add(Place.Body.Error(at, code,
            $"There is no {at} \"{given.Key}\"; store it first, send it inline, or correct the key (case counts)."));
        return null;
    }
}
