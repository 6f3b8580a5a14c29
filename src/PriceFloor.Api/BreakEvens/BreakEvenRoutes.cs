using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Pricing;
using PriceFloor.Storage;

namespace PriceFloor.Api.BreakEvens;

public static class BreakEvenRoutes
{
    public static Results<Ok<BreakEvenAnswer>, Problem> Get(PathKey path, FromQuery<BreakEvenQuery> query, Store store, TimeProvider clock, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        return store.Read<Results<Ok<BreakEvenAnswer>, Problem>>(snapshot =>
        {
            var records = new Records(snapshot, asked.AsOf, clock.GetUtcNow());
            var (sale, problem) = OnSale.OfPath(records, path, asked.Channel, asked.Price);
            if (sale is null)
                return problem!;
            var breakEven = BreakEven.Of(sale.Floor.Floor.Piece, sale.Check.Sale);
            return breakEven.Found is { } found ? TypedResults.Ok(AnswerOf(sale, found, asked)) : Problem.OfFaults(breakEven.Faults);
        });
    }

    public static Results<Ok<MixBreakEvenAnswer>, Problem> Post(JsonBody<BreakEvenRequest> body, FromQuery<ComputeQuery> query, Store store, TimeProvider clock, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (request, (asOf, workings)) = (body.Value, query.Value);
        return store.Read<Results<Ok<MixBreakEvenAnswer>, Problem>>(snapshot =>
        {
            var records = new Records(snapshot, asOf, clock.GetUtcNow());
            if (records.Profile(request.Profile) is not { } profile)
                return Problem.UnknownReference([new InputError { Pointer = "#/profile", Code = "unknown-profile", Detail = $"There is no profile \"{request.Profile}\"; case counts." }]);
            var sales = new List<CheckedPrice>();
            foreach (var (index, line) in request.Lines.Index())
            {
                var (sale, problem) = OnSale.Of(records, line.Sku, line.Channel, line.Price, $"#/lines/{index}", profile);
                if (sale is null)
                    return problem!;
                sales.Add(sale);
            }

            var year = sales[0].Floor.Floor.Piece.Year;
            var mix = MixBreakEven.Of(year, [.. sales.Zip(request.Lines, (sale, line) => new MixLine(sale.Floor.Floor.Piece, sale.Check.Sale, line.Weight))], request.Surplus);
            return mix.Found is { } found ? TypedResults.Ok(AnswerOf(request, profile, sales, found, records.Today, workings)) : Problem.OfFaults(mix.Faults);
        });
    }

    private static BreakEvenAnswer AnswerOf(CheckedPrice sale, BreakEven breakEven, BreakEvenQuery asked)
    {
        var money = sale.Floor.Floor.Piece.Year.Currency;
        return new BreakEvenAnswer
        {
            Currency = money.Code,
            Price = Rounding.WithDecimals(sale.Check.Sale.Price, money.Decimals),
            Contribution = money.Nearest(breakEven.Contribution),
            Units = breakEven.Units,
            Revenue = money.Nearest(breakEven.Revenue),
            BenchHours = Answers.Hours(breakEven.BenchHours),
            Capacity = breakEven.Capacity,
            WithinCapacity = breakEven.WithinCapacity,
            ShareOfYear = Answers.Ratio(breakEven.ShareOfYear),
            MarginOfSafety = asked.Planned is { } planned ? Answers.Ratio(breakEven.MarginOfSafety(planned)) : null,
            OperatingLeverage = asked.Planned is { } pieces && breakEven.OperatingLeverage(pieces) is { } leverage ? Answers.Ratio(leverage) : null,
            Basis = sale.Basis,
            Assumed = AssumptionAnswer.Of(sale.Assumptions),
            Warnings = WarningAnswer.Of(sale.AllWarnings),
            Workings = WorkingAnswer.Of(asked.Workings, () => sale.AllWorkings.Concat(Workings.Of(breakEven))),
        };
    }

    private static MixBreakEvenAnswer AnswerOf(BreakEvenRequest request, Stored<CostProfile> profile, IReadOnlyList<CheckedPrice> sales, MixBreakEven mix, DateOnly today, bool workings)
    {
        var year = mix.Lines[0].Piece.Year;
        var money = year.Currency;
        return new MixBreakEvenAnswer
        {
            Currency = money.Code,
            Pool = money.Least(mix.Pool),
            ContributionPerSet = money.Nearest(mix.ContributionPerSet),
            Sets = Answers.Ratio(mix.Sets),
            Lines = [.. request.Lines.Select((line, i) => new MixLineAnswer(line.Sku, line.Channel, Rounding.WithDecimals(mix.Lines[i].Sale.Price, money.Decimals), Rounding.Trim(line.Weight), money.Nearest(mix.Lines[i].Contribution),
                mix.Units[i], money.Nearest(mix.Units[i] * mix.Lines[i].Sale.BeforeTax), Answers.Hours(mix.Units[i] * mix.Lines[i].Piece.BenchHours)))],
            Revenue = money.Nearest(mix.Revenue),
            BenchHours = Answers.Hours(mix.BenchHours),
            WithinCapacity = mix.WithinCapacity,
            ShareOfYear = Answers.Ratio(mix.ShareOfYear),
            Basis = new Dictionary<string, object> { ["profile"] = profile.Basis, ["lines"] = sales.Select(sale => sale.Basis).ToList() },
            Assumed = AssumptionAnswer.Of(sales.SelectMany((sale, i) => sale.Assumptions.Select(one => one with { Pointer = Below(one.Pointer, i) })).Distinct()),
            Warnings = WarningAnswer.Of(Warnings.In(year, today).Concat(sales.SelectMany((sale, i) => Warnings.In(sale.Floor.Floor.Piece).Concat(sale.WarningsOfTheSale).Select(one => one with { Pointer = Below(one.Pointer, i) })))),
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(year).Concat(Workings.Of(mix))),
        };
    }

    /// <summary>What is said of the profile is said once; the rest is said of its line.</summary>
    private static string Below(string pointer, int line) => pointer.StartsWith("/profile", StringComparison.Ordinal) ? pointer : $"/lines/{line}{pointer}";
}
