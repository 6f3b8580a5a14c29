namespace PriceFloor.Pricing.Selling;

/// <summary>What an order made for one buyer takes besides its runs.</summary>
public sealed record ExtraWork
{
    /// <summary>Nothing besides.</summary>
    public static readonly ExtraWork None = new();

    /// <summary>Hours of design, drawing, fitting, travel: an hour not at the bench costs what an hour at the bench costs.</summary>
    public IReadOnlyList<decimal> Hours { get; init; } = [];

    /// <summary>Rounds of changes that the price includes.</summary>
    public decimal RevisionsIncluded { get; init; }

    /// <summary>Hours for each of them.</summary>
    public decimal RevisionHours { get; init; }

    /// <summary>Outside work, travel, rights: paid to others and added as it is.</summary>
    public IReadOnlyList<BoughtWork> Bought { get; init; } = [];
}

/// <summary>Something bought for one order: 180.00 once, or 84 miles at 0.70.</summary>
/// <param name="Amount">Money, or how much of it.</param>
/// <param name="Rate">What one costs.</param>
public sealed record BoughtWork(decimal Amount, decimal Rate = 1);
