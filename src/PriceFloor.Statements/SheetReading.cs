namespace PriceFloor.Statements;

/// <summary>What the caller says about sheets, since CSV says nothing about itself.</summary>
public sealed record SheetReading
{
    /// <summary>True: columns separated by semicolons, decimal commas.</summary>
    public bool Semicolon { get; init; }

    /// <summary>Absent: ISO dates only; one that could be read in two ways is never guessed.</summary>
    public DateOrder? DateOrder { get; init; }

    public string? DateColumn { get; init; }

    /// <summary>Signed amounts: above zero came in.</summary>
    public string? AmountColumn { get; init; }

    /// <summary>Money that came in, where it has a column of its own.</summary>
    public string? InColumn { get; init; }

    /// <summary>Money that went out, where it has a column of its own; with or without a minus sign.</summary>
    public string? OutColumn { get; init; }

    /// <summary>Absent: every column that a general word for text names, in their order.</summary>
    public string? TextColumn { get; init; }

    /// <summary>The bank's own id, unique in its account; what a payer wrote as a reference is none.</summary>
    public string? IdColumn { get; init; }

    public string? CurrencyColumn { get; init; }

    public string? AccountColumn { get; init; }
}

/// <summary>In which order a sheet writes its dates; ISO 8601 (2027-03-01) is always read.</summary>
public enum DateOrder { YearMonthDay, DayMonthYear, MonthDayYear }
