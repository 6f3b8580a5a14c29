using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.Remedies;

public static class RemedyRoutes
{
    public static ValueTask<Results<JsonAnswer<RemediesAnswer>, Problem>> Get(PathKey path, FromQuery<RemedyQuery> query,
        CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        return reader.Read<Results<JsonAnswer<RemediesAnswer>, Problem>>(asked.AsOf, catalogue =>
        {
            var check = OnSale.OfPath(catalogue, path, asked.Channel, asked.Price);
            if (check.Found is not { } sale)
                return Problem.Of(check.Faults);
            var remedies = Pricing.Planning.Remedies.Of(sale.Check, asked.Toward, OtherChannels.Of(sale.Floor, sale.Channel, catalogue));
            return remedies.Found is { } found ? JsonAnswer.Of(AnswerOf(catalogue, sale, found, asked.Workings)) : Problem.Of(remedies.Faults);
        });
    }

    private static RemediesAnswer AnswerOf(Catalogue catalogue, CheckedPrice sale, Pricing.Planning.Remedies remedies, bool workings)
    {
        var money = sale.Floor.Floor.UnitCost.Year.Currency;
        return new RemediesAnswer
        {
            Currency = money.Code,
            Price = Rounding.WithDecimals(sale.Check.Sale.Price, money.Decimals),
            Verdict = sale.Check.Verdict,
            AboveFloor = money.Round(sale.Check.AboveFloor),
            Toward = remedies.Goal,
            Remedies = [.. remedies.All.Select(RemedyAnswer.Of)],
            Balanced = remedies.Balanced is { } balanced
                ? new BalancedAnswer
                {
                    BenchMinutes = balanced.BenchMinutes,
                    Materials = balanced.Materials,
                    Cut = balanced.Cut,
                    CarriesItsShare = balanced.CarriesItsShare,
                }
                : null,
            Basis = sale.Basis,
            Assumed = AssumptionAnswer.Of(sale.Assumptions),
            Warnings = WarningAnswer.Of(sale.AllWarnings.Concat(IdleHours.Warnings(catalogue, sale.Floor.Profile,
                remedies.All.Any(one => one is { Kind: RemedyKind.WorkFaster, Possible: true } && one.After < one.Before), "/remedies"))),
            Workings = WorkingAnswer.Of(workings, () => sale.AllWorkings.Concat(Pricing.Explaining.Workings.Of(remedies))),
        };
    }
}

/// <summary>One design on one channel at the price that the market pays; the listed one where none is given.</summary>
public sealed record RemedyQuery(string Channel, decimal? Price, RemedyGoal Toward, DateTimeOffset? AsOf, bool Workings) : IQuery<RemedyQuery>
{
    public static readonly QueryParameter TowardParameter = new("toward",
        "What a price is to be brought to: floor (default), or target, which also keeps the studio's own price rule.", "string", Example: "target");

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel.", "string", Example: "web", Required: true),
        new("price", "The price that the market pays, in the channel's currency; the listed one if absent.", "number", "decimal", "58.00",
            Minimum: 0, Maximum: Limits.HighestPrice),
        TowardParameter,
        QueryParameters.AsOf, QueryParameters.Workings,
    ];

    public static RemedyQuery Read(QueryValues values) => new(values.RequiredText("channel"),
        values.Number("price", new PriceAttribute { Above = true }), values.EnumValue<RemedyGoal>("toward") ?? RemedyGoal.Floor, values.Time("asOf"),
        values.Boolean("workings"));
}
