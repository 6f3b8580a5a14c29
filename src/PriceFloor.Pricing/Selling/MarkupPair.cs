namespace PriceFloor.Pricing.Selling;

/// <summary>Which two of the values decide a step.</summary>
public enum MarkupPair
{
    None,
    CostAndPrice,
    CostAndProfit,
    PriceAndProfit,
    CostAndMarkup,
    CostAndMargin,
    PriceAndMargin,
    PriceAndMarkup,
    ProfitAndMarkup,
    ProfitAndMargin,
}
