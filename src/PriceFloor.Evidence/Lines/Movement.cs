namespace PriceFloor.Evidence.Lines;

/// <summary>
/// One line of what happened to pieces of a design. Its names are keys of stored documents; amounts are exact. An object, not a value: it is
/// large, and stands in many lists.
/// </summary>
public sealed record Movement
{
    /// <summary>What the sheet or program that says so is called.</summary>
    public required string Source { get; init; }

    /// <summary>The local day.</summary>
    public required DateOnly On { get; init; }

    public required MovementKind What { get; init; }

    /// <summary>The design's key.</summary>
    public required string Sku { get; init; }

    /// <summary>The channel's key; null where the studio is meant.</summary>
    public string? Channel { get; init; }

    /// <summary>ISO 4217 code of its amounts; null: the channel's.</summary>
    public string? Currency { get; init; }

    /// <summary>Whole pieces, at least 1; of a count, at least 0.</summary>
    public required int Pieces { get; init; }

    /// <summary>
    /// What all pieces of the line brought, after discounts, with or without sales tax as the channel says. The whole line's, as three pieces for
    /// 10.00 have no exact price each. Null where nothing was paid for.
    /// </summary>
    public decimal? Paid { get; init; }

    /// <summary>The price asked for one piece that day; null if the line does not say.</summary>
    public decimal? Listed { get; init; }

    /// <summary>The order; null: an order of its own.</summary>
    public LineId? Order { get; init; }

    /// <summary>This line's part of the fees on its order; null if not recorded.</summary>
    public decimal? Fees { get; init; }

    /// <summary>This line's part of what the order's buyer paid for shipping; null if not recorded.</summary>
    public decimal? ShippingCharged { get; init; }

    /// <summary>This line's part of what shipping the order cost; null if not recorded.</summary>
    public decimal? ShippingCost { get; init; }

    public Grade Grade { get; init; }

    /// <summary>Whether what came back can be sold again; true where a line does not say.</summary>
    public bool Resale { get; init; } = true;

    /// <summary>The fair's name.</summary>
    public string? Stall { get; init; }

    /// <summary>The piece itself, such as "7/25"; null: the first made is the first gone.</summary>
    public string? Piece { get; init; }

    /// <summary>Where it stands in the log; unique. Of equal days the lower came first.</summary>
    public required long Position { get; init; }

    /// <summary>What one piece brought, unrounded; null where nothing was paid for.</summary>
    public decimal? Price => Paid / Pieces;
}
