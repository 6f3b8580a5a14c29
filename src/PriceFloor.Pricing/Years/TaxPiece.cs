namespace PriceFloor.Pricing.Years;

/// <summary>A stretch of profit over which every levy is a straight line.</summary>
/// <param name="From">The profit at which it starts.</param>
/// <param name="Paid">Each levy there.</param>
/// <param name="Rates">The rate of the band that each levy's base lies in; 0 if it is not above zero.</param>
/// <param name="PaidOfOneMore">What each levy takes of one more unit of profit.</param>
internal sealed record TaxPiece(decimal From, IReadOnlyList<decimal> Paid, IReadOnlyList<decimal> Rates, IReadOnlyList<decimal> PaidOfOneMore)
{
    public decimal Kept { get; } = From - Paid.Sum();

    public decimal KeptOfOneMore { get; } = 1 - PaidOfOneMore.Sum();
}
