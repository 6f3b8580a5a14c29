using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

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

    public static DiscountAnswer Of(DiscountSeries series, Discounted found, int decimals) => new()
    {
        List = Rounding.Nearest(found.List, decimals),
        Net = Rounding.Nearest(found.Net, decimals),
        Discount = Rounding.Nearest(found.Discount, decimals),
        Factor = Answers.Ratio(series.Factor),
        Single = Answers.Ratio(series.Single),
    };
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
    [PresentWith(nameof(Cost))]
    public decimal? Markup { get; init; }

    /// <summary>Profit over price; null where the price is nothing.</summary>
    [PresentWith(nameof(Price))]
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

    /// <summary>With workings=true: each quantity in order, with 12 decimals at most.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

public static class MarkupRoutes
{
    public static Results<JsonAnswer<MarkupAnswer>, Problem> Post(JsonBody<MarkupRequest> body, FromQuery<ComputeQuery> query, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var request = body.Value;
        var chain = ChainOf(request);
        var step = chain is null ? request.Values.Known >= 2 ? Markup.Of(request.Values) : null : chain.Found is { } hands ? MarkupChain.Whole(hands) : null;
        var taxed = step?.Found is { } priced && request.SalesTax is { } tax ? TaxedPrice.Of(priced.Price, tax) : null;
        var discounts = request.Discounts is { } asked ? DiscountsOf(asked) : null;
        if (new[] { chain?.Faults, step?.Faults, taxed?.Faults, discounts?.Faults }.SelectMany(faults => faults ?? []).FirstOrDefault() is { } fault)
            return Problem.CannotCompute(fault.Code, fault.Detail);
        return JsonAnswer.Of(AnswerOf(request, chain?.Value, step?.Value, taxed?.Value, discounts?.Value) with
        {
            Workings = WorkingAnswer.Of(query.Value.Workings, () => WorkingsOf(request, chain?.Value, step?.Value, discounts?.Value)),
        });
    }

    private static MarkupAnswer AnswerOf(MarkupRequest request, List<Markup>? chain, Markup? step, TaxedPrice? taxed, Discounted? discounts)
    {
        var decimals = request.Currency is { } code ? Currency.Of(code).Decimals : 2;
        var whole = step is null ? null : MarkupStepAnswer.Of(step, null, decimals);
        return new MarkupAnswer
        {
            Cost = whole?.Cost,
            Price = whole?.Price,
            Markup = whole?.Markup,
            Margin = whole?.Margin,
            Profit = whole?.Profit,
            PriceWithTax = taxed is null ? null : Rounding.Nearest(taxed.WithTax, decimals),
            Chain = chain?.Select((one, i) => MarkupStepAnswer.Of(one, request.Chain[i].Name, decimals)).ToList(),
            Discounts = discounts is null ? null : DiscountAnswer.Of(new DiscountSeries(request.Discounts!.Rates), discounts, decimals),
        };
    }

    private static IEnumerable<Working> WorkingsOf(MarkupRequest request, List<Markup>? chain, Markup? step, Discounted? discounts)
    {
        var ofStep = step is null ? [] : chain is null ? Workings.Of(request.Asked, request.SalesTax) : Workings.Of(request.Asked, request.SalesTax, request.Chain);
        return discounts is null ? ofStep : ofStep.Concat(Workings.Of(new DiscountSeries(request.Discounts!.Rates), discounts, fromNet: request.Discounts.Net is not null));
    }

    private static Outcome<List<Markup>>? ChainOf(MarkupRequest request) =>
        request.Chain.Count == 0 ? null
        : request.Values.Cost is { } cost ? MarkupChain.From(cost, request.Chain)
        : MarkupChain.BackFrom(request.Values.Price!.Value, request.Chain);

    private static Outcome<Discounted> DiscountsOf(DiscountRequest request)
    {
        var series = new DiscountSeries(request.Rates);
        return request.List is { } list ? series.FromList(list) : series.FromNet(request.Net!.Value);
    }
}
