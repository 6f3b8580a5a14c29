namespace PriceFloor.Pricing.Selling;

/// <summary>The kinds of work that a piece takes.</summary>
public enum PieceWork
{
    /// <summary>Making it, with the time that goes into rejected pieces.</summary>
    Making,

    /// <summary>Working pieces over.</summary>
    Rework,

    /// <summary>One-off work of the design, spread over the pieces expected of it.</summary>
    Development,

    /// <summary>Selling it on the channel.</summary>
    Selling,
}
