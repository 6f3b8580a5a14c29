using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Prices;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.Demands;

/// <summary>What demand suggests for what is asked.</summary>
/// <param name="Least">v: what a piece must bring.</param>
/// <param name="Best">The price that brings most.</param>
/// <param name="Next">The step towards it.</param>
/// <param name="Expected">What the price in question brings.</param>
/// <param name="MakeUpTo">How many to make.</param>
/// <param name="Takes">How many the market takes.</param>
internal sealed record SuggestedPrices(decimal Least, Estimate? Best, NextPrice? Next, ExpectedAnswer? Expected, MakeUpTo? MakeUpTo,
    MarketTakes? Takes)
{
    private const decimal Few = 0.05m, Likely = 0.5m, Many = 0.95m;

    public static SuggestedPrices Of(PriceQuestion question, DemandQuery asked)
    {
        var (demand, piece) = (question.Demand, question.Piece);
        var least = Margin.Cost(piece, demand.Offer.Channel, asked.Aim);
        var time = demand.TimeOf(asked.Days);
        var best = question.Best(least, asked.Pieces, time);
        var next = best is { } found ? question.Next(found.Value, neverFalls: asked.Pieces is not null) : null;
        if ((asked.Price ?? demand.Offer.Price) is not { } price || demand.Curve(question.Sensitivity) is not { } curve)
            return new SuggestedPrices(least, best, next, null, null, MarketTakes.Of(demand, time));
        // At another price a week brings what so much of a week brings at the price that was asked.
        var scaled = time * curve.RateAt(price) / curve.Rate;
        return new SuggestedPrices(least, best, next, ExpectedAt(question, asked, price, time, scaled),
            MakeUpTo.Of(demand, piece, price, piece.Design.Seconds?.Price ?? 0, scaled), MarketTakes.Of(demand, scaled));
    }

    private static ExpectedAnswer? ExpectedAt(PriceQuestion question, DemandQuery asked, decimal price, decimal time, decimal scaled)
    {
        var (demand, money) = (question.Demand, question.Piece.Year.Currency);
        if (question.At(price) is not { } sales)
            return null;
        return new ExpectedAnswer
        {
            Price = Rounding.WithDecimals(price, money.Decimals),
            Days = asked.Days,
            Time = Rounding.Nearest(time, DemandRateAnswer.TimeDecimals),
            Few = demand.OrdersWithin(scaled, Few) ?? 0,
            Likely = demand.OrdersWithin(scaled, Likely) ?? 0,
            Many = demand.OrdersWithin(scaled, Many) ?? 0,
            Orders = sales.Orders,
            Contribution = money.Round(sales.Contribution),
            AboveFloor = money.Round(sales.AboveFloor),
            EarnedPerBenchHour = money.Round(sales.EarnedPerBenchHour),
        };
    }
}
