namespace PriceFloor.Statements;

/// <summary>The caller's description of sheets, since CSV does not describe itself.</summary>
public sealed record SheetReading
{
    /// <summary>True for the maker's own book of cash, whose lines may say themselves what they are.</summary>
    public bool IsCashBook { get; init; }

    /// <summary>True: columns separated by semicolons, decimal commas.</summary>
    public bool Semicolon { get; init; }

    /// <summary>The draft's currency, if it is known: its sign may be beside an amount.</summary>
    public string? Currency { get; init; }

    /// <summary>If absent, the order that a line of the file proves; a date that could be read in two ways is never guessed.</summary>
    public DateOrder? DateOrder { get; init; }

    public string? DateColumn { get; init; }

    /// <summary>Signed amounts: positive came in.</summary>
    public string? AmountColumn { get; init; }

    /// <summary>The column that says which way the money went; the amounts beside it need no sign.</summary>
    public string? DirectionColumn { get; init; }

    /// <summary>True: a positive amount went out.</summary>
    public bool PositiveIsOut { get; init; }

    /// <summary>Money that came in, if it has a column of its own.</summary>
    public string? InColumn { get; init; }

    /// <summary>Money that went out, if it has a column of its own; with or without a minus sign.</summary>
    public string? OutColumn { get; init; }

    /// <summary>If absent: every column with a general name for text, in their order.</summary>
    public string? TextColumn { get; init; }

    /// <summary>The bank's own id, unique in its account; a reference that the payer wrote is not one.</summary>
    public string? IdColumn { get; init; }

    public string? CurrencyColumn { get; init; }

    public string? AccountColumn { get; init; }
}

/// <summary>The order in which a sheet writes its dates; ISO 8601 (2027-03-01) is always read.</summary>
public enum DateOrder { YearMonthDay, DayMonthYear, MonthDayYear }
