using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

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

/// <summary>The verdict on one listed price.</summary>
public sealed class PriceCheck
{
    internal PriceCheck(ChannelPrices prices, decimal price)
    {
        Prices = prices;
        Sale = Sale.Of(price, prices.Terms.Channel);
        var piece = prices.Floor.Piece;
        CarriesItsShare = Sale.Net.Reaches(piece.Floor);
        Verdict = !CarriesItsShare ? Verdict.BelowFloor
            : prices.Terms.Channel.Sells == Sells.Retail && !Sale.BeforeTax.Reaches(prices.Floor.Target) ? Verdict.BelowTarget
            : Verdict.MeetsTarget;
        EarnedPerBenchHour = (Sale.Net - piece.Materials + piece.SecondsCredit) / piece.BenchHours;
    }

    public ChannelPrices Prices { get; }

    public Sale Sale { get; }

    public Verdict Verdict { get; }

    /// <summary>net(p) reaches the floor.</summary>
    public bool CarriesItsShare { get; }

    /// <summary>net(p) less the floor; negative when short.</summary>
    public decimal AboveFloor => Sale.Net - Prices.Floor.Piece.Floor;

    /// <summary>What the price really pays for an hour at the bench.</summary>
    public decimal EarnedPerBenchHour { get; }
}
