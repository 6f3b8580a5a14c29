using System.Globalization;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Quotes;
using PriceFloor.Storage;

namespace PriceFloor.Api.Plans;

/// <summary>Whether a planned year is on its way, from the sales of the log or from those that are sent: one calculation.</summary>
public static class PlanProgressRoutes
{
    public static Task<IResult> Get(PathKey path, FromQuery<PlanProgressQuery> query, Store store, CatalogueReader reader, TimeProvider clock,
        HttpContext context) => Answer(path.Text, query.Value, null, Place.Query, (store, reader, clock, context));

    public static Task<IResult> Post(PathKey path, JsonBody<PlanProgressRequest> body, FromQuery<ComputeQuery> query, Store store,
        CatalogueReader reader, TimeProvider clock, HttpContext context)
    {
        var (asOf, workings) = query.Value;
        return Answer(path.Text, new PlanProgressQuery(body.Value.Through, asOf, workings), body.Value.Sold, Place.Body,
            (store, reader, clock, context));
    }

    /// <param name="key">The plan.</param>
    /// <param name="query">What is asked.</param>
    /// <param name="posted">What was sold; null to take it from the log.</param>
    /// <param name="place">Where the day is.</param>
    /// <param name="by">What answers it.</param>
    private static async Task<IResult> Answer(string key, PlanProgressQuery query, IReadOnlyList<SoldRequest>? posted, Place place,
        (Store Store, CatalogueReader Reader, TimeProvider Clock, HttpContext Context) by)
    {
        Answers.ForThisCallerOnly(by.Context);
        var promised = await PromisedHours.Of(by.Store, by.Context, query.AsOf, by.Clock);
        var catalogue = await by.Reader.Whole(query.AsOf);
        if (catalogue.Plan(key) is not { } plan)
            return Problem.Of(ProblemTypes.NotFound, $"There is no plan \"{key}\"{(query.AsOf is null ? "" : " at that time")}.");
        var found = PlanInQuestion.Of(catalogue, plan);
        if (found.Found is not { } asked)
            return Problem.Of(found.Faults);
        var through = query.Through ?? catalogue.Today;
        if (OutsideYear(asked, through, place) is { } outside)
            return Problem.Invalid([outside]);
        var log = await PlanLog.Of(by.Store, catalogue, Caller.Of(by.Context).Access, asked, (through, query.AsOf));
        var sold = posted is null ? log.Sales() : new LoggedSales([], []);
        if (posted is not null)
        {
            var sent = PlanProgressText.SoldOf(catalogue, asked, posted);
            if (sent.Found is null)
                return Problem.Of(sent.Faults);
            sold = new LoggedSales(sent.Value, []);
        }

        var progress = PlanProgress.Of(asked.Months, through, sold.Sold, log.Stock);
        return progress.Found is { } year
            ? JsonAnswer.Of(PlanProgressText.Of(year, asked, posted is null || log.SaysWhatIsReady ? log.Basis : null,
                [.. PlanMonthsText.WarningsOf(asked, catalogue.Today, promised.Of(asked.Profile)), .. sold.Warnings], query.Workings))
            : Problem.Of(progress.Faults);
    }

    private static InputError? OutsideYear(PlanInQuestion asked, DateOnly through, Place place)
    {
        var (first, last) = (asked.Months.Months[0].From, asked.Months.Months[11].From.AddMonths(1).AddDays(-1));
        return through >= first && through <= last ? null : place.Error("through", FaultCodes.OutOfRange, string.Create(
            CultureInfo.InvariantCulture, $"through must be within the profile's year, {first:yyyy-MM-dd} to {last:yyyy-MM-dd}."));
    }
}
