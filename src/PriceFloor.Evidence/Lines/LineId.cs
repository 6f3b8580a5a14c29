namespace PriceFloor.Evidence.Lines;

/// <summary>
/// A number that a shop gave: of an order, of a line. It is only ever compared: a sheet has it as text, the store keeps a number that says
/// whether two are the same and nothing else. Ids of a sheet never equal ids of the store.
/// </summary>
public readonly record struct LineId
{
    private LineId(string? text, ulong number) => (Text, Number) = (text, number);

    /// <summary>As the sheet has it; null for one of the store.</summary>
    public string? Text { get; }

    /// <summary>What the store keeps of it; 0 for one of a sheet.</summary>
    public ulong Number { get; }

    /// <summary>The id as a sheet has it.</summary>
    public static LineId OfText(string text) => new(text, 0);

    /// <summary>The id as the store keeps it.</summary>
    public static LineId OfNumber(ulong number) => new(null, number);

    /// <summary>No id is ever written out: it may lead to a buyer.</summary>
    public override string ToString() => nameof(LineId);
}
