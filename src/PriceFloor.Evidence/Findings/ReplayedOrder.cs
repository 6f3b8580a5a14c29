namespace PriceFloor.Evidence.Findings;

/// <summary>One order's fees: by the channel's terms, and as charged.</summary>
public sealed record ReplayedOrder(DateOnly On, int Pieces, decimal Paid, decimal Expected, decimal Charged)
{
    public decimal Difference => Charged - Expected;
}
