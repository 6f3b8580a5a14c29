using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Sureness;

/// <summary>How sure is an answer, if numbers that it rests on are only guessed?</summary>
public sealed record SurenessRequest
{
    /// <summary>How many ranges there may be.</summary>
    public const int MostRanges = 50;

    /// <summary>Key of the cost profile whose year it is.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>Key of one of its designs; the year alone if absent.</summary>
    /// <example>RB-014</example>
    [MaxLength(Limits.AliasLength)]
    public string? Sku { get; init; }

    /// <summary>Key of a channel on which the design is sold.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public string? Channel { get; init; }

    /// <summary>A price on the channel: in how many draws does it carry its share?</summary>
    /// <example>58.00</example>
    [Price(Above = true)]
    public decimal? Price { get; init; }

    /// <summary>Key of a plan of the profile: in how many draws does it close?</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public string? Plan { get; init; }

    /// <summary>Key of a quote of the profile with a price: what is it worth to know a number before you take or leave it?</summary>
    /// <example>Q-2027-014</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public string? Quote { get; init; }

    /// <summary>Index of a line of the plan, from 0, that you may make or drop; in place of a quote.</summary>
    /// <example>0</example>
    [Pieces]
    public decimal? Line { get; init; }

    /// <summary>
    /// Changes whose value is a range: 1 to 50. A change with a plain value counts as it is. The word "evidence" takes what the log says of the
    /// profile and of the design. Give these, or scenario.
    /// </summary>
    public WordOrList<GuessSource, DocumentChange>? Ranges { get; init; }

    /// <summary>Key of a stored scenario with ranges, in place of ranges.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public string? Scenario { get; init; }

    /// <summary>In which share of the draws the sure price holds.</summary>
    /// <example>0.9</example>
    [Share(Minimum = "0.5", Maximum = "0.99")]
    public decimal Sure { get; init; } = 0.9m;

    /// <summary>How many draws: 1024, 4096 or 16384.</summary>
    /// <example>4096</example>
    [Pieces]
    public decimal Draws { get; init; } = LatinHypercube.Usual;

    /// <summary>Another seed gives other draws; the same seed always gives the same.</summary>
    /// <example>0</example>
    [Pieces]
    public decimal Seed { get; init; }

    /// <summary>True adds to the three numbers that matter most for the floor what knowing each of them would bring.</summary>
    public bool Pinned { get; init; }
}

/// <summary>The rules between the fields of the question.</summary>
public sealed class SurenessRequestValidator : AbstractValidator<SurenessRequest>
{
    public SurenessRequestValidator() => RuleFor(request => request).Custom((request, context) =>
    {
        if ((request.Ranges is null) == (request.Scenario is null))
            context.Add("ranges", FaultCodes.ExactlyOne, "Give either ranges or the key of a scenario that has them.");
        if (request.Sku is null && (request.Channel ?? request.Price?.ToString(System.Globalization.CultureInfo.InvariantCulture)) is not null)
            context.Add("sku", FaultCodes.Required, "A channel or a price is of a design; name it.");
        if (request.Price is not null && request.Channel is null)
            context.Add("channel", FaultCodes.Required, "A price is on a channel; name it.");
        if (request.Line is not null && request.Plan is null)
            context.Add("plan", FaultCodes.Required, "A line is of a plan; name it.");
        if (request.Line is not null && request.Quote is not null)
            context.Add("line", FaultCodes.Unexpected, "One decision is looked at: a quote or a line of the plan; leave one out.");
        if (!LatinHypercube.Allows(request.Draws) && context.IsSound("/draws"))
            context.Add("draws", InputCodes.NotOneOf, "draws must be 1024, 4096 or 16384.");
    });
}
