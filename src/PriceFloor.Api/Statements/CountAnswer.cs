using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>How many lines, how much came in and how much went out.</summary>
/// <param name="Lines">Lines.</param>
/// <param name="In">Money that came in, in the currency of the answer.</param>
/// <param name="Out">Money that went out, as an amount above 0.</param>
public sealed record CountAnswer(int Lines, decimal In, decimal Out)
{
    public static CountAnswer Of(IEnumerable<Transaction> transactions, Currency money)
    {
        var count = Count.Of(transactions);
        return new CountAnswer(count.Lines, Exactly(count.In, money), Exactly(count.Out, money));
    }

    /// <summary>The bank's figure, with at least the currency's decimals; nothing is rounded away.</summary>
    public static decimal Exactly(decimal amount, Currency money) => Rounding.WithDecimals(amount, money.Decimals);
}
