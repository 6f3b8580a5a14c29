namespace PriceFloor.Evidence;

/// <summary>Few designs usually carry a studio.</summary>
public static class Carrying
{
    private const decimal Most = 0.7m;

    /// <summary>The fewest designs that together bring 70 % of the contribution, largest first, of equals by key.</summary>
    public static IReadOnlyList<string> Of(IEnumerable<DesignContribution> designs)
    {
        var all = designs.Where(design => design.Contribution > 0).OrderByDescending(design => design.Contribution)
            .ThenBy(design => design.Sku, StringComparer.Ordinal).ToList();
        var (least, sum, count) = (Most * all.Sum(design => design.Contribution), 0m, 0);
        while (count < all.Count && sum < least)
            sum += all[count++].Contribution;
        return [.. all[..count].Select(design => design.Sku)];
    }
}

/// <summary>What a design brings.</summary>
/// <param name="Sku">Its key.</param>
/// <param name="Contribution">Its contribution, unrounded.</param>
public sealed record DesignContribution(string Sku, decimal Contribution);
