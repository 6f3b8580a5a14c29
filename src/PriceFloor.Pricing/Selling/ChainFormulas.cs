using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>What one hand of a chain does to a price.</summary>
internal static class ChainFormulas<T> where T : IFigure<T>
{
    public static T Forward(ChainStep step, T cost) => step switch
    {
        { Markup: { } markup } => cost * (1 + (T)markup),
        { Margin: { } margin } => cost / (1 - (T)margin),
        _ => cost * (step.Multiple ?? 1),
    };

    public static T Backward(ChainStep step, T price) => step switch
    {
        { Markup: { } markup } => price / (1 + (T)markup),
        { Margin: { } margin } => price * (1 - (T)margin),
        _ => price / (step.Multiple ?? 1),
    };
}
