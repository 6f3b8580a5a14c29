using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Markups;

/// <summary>A series of discounts, computed.</summary>
public sealed record DiscountAnswer
{
    /// <summary>The list price.</summary>
    public required decimal List { get; init; }

    /// <summary>The price paid.</summary>
    public required decimal Net { get; init; }

    /// <summary>List less net.</summary>
    public required decimal Discount { get; init; }

    /// <summary>Net over list.</summary>
    public required decimal Factor { get; init; }

    /// <summary>The single discount that is equal to all of them.</summary>
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
