using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The verdict on one listed price.</summary>
public sealed class PriceCheck
{
    internal PriceCheck(ChannelPrices prices, decimal price)
    {
        Prices = prices;
        Sale = Sale.Of(price, prices.Terms.Channel);
        Verdict = prices.VerdictOf(Sale);
        var formulas = new CheckFormulas<Figure>(prices, Sale);
        (AboveFloor, EarnedPerBenchHour) = (formulas.AboveFloor.Value, formulas.EarnedPerBenchHour.Value);
    }

    public ChannelPrices Prices { get; }

    public Sale Sale { get; }

    public Verdict Verdict { get; }

    /// <summary>net(p) reaches the floor on the channel.</summary>
    public bool CarriesItsShare => Verdict != Verdict.BelowFloor;

    /// <summary>net(p) less the floor on the channel; negative when short.</summary>
    public decimal AboveFloor { get; }

    /// <summary>What the price is short of the floor on the channel; 0 if it carries its share.</summary>
    public decimal ShortBy => decimal.Max(0, -AboveFloor);

    /// <summary>The most that may be taken off it; null if it does not carry its share even with nothing taken off.</summary>
    public DiscountRoom? DiscountRoom => DiscountRoom.Of(this);

    /// <summary>What the price really pays for an hour of making and selling.</summary>
    public decimal EarnedPerBenchHour { get; }
}

/// <summary>What a listed price does for the year.</summary>
public enum Verdict
{
    /// <summary>This sale does not carry its part of the year.</summary>
    BelowFloor,

    /// <summary>It does, but it breaks the studio's own price rule and undercuts shops that buy wholesale.</summary>
    BelowTarget,

    /// <summary>It carries its part and keeps the rule.</summary>
    MeetsTarget,
}
