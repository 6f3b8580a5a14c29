using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Pricing;

namespace PriceFloor.Api.Markups;

/// <summary>One step from cost to price, whole. Money to the nearest, shares up to six decimals.</summary>
public sealed record MarkupStepAnswer
{
    /// <summary>The step's name.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Name { get; init; }

    /// <summary>What is paid for the piece.</summary>
    public required decimal Cost { get; init; }

    /// <summary>What it sells for, before tax.</summary>
    public required decimal Price { get; init; }

    /// <summary>Profit over cost; null where the cost is nothing.</summary>
    public decimal? Markup { get; init; }

    /// <summary>Profit over price; null where the price is nothing.</summary>
    public decimal? Margin { get; init; }

    /// <summary>Price less cost.</summary>
    public required decimal Profit { get; init; }

    public static MarkupStepAnswer Of(Markup markup, string? name, int decimals) => new()
    {
        Name = name,
        Cost = Rounding.Nearest(markup.Cost, decimals),
        Price = Rounding.Nearest(markup.Price, decimals),
        Markup = markup.OnCost is { } onCost ? Answers.Ratio(onCost) : null,
        Margin = markup.OnPrice is { } onPrice ? Answers.Ratio(onPrice) : null,
        Profit = Rounding.Nearest(markup.Profit, decimals),
    };
}

/// <summary>A series of discounts, computed.</summary>
public sealed record DiscountAnswer
{
    /// <summary>The list price.</summary>
    public required decimal List { get; init; }

    /// <summary>What is paid.</summary>
    public required decimal Net { get; init; }

    /// <summary>List less net.</summary>
    public required decimal Discount { get; init; }

    /// <summary>Net over list.</summary>
    public required decimal Factor { get; init; }

    /// <summary>The one discount that comes to the same.</summary>
    public required decimal Single { get; init; }
}

/// <summary>Cost, price, markup, margin and profit; the chain and the discounts where asked for.</summary>
public sealed record MarkupAnswer
{
    /// <summary>The whole step from first cost to last price; absent where only discounts were asked for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Cost { get; init; }

    /// <summary>Before tax.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Price { get; init; }

    /// <summary>Profit over cost; null where the cost is nothing.</summary>
    public decimal? Markup { get; init; }

    /// <summary>Profit over price; null where the price is nothing.</summary>
    public decimal? Margin { get; init; }

    /// <summary>Price less cost.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Profit { get; init; }

    /// <summary>With salesTax: what the buyer pays.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? PriceWithTax { get; init; }

    /// <summary>Each hand of the chain.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<MarkupStepAnswer>? Chain { get; init; }

    /// <summary>The discounts.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DiscountAnswer? Discounts { get; init; }
}

public static class MarkupRoutes
{
    public static Results<Ok<MarkupAnswer>, Problem> Post(JsonBody<MarkupRequest> body, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var request = body.Value;
        var decimals = request.Currency is { } code ? Currency.Of(code).Decimals : 2;
        var chain = ChainOf(request);
        var step = chain?.Found is { } hands ? (Outcome<Markup>)new Markup(hands[0].Cost, hands[^1].Price) : request.Values.Known >= 2 ? Markup.Of(request.Values) : null;
        var discounts = request.Discounts is { } asked ? DiscountsOf(asked, decimals) : default;
        if ((chain?.Faults ?? []).Concat(step?.Faults ?? []).Concat(discounts.Fault is null ? [] : [discounts.Fault]).FirstOrDefault() is { } fault)
            return Problem.CannotCompute(fault.Code, fault.Detail);

        var whole = step is null ? null : MarkupStepAnswer.Of(step.Value, null, decimals);
        return TypedResults.Ok(new MarkupAnswer
        {
            Cost = whole?.Cost,
            Price = whole?.Price,
            Markup = whole?.Markup,
            Margin = whole?.Margin,
            Profit = whole?.Profit,
            PriceWithTax = step is not null && request.SalesTax is { } tax ? Rounding.Nearest(step.Value.Price * (1 + tax.Rate), decimals) : null,
            Chain = chain?.Value.Select((one, i) => MarkupStepAnswer.Of(one, request.Chain[i].Name, decimals)).ToList(),
            Discounts = discounts.Answer,
        });
    }

    private static Outcome<List<Markup>>? ChainOf(MarkupRequest request) =>
        request.Chain.Count == 0 ? null
        : request.Values.Cost is { } cost ? MarkupChain.From(cost, request.Chain)
        : MarkupChain.BackFrom(request.Values.Price!.Value, request.Chain);

    private static (DiscountAnswer? Answer, Fault? Fault) DiscountsOf(DiscountRequest request, int decimals)
    {
        var series = new DiscountSeries(request.Rates);
        var whole = request.List is { } list ? new Markup(list * series.Factor, list) : series.FromNet(request.Net!.Value);
        return whole.Found is not { } found ? (null, whole.Faults[0]) : (new DiscountAnswer
        {
            List = Rounding.Nearest(found.Price, decimals),
            Net = Rounding.Nearest(found.Cost, decimals),
            Discount = Rounding.Nearest(found.Profit, decimals),
            Factor = Answers.Ratio(series.Factor),
            Single = Answers.Ratio(series.Single),
        }, null);
    }
}
