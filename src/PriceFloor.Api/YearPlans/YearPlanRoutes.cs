using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.YearPlans;

public static class YearPlanRoutes
{
    public static ValueTask<Results<JsonAnswer<YearPlanAnswer>, Problem>> Post(JsonBody<YearPlanRequest> body, FromQuery<ComputeQuery> query,
        CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (request, (asOf, workings)) = (body.Value, query.Value);
        return reader.Read<Results<JsonAnswer<YearPlanAnswer>, Problem>>(asOf, catalogue =>
        {
            var lines = SaleLines.Of(catalogue, request.Profile, request.Lines);
            if (lines.Found is not { } sold)
                return Problem.Of(lines.Faults);
            var plan = YearPlan.Of(sold.Year, [.. sold.Sales.Zip(request.Lines, (sale, line) => new PlannedLine(sale.Check, line.Units))],
                request.Surplus, request.HoursKeptBack);
            return plan.Found is { } found
                ? JsonAnswer.Of(PlanText.Of(found, sold, request.Lines, catalogue.Today, workings))
                : Problem.Of(plan.Faults);
        });
    }

    public static ValueTask<Results<JsonAnswer<YearPlanAnswer>, Problem>> Best(JsonBody<BestPlanRequest> body, FromQuery<ComputeQuery> query,
        CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (request, (asOf, workings)) = (body.Value, query.Value);
        return reader.Read<Results<JsonAnswer<YearPlanAnswer>, Problem>>(asOf, catalogue =>
        {
            var lines = SaleLines.Of(catalogue, request.Profile, request.Lines);
            if (lines.Found is not { } sold)
                return Problem.Of(lines.Faults);
            var offered = sold.Sales.Zip(request.Lines,
                (sale, line) => new OfferedLine($"{line.Sku}/{line.Channel}", sale.Check, line.Minimum, line.Maximum, SeasonOf(request, line)))
                .ToList();
            var best = BestYear.Of(sold.Year, offered, request.Surplus, request.HoursKeptBack, request.Goal, WorkOf(request));
            return best.Found is { } found
                ? JsonAnswer.Of(PlanText.Of(found, sold, request, catalogue.Today, workings))
                : Problem.Of(best.Faults);
        });
    }

    private static Season? SeasonOf(BestPlanRequest request, BestLineRequest line) =>
        line.Season is { } name ? Season.Of(request.Seasons[name]) : null;

    /// <summary>Evenly spread hours matter only if some line is sold in a season.</summary>
    private static Season? WorkOf(BestPlanRequest request) =>
        request.Work is { } work ? Season.Of(work) : request.Lines.Any(line => line.Season is not null) ? Season.Even : null;
}
