using System.Text.Json.Serialization;
using PriceFloor.Evidence.Decisions;
using PriceFloor.Evidence.Statistics;
using PriceFloor.Evidence.WholeShelf;

namespace PriceFloor.Api.ShelfLists;

/// <summary>One design beside the others. GET /v1/designs/{sku}/evidence has all that is behind it.</summary>
public sealed record ShelfLineAnswer
{
    private const int CoverDecimals = 1;

    /// <summary>The design's key.</summary>
    /// <example>RB-014</example>
    public required string Sku { get; init; }

    /// <summary>Its name.</summary>
    /// <example>River drop pendant</example>
    public required string? Name { get; init; }

    /// <summary>Pieces sold, less those that came back.</summary>
    /// <example>90</example>
    public required int Sold { get; init; }

    /// <summary>What of it reached the studio.</summary>
    /// <example>4324.23</example>
    public required decimal Take { get; init; }

    /// <summary>That less the materials of the design as found; null if its draft has no floor.</summary>
    /// <example>3602.92</example>
    public required decimal? Contribution { get; init; }

    /// <summary>What an hour at the bench earned with the minutes as found; null where nothing stayed sold.</summary>
    /// <example>37.31</example>
    public required decimal? Earned { get; init; }

    /// <summary>The lower end of its range.</summary>
    /// <example>36.90</example>
    public required decimal? EarnedLow { get; init; }

    /// <summary>The upper end.</summary>
    /// <example>37.72</example>
    public required decimal? EarnedHigh { get; init; }

    /// <summary>Its share of what all designs here contribute; null if they contribute nothing.</summary>
    /// <example>0.31</example>
    public required decimal? ShareOfContribution { get; init; }

    /// <summary>Its share of the bench hours of what was sold.</summary>
    /// <example>0.37</example>
    public required decimal? ShareOfHours { get; init; }

    /// <summary>The first share over the second: above 1 it carries others.</summary>
    /// <example>0.8378</example>
    public required decimal? Pull { get; init; }

    /// <summary>Sold, of those made; null if it is not known what was made.</summary>
    /// <example>0.7143</example>
    public required decimal? SellThrough { get; init; }

    /// <summary>By this age half of its pieces are sold; null if never so far.</summary>
    /// <example>83</example>
    public required int? DaysToSell { get; init; }

    /// <summary>Pieces on hand at all places; null if it is not known.</summary>
    /// <example>31</example>
    public required int? OnHand { get; init; }

    /// <summary>For so many weeks these last.</summary>
    /// <example>18.0</example>
    public required decimal? Cover { get; init; }

    /// <summary>The age in days of the oldest piece on hand.</summary>
    /// <example>215</example>
    public required int? Oldest { get; init; }

    /// <summary>What the decision rests on, as pointers into the design's evidence.</summary>
    /// <example>["#/findings/0", "#/take"]</example>
    public required IReadOnlyList<string> Because { get; init; }

    /// <summary>One word that the evidence suggests.</summary>
    public required DecisionWord Decision { get; init; }

    /// <summary>With drop: the design whose demand is not met and which earns most an hour; its hours would go there.</summary>
    /// <example>RB-020</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Instead { get; init; }

    public static ShelfLineAnswer Of(ShelfLine line)
    {
        var design = line.Design;
        var (money, take, found) = (design.Known.Stored.Year.Currency, design.Take, design.AsFound.Found);
        var range = design.HasMinutesRange ? design.EarnedRange : null;
        return new ShelfLineAnswer
        {
            Sku = line.Sku,
            Name = design.Known.Stored.Design.Name,
            Sold = take?.Pieces ?? 0,
            Take = money.Round(take?.Net ?? 0),
            Contribution = take is null || found is null ? null : money.Round(take.Contribution(found)),
            Earned = take is null || found is null ? null : Money(take.Earned(found)),
            EarnedLow = Money(range?.Low),
            EarnedHigh = Money(range?.High),
            ShareOfContribution = Share(line.ShareOfContribution),
            ShareOfHours = Share(line.ShareOfHours),
            Pull = Share(line.Pull),
            SellThrough = Share(design.SellThrough),
            DaysToSell = design.DaysToSell,
            OnHand = design.Shelf.IsKnown ? design.Shelf.OnHand : null,
            Cover = design.CoverWeeks is { } weeks ? Rounding.Nearest(weeks, CoverDecimals) : null,
            Oldest = line.Oldest,
            Because = line.Decision.BecauseIn(design),
            Decision = line.Decision.Decision.Word,
            Instead = line.Instead,
        };

        decimal? Money(decimal? amount) => amount is { } exact ? money.Round(exact) : null;
    }

    private static decimal? Share(decimal? share) => share is { } exact ? Rounding.Nearest(exact, Estimate.ShareDecimals) : null;
}
