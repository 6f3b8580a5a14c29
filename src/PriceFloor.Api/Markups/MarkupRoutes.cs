using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Markups;

public static class MarkupRoutes
{
    public static Results<JsonAnswer<MarkupAnswer>, Problem> Post(JsonBody<MarkupRequest> body, FromQuery<ComputeQuery> query, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var request = body.Value;
        var chain = ChainOf(request);
        var step = chain is null ? request.Values.Known >= 2 ? Markup.Of(request.Values) : null
            : chain.Found is { } hands ? MarkupChain.AsOneStep(hands)
            : null;
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
        var ofStep = step is null ? []
            : chain is null ? Workings.Of(request.Asked, request.SalesTax)
            : Workings.Of(request.Asked, request.SalesTax, request.Chain);
        return discounts is null ? ofStep
            : ofStep.Concat(Workings.Of(new DiscountSeries(request.Discounts!.Rates), discounts, fromNet: request.Discounts.Net is not null));
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
