using System.Globalization;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Quotes;
using PriceFloor.Storage;

namespace PriceFloor.Api.Plans;

public static class PlanProgressRoutes
{
    public static async Task<IResult> Post(PathKey path, JsonBody<PlanProgressRequest> body, FromQuery<ReadQuery> query, Store store,
        CatalogueReader reader, TimeProvider clock, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (request, asOf) = (body.Value, query.Value.AsOf);
        var promised = await PromisedHours.Of(store, context, asOf, clock);
        return await reader.Read<IResult>(asOf, catalogue =>
        {
            if (catalogue.Plan(path.Text) is not { } plan)
                return Problem.Of(ProblemTypes.NotFound, $"There is no plan \"{path.Text}\"{(asOf is null ? "" : " at that time")}.");
            var found = PlanInQuestion.Of(catalogue, plan);
            if (found.Found is not { } asked)
                return Problem.Of(found.Faults);
            if (OutsideYear(asked, request.Through) is { } outside)
                return Problem.Invalid([outside]);
            var brought = PlanProgressText.Brought(catalogue, asked, request.Sold);
            if (brought.Found is null)
                return Problem.Of(brought.Faults);
            var progress = PlanProgress.Of(asked.Months, request.Through, brought.Value.Amount);
            return progress.Found is { } year
                ? JsonAnswer.Of(PlanProgressText.Of(year, asked, catalogue.Today, promised.Of(asked.Profile)))
                : Problem.Of(progress.Faults);
        });
    }

    private static InputError? OutsideYear(PlanInQuestion asked, DateOnly through)
    {
        var (first, last) = (asked.Months.Months[0].From, asked.Months.Months[11].From.AddMonths(1).AddDays(-1));
        return through >= first && through <= last ? null : Place.Body.Error("through", FaultCodes.OutOfRange, string.Create(
            CultureInfo.InvariantCulture, $"through must be within the profile's year, {first:yyyy-MM-dd} to {last:yyyy-MM-dd}."));
    }
}
