using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Pricing;
using PriceFloor.Storage;

namespace PriceFloor.Api.PriceChecks;

/// <summary>Does this price carry its part of the year?</summary>
public sealed record PriceCheckRequest
{
    /// <summary>Key of a stored design.</summary>
    /// <example>RB-014</example>
    [System.ComponentModel.DataAnnotations.MaxLength(Limits.KeyLength)]
    public required string Sku { get; init; }

    /// <summary>Key of a stored channel.</summary>
    /// <example>web</example>
    [System.ComponentModel.DataAnnotations.MaxLength(Limits.KeyLength)]
    public required string Channel { get; init; }

    /// <summary>The price as it is or would be listed, above 0, with the channel's currency's decimals.</summary>
    /// <example>58.00</example>
    [Price(Above = true)]
    public required decimal Price { get; init; }

    /// <summary>ISO 4217 code of the price; a code other than the channel's is refused. Absent: the channel's.</summary>
    /// <example>USD</example>
    [System.ComponentModel.DataAnnotations.MaxLength(3)]
    public string? Currency { get; init; }
}

/// <summary>Reading has checked each field; there are no rules between them.</summary>
public sealed class PriceCheckRequestValidator : AbstractValidator<PriceCheckRequest>;

/// <summary>The same, asked by query.</summary>
public sealed record PriceCheckQuery(PriceCheckRequest Request, DateTimeOffset? AsOf, bool Workings) : IQuery<PriceCheckQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("sku", "Key of a stored design.", "string", Example: "RB-014", Required: true),
        new("channel", "Key of a stored channel.", "string", Example: "web", Required: true),
        new("price", "The price as it is or would be listed: digits with at most one point.", "number", "decimal", "58.00", Required: true, Least: 0, Most: Limits.HighestPrice),
        new("currency", "ISO 4217 code of the price; a code other than the channel's is refused.", "string", Example: "USD"),
        QueryParameters.AsOf, QueryParameters.Workings,
    ];

    public static PriceCheckQuery Read(QueryValues values) => new(
        new PriceCheckRequest { Sku = values.RequiredText("sku"), Channel = values.RequiredText("channel"), Price = values.RequiredNumber("price", new PriceAttribute { Above = true }), Currency = values.Text("currency", 3) },
        values.Time("asOf"), values.Truth("workings"));
}

/// <summary>
/// The verdict on a price. With the scope "verdict" the word and carriesItsShare; with "check" also floor and target price; with
/// "read" also what reveals costs.
/// </summary>
public sealed record PriceCheckAnswer
{
    /// <summary>What the price does for the year.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Whether what reaches the studio is at least the floor.</summary>
    public required bool CarriesItsShare { get; init; }

    /// <summary>The smallest allowed price whose net reaches the floor.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? FloorPrice { get; init; }

    /// <summary>The price that also keeps the studio's own rule.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? TargetPrice { get; init; }

    /// <summary>The price that was asked about.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Price { get; init; }

    /// <summary>ISO 4217 code.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Currency { get; init; }

    /// <summary>What reaches the studio for each piece that leaves for good.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? NetProceeds { get; init; }

    /// <summary>Net proceeds less the floor; negative when short.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? AboveFloor { get; init; }

    /// <summary>What the price really pays for an hour at the bench.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? EarnedPerBenchHour { get; init; }

    /// <summary>What an hour at the bench must bring, rounded up.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? PerBenchHour { get; init; }

    /// <summary>What reaches the household for each working hour when the year closes.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? TakeHomePerHour { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer leaned on and that lower the floor.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<AssumptionAnswer>? Assumed { get; init; }

    /// <summary>What may make the figures wrong; without "read" only off-grid.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true and the scope "read": each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

public static class PriceCheckRoutes
{
    public static Results<Ok<PriceCheckAnswer>, Problem> Get(FromQuery<PriceCheckQuery> query, Store store, TimeProvider clock, HttpContext context) =>
        Answer(query.Value, isQuery: true, store, clock, context);

    public static Results<Ok<PriceCheckAnswer>, Problem> Post(JsonBody<PriceCheckRequest> body, FromQuery<ComputeQuery> query, Store store, TimeProvider clock, HttpContext context) =>
        Answer(new PriceCheckQuery(body.Value, query.Value.AsOf, query.Value.Workings), isQuery: false, store, clock, context);

    private static Results<Ok<PriceCheckAnswer>, Problem> Answer(PriceCheckQuery asked, bool isQuery, Store store, TimeProvider clock, HttpContext context)
    {
        var caller = Caller.Of(context);
        if (asked.Workings && !caller.May(Scope.Read))
            return Problem.Of(ProblemTypes.KeyNotAllowed, "Workings reveal costs; they need a key with the scope \"read\".");
        Answers.ForThisCallerOnly(context);
        return store.Read<Results<Ok<PriceCheckAnswer>, Problem>>(snapshot =>
        {
            var check = CheckedPrice.Of(new Records(snapshot, asked.AsOf, clock.GetUtcNow()), asked.Request, isQuery);
            return check.Problem is { } problem ? problem : TypedResults.Ok(check.Found!.Answer(caller, asked.Workings));
        });
    }
}
