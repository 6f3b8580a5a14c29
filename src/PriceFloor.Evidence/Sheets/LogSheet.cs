using PriceFloor.Evidence.Lines;
using PriceFloor.Statements;

namespace PriceFloor.Evidence.Sheets;

/// <summary>How one sheet of movements or bench entries is written, since a sheet does not say so itself.</summary>
public sealed record LogSheet
{
    /// <summary>Headings as the caller names them; a field that is not here has a column of its own name, or none.</summary>
    public IReadOnlyDictionary<LogField, string> Columns { get; init; } = new Dictionary<LogField, string>();

    /// <summary>True: semicolons between columns, decimal commas.</summary>
    public bool Semicolon { get; init; }

    /// <summary>If absent, the order that a line of the sheet proves; a date that could be read in two ways is never guessed.</summary>
    public DateOrder? DateOrder { get; init; }

    /// <summary>What a line is that does not say so: sold, unless the caller says otherwise.</summary>
    public MovementKind What { get; init; } = MovementKind.Sold;

    /// <summary>The channel of lines that do not say it.</summary>
    public string? Channel { get; init; }

    /// <summary>Words in the column of the status whose lines count in nothing; capitals do not matter.</summary>
    public IReadOnlyList<string> Cancelled { get; init; } = [];

    /// <summary>Whether a status is one of those words.</summary>
    internal bool IsCancelled(string status) => status.Length > 0 && Cancelled.Contains(status, StringComparer.OrdinalIgnoreCase);
}
