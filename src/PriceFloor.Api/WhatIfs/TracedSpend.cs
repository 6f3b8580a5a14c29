namespace PriceFloor.Api.WhatIfs;

/// <summary>Prices of stock and the expense lines traced to pieces say the same thing twice: what materials cost.</summary>
internal static class TracedSpend
{
    /// <summary>Why one of them moved and the other did not; null if both did or neither.</summary>
    public static string? StaysBehind(CostProfile now, CostProfile changed)
    {
        if (SpentIn(now) is null && SpentIn(changed) is null)
            return null;
        var prices = now.Materials.ToDictionary(line => line.Material, line => line.Price);
        var pricesMove = changed.Materials.Any(line => prices.TryGetValue(line.Material, out var price) && price != line.Price);
        var spendMoves = SpentIn(now) != SpentIn(changed);
        return pricesMove == spendMoves ? null
            : pricesMove ? "Prices of materials change and what is bought for pieces does not; change the expense lines traced to pieces too."
            : "What is bought for pieces changes and no price of a material does; change the prices of the materials too, if these rise.";
    }

    /// <summary>What the year spends on lines traced to pieces; null if there are none.</summary>
    private static decimal? SpentIn(CostProfile profile) =>
        profile.Expenses.Where(line => line.TracedTo == TracedTo.Piece).Select(line => (decimal?)Annual.Amount(line)).Aggregate((decimal?)null,
            (sum, amount) => (sum ?? 0) + amount);
}
