namespace PriceFloor.Api.Demands;

/// <summary>What to expect at a price.</summary>
public sealed record ExpectedAnswer
{
    /// <summary>The price: that of the request, else what is asked.</summary>
    /// <example>52.00</example>
    public required decimal Price { get; init; }

    /// <summary>Days from the day after the last that counts.</summary>
    /// <example>56</example>
    public required int Days { get; init; }

    /// <summary>Weighted weeks, or events, in these days.</summary>
    /// <example>8.00</example>
    public required decimal Time { get; init; }

    /// <summary>Orders in these days of which one time in twenty brings fewer.</summary>
    /// <example>6</example>
    public required int Few { get; init; }

    /// <summary>Orders that are as likely passed as not.</summary>
    /// <example>11</example>
    public required int Likely { get; init; }

    /// <summary>Orders of which one time in twenty brings more.</summary>
    /// <example>19</example>
    public required int Many { get; init; }

    /// <summary>Orders in one week that weighs 1, or an event.</summary>
    /// <example>1.4635</example>
    public required decimal Orders { get; init; }

    /// <summary>What these leave after materials.</summary>
    /// <example>58.59</example>
    public required decimal Contribution { get; init; }

    /// <summary>What these leave above the floor; below 0 where they do not carry their share.</summary>
    /// <example>-12.08</example>
    public required decimal AboveFloor { get; init; }

    /// <summary>What an hour of making and selling earns.</summary>
    /// <example>37.31</example>
    public required decimal EarnedPerBenchHour { get; init; }
}
