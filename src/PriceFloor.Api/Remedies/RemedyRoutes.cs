using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.Remedies;

/// <summary>One design on one channel at the price that the market pays; the listed one where none is given.</summary>
public sealed record RemedyQuery(string Channel, decimal? Price, DateTimeOffset? AsOf, bool Workings) : IQuery<RemedyQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel.", "string", Example: "web", Required: true),
        new("price", "The price that the market pays, in the channel's currency; the listed one where absent.", "number", "decimal", "58.00", Minimum: 0, Maximum: Limits.HighestPrice),
        QueryParameters.AsOf, QueryParameters.Workings,
    ];

    public static RemedyQuery Read(QueryValues values) => new(values.RequiredText("channel"), values.Number("price", new PriceAttribute { Above = true }), values.Time("asOf"), values.Boolean("workings"));
}

/// <summary>One way to fix the price, alone.</summary>
public sealed record RemedyAnswer
{
    /// <summary>Which way.</summary>
    public required RemedyKind Remedy { get; init; }

    /// <summary>What before and after count: a listed price, bench minutes a sold piece, money a year or a sold piece in the profile's currency, the share of pieces that come out good, or working hours a week.</summary>
    public required RemedyMeasure Measure { get; init; }

    /// <summary>Whether it can be enough alone.</summary>
    public required bool Possible { get; init; }

    /// <summary>The figure today, counted as measure says; null where nothing of the price reaches the studio.</summary>
    public decimal? Before { get; init; }

    /// <summary>The figure that is enough, counted as measure says and rounded to the safe side; null where the way is not possible.</summary>
    public decimal? After { get; init; }

    /// <summary>The change in the maker's words, such as "41 bench minutes a piece instead of 52", or why it cannot be.</summary>
    public required string InWords { get; init; }

    /// <summary>A stable word where it is not possible.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>With spend-less: what the year's costs must fall by, rounded up. After is before less this; it is the figure to plan with.</summary>
    /// <example>4040.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Cut { get; init; }

    /// <summary>"long-week" where the figure is there to be seen, not to be followed.</summary>
    /// <example>long-week</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Flag { get; init; }
}

/// <summary>The gap spread over faster work, cheaper materials and lower costs.</summary>
public sealed record BalancedAnswer
{
    /// <summary>Bench minutes a sold piece, rounded down; null if the proposal leaves them as they are.</summary>
    public required decimal? BenchMinutes { get; init; }

    /// <summary>Materials a sold piece, rounded down; null if the proposal leaves them as they are.</summary>
    /// <example>12.40</example>
    public required decimal? Materials { get; init; }

    /// <summary>Less for bench time to recover in the year, rounded up; null if the proposal leaves the year's costs as they are.</summary>
    public required decimal? Cut { get; init; }

    /// <summary>All of them together, checked like any other price.</summary>
    public required bool CarriesItsShare { get; init; }
}

/// <summary>Each way to fix a price, and one that spreads the gap.</summary>
public sealed record RemediesAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The price that was asked about.</summary>
    public required decimal Price { get; init; }

    /// <summary>What it does for the year as it is.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Net proceeds less the floor; negative when short.</summary>
    public required decimal AboveFloor { get; init; }

    /// <summary>Every way, each with its figure before and after in its own measure, or the reason why it cannot be.</summary>
    public required IReadOnlyList<RemedyAnswer> Remedies { get; init; }

    /// <summary>A third each, as far as the three ways are possible; null where none is.</summary>
    public BalancedAnswer? Balanced { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer leaned on and that lower the floor.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

public static class RemedyRoutes
{
    public static Results<JsonAnswer<RemediesAnswer>, Problem> Get(PathKey path, FromQuery<RemedyQuery> query, CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        return reader.Read<Results<JsonAnswer<RemediesAnswer>, Problem>>(asked.AsOf, catalogue =>
        {
            var check = OnSale.OfPath(catalogue, path, asked.Channel, asked.Price);
            if (check.Found is not { } sale)
                return Problem.Of(check.Faults);
            var remedies = Pricing.Planning.Remedies.Of(sale.Check);
            return remedies.Found is { } found ? JsonAnswer.Of(AnswerOf(sale, found, asked.Workings)) : Problem.Of(remedies.Faults);
        });
    }

    private static RemediesAnswer AnswerOf(CheckedPrice sale, Pricing.Planning.Remedies remedies, bool workings)
    {
        var money = sale.Floor.Floor.UnitCost.Year.Currency;
        return new RemediesAnswer
        {
            Currency = money.Code,
            Price = Rounding.WithDecimals(sale.Check.Sale.Price, money.Decimals),
            Verdict = sale.Check.Verdict,
            AboveFloor = money.Round(sale.Check.AboveFloor),
            Remedies = [.. remedies.All.Select(one => new RemedyAnswer { Remedy = one.Kind, Measure = one.Measure, Possible = one.Possible, Before = one.Before, After = one.After, Cut = one.Cut, InWords = one.InWords, Reason = one.Reason, Flag = one.Flag })],
            Balanced = remedies.Balanced is { } balanced
                ? new BalancedAnswer { BenchMinutes = balanced.BenchMinutes, Materials = balanced.Materials, Cut = balanced.Cut, CarriesItsShare = balanced.CarriesItsShare }
                : null,
            Basis = sale.Basis,
            Assumed = AssumptionAnswer.Of(sale.Assumptions),
            Warnings = WarningAnswer.Of(sale.AllWarnings),
            Workings = WorkingAnswer.Of(workings, () => sale.AllWorkings.Concat(Pricing.Explaining.Workings.Of(remedies))),
        };
    }
}
