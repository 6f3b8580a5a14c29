using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Pictures;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.BreakEvens;

public static class BreakEvenRoutes
{
    public static ValueTask<IResult> Get(PathKey path, FromQuery<BreakEvenQuery> query, CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        return reader.Read<IResult>(asked.AsOf, catalogue =>
        {
            var check = OnSale.OfPath(catalogue, path, asked.Channel, asked.Price);
            if (check.Found is not { } sale)
                return Problem.Of(check.Faults);
            var breakEven = BreakEven.Of(sale.Floor.Floor.UnitCost, sale.Check.Sale);
            if (breakEven.Found is not { } found)
                return Problem.Of(breakEven.Faults);
            var planned = asked.Planned is { } pieces ? found.At(pieces) : null;
            if (planned is { Found: null })
                return Problem.Of(planned.Faults);
            var answer = AnswerOf(sale, found, planned?.Found, asked);
            return Offers.Of(context).Wanted(context.Request) == Format.Svg
                ? TaggedBody.Of(BreakEvenPicture.Of(answer, found, asked.Planned, DisplayText.Named(catalogue.Design(path.Text)!.Document.Name,
                    path.Text), DisplayText.Named(catalogue.Channel(asked.Channel)!.Document.Name, asked.Channel))).Answer(context, Format.Svg)
                : JsonAnswer.Of(answer);
        });
    }

    public static ValueTask<Results<JsonAnswer<MixBreakEvenAnswer>, Problem>> Post(JsonBody<BreakEvenRequest> body, FromQuery<ComputeQuery> query,
        CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (request, (asOf, workings)) = (body.Value, query.Value);
        return reader.Read<Results<JsonAnswer<MixBreakEvenAnswer>, Problem>>(asOf, catalogue =>
        {
            var lines = SaleLines.Of(catalogue, request.Profile, request.Lines);
            if (lines.Found is not { } sold)
                return Problem.Of(lines.Faults);
            var mix = MixBreakEven.Of(sold.Year,
                [.. sold.Sales.Zip(request.Lines, (sale, line) => new MixLine(sale.Floor.Floor.UnitCost, sale.Check.Sale, line.Ratio))],
                request.Surplus);
            return mix.Found is { } found ? JsonAnswer.Of(AnswerOf(request, sold, found, catalogue.Today, workings)) : Problem.Of(mix.Faults);
        });
    }

    private static BreakEvenAnswer AnswerOf(CheckedPrice sale, BreakEven breakEven, PlannedSales? planned, BreakEvenQuery asked)
    {
        var money = sale.Floor.Floor.UnitCost.Year.Currency;
        return new BreakEvenAnswer
        {
            Currency = money.Code,
            Price = Rounding.WithDecimals(sale.Check.Sale.Price, money.Decimals),
            Contribution = money.Round(breakEven.Contribution),
            Units = breakEven.Units,
            Revenue = money.Round(breakEven.Revenue),
            BenchHours = Answers.Hours(breakEven.BenchHours),
            Capacity = breakEven.Capacity,
            WithinCapacity = breakEven.WithinCapacity,
            ShareOfYear = Answers.Ratio(breakEven.ShareOfYear),
            MarginOfSafety = planned is null ? null : Answers.Ratio(planned.MarginOfSafety),
            OperatingLeverage = planned?.OperatingLeverage is { } leverage ? Answers.Ratio(leverage) : null,
            Basis = sale.Basis,
            Assumed = AssumptionAnswer.Of(sale.Assumptions),
            Warnings = WarningAnswer.Of(sale.AllWarnings),
            Workings = WorkingAnswer.Of(asked.Workings,
                () => sale.AllWorkings.Concat(Workings.Of(breakEven)).Concat(planned is null ? [] : Workings.Of(planned))),
        };
    }

    private static MixBreakEvenAnswer AnswerOf(BreakEvenRequest request, SaleLines sold, MixBreakEven mix, DateOnly today, bool workings)
    {
        var money = sold.Year.Currency;
        return new MixBreakEvenAnswer
        {
            Currency = money.Code,
            BenchMustEarn = money.RoundUp(mix.BenchMustEarn),
            ContributionPerMixUnit = money.Round(mix.ContributionPerMixUnit),
            MixUnits = Answers.Ratio(mix.MixUnits),
            Lines = [.. request.Lines.Select((line, i) => new MixLineAnswer(line.Sku, line.Channel,
                Rounding.WithDecimals(mix.Lines[i].Sale.Price, money.Decimals), Rounding.Trim(line.Ratio), money.Round(mix.Lines[i].Contribution),
                mix.Units[i], money.Round(mix.Units[i] * mix.Lines[i].Sale.Revenue),
                Answers.Hours(mix.Units[i] * mix.Lines[i].UnitCost.BenchHours)))],
            Revenue = money.Round(mix.Revenue),
            BenchHours = Answers.Hours(mix.BenchHours),
            WithinCapacity = mix.WithinCapacity,
            ShareOfYear = Answers.Ratio(mix.ShareOfYear),
            Basis = sold.Basis,
            Assumed = AssumptionAnswer.Of(sold.Assumptions),
            Warnings = WarningAnswer.Of(sold.WarningsOn(today)),
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(sold.Year).Concat(Workings.Of(mix))),
        };
    }
}
