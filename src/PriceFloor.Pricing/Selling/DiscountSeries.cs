using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>A series of trade discounts, one on what the other leaves. 140 less 20 % less 15 % is 95.20, as one discount 32 %.</summary>
public sealed class DiscountSeries(IReadOnlyList<decimal> rates)
{
    private readonly DiscountFormulas<Figure> _formulas = new(rates);

    /// <summary>Each in order, as a share of what the one before leaves.</summary>
    public IReadOnlyList<decimal> Rates { get; } = rates;

    /// <summary>What is left of 1.</summary>
    public decimal Factor => _formulas.Factor.Value;

    /// <summary>The one discount that comes to the same.</summary>
    public decimal Single => _formulas.Single.Value;

    /// <summary>What these discounts make of a list price.</summary>
    public Discounted FromList(decimal list) => new(list, _formulas.NetOf(list).Value);

    /// <summary>The list price from which these discounts make a net price. Refused with <c>too-large</c> if they leave next to nothing.</summary>
    public Outcome<Discounted> FromNet(decimal net) => Factor < 0.000000000001m
        ? new Fault("/discounts/rates", FaultCodes.TooLarge,
            "These discounts leave next to nothing of a price, so no exact list price can be named; check the rates (0.2 is 20 %).")
        : new Discounted(_formulas.ListOf(net).Value, net);
}

/// <summary>A list price and what is paid of it. Unrounded.</summary>
public sealed record Discounted(decimal List, decimal Net)
{
    /// <summary>List less net.</summary>
    public decimal Discount => DiscountFormulas<Figure>.Discount(List, Net).Value;
}
