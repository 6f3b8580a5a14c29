namespace PriceFloor.Evidence.Lines;

/// <summary>
/// A number that a shop gave: of an order, of a line. It is only ever compared: a sheet has it as text, the store keeps bytes that say
/// whether two are the same and nothing else. Ids of a sheet never equal ids of the store.
/// </summary>
public readonly record struct LineId
{
    private LineId(string? text, UInt128 bytes) => (Text, Bytes) = (text, bytes);

    /// <summary>As the sheet has it; null for one of the store.</summary>
    public string? Text { get; }

    /// <summary>What the store keeps of it, high bytes first; 0 for one of a sheet.</summary>
    public UInt128 Bytes { get; }

    /// <summary>The id as a sheet has it.</summary>
    public static LineId OfText(string text) => new(text, 0);

    /// <summary>The id as the store keeps it: up to 16 bytes.</summary>
    public static LineId OfBytes(UInt128 bytes) => new(null, bytes);

    /// <summary>No id is ever written out: it may lead to a buyer.</summary>
    public override string ToString() => nameof(LineId);
}
