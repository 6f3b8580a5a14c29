using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Statements;

/// <summary>
/// How the sheets of one account are written: the columns, the dates, the separator. Everything that is absent is found by general words.
/// </summary>
public sealed record StatementLayout
{
    /// <summary>The longest heading of a column.</summary>
    public const int ColumnLength = 200;

    /// <summary>A name for people.</summary>
    /// <example>The card that we pay material with</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>The separator of columns, and with it the decimal mark; comma if absent.</summary>
    public StatementDialect? Dialect { get; init; }

    /// <summary>The order of day and month; if absent, the order that a line of the file proves.</summary>
    public DateOrder? DateOrder { get; init; }

    /// <summary>Heading of the column with the day.</summary>
    /// <example>Booked</example>
    [MaxLength(ColumnLength)]
    public string? DateColumn { get; init; }

    /// <summary>Heading of the column with the text.</summary>
    /// <example>Details</example>
    [MaxLength(ColumnLength)]
    public string? TextColumn { get; init; }

    /// <summary>Heading of the column with the amounts. Without directionColumn they have signs: positive came in.</summary>
    /// <example>Amount</example>
    [MaxLength(ColumnLength)]
    public string? AmountColumn { get; init; }

    /// <summary>Heading of the column that says which way the money went, in words such as debit and credit, D and C, out and in.</summary>
    /// <example>Debit or credit</example>
    [MaxLength(ColumnLength)]
    public string? DirectionColumn { get; init; }

    /// <summary>True if a positive amount is money that went out, as on the statements of some cards. False if absent.</summary>
    public bool? PositiveIsOut { get; init; }

    /// <summary>Heading of the column with money that came in, if it has one of its own.</summary>
    /// <example>Paid in</example>
    [MaxLength(ColumnLength)]
    public string? InColumn { get; init; }

    /// <summary>Heading of the column with money that went out, if it has one of its own.</summary>
    /// <example>Paid out</example>
    [MaxLength(ColumnLength)]
    public string? OutColumn { get; init; }

    /// <summary>Heading of the column with the bank's own id.</summary>
    /// <example>Transaction number</example>
    [MaxLength(ColumnLength)]
    public string? IdColumn { get; init; }

    /// <summary>Heading of the column with the currency.</summary>
    /// <example>Currency</example>
    [MaxLength(ColumnLength)]
    public string? CurrencyColumn { get; init; }

    /// <summary>Heading of the column with the account.</summary>
    /// <example>Account</example>
    [MaxLength(ColumnLength)]
    public string? AccountColumn { get; init; }

    private bool SaysMoney => AmountColumn is not null || DirectionColumn is not null || InColumn is not null || OutColumn is not null
        || PositiveIsOut is not null;

    /// <summary>The rules between its fields.</summary>
    public IEnumerable<Fault> Faults()
    {
        if (this with { Name = null } == new StatementLayout())
            yield return new("", FaultCodes.Required, "A layout names a column, a dialect or an order of dates; without one it says nothing.");
        var hasOwnColumns = InColumn is not null || OutColumn is not null;
        if (hasOwnColumns && AmountColumn is not null)
            yield return new("/amountColumn", FaultCodes.Unexpected, "Name amountColumn, or inColumn and outColumn, not both.");
        if (hasOwnColumns && DirectionColumn is not null)
            yield return new("/directionColumn", FaultCodes.Unexpected, "directionColumn goes with amountColumn; inColumn and outColumn need none.");
        if (PositiveIsOut is not null && (hasOwnColumns || DirectionColumn is not null))
            yield return new("/positiveIsOut", FaultCodes.Unexpected,
                "positiveIsOut is for amounts with signs; other columns say which way the money went.");
    }

    /// <summary>This layout where it says something, else the other one. The columns for money go together.</summary>
    public StatementLayout Over(StatementLayout other)
    {
        var money = SaysMoney ? this : other;
        return new StatementLayout
        {
            Name = Name ?? other.Name,
            Dialect = Dialect ?? other.Dialect,
            DateOrder = DateOrder ?? other.DateOrder,
            DateColumn = DateColumn ?? other.DateColumn,
            TextColumn = TextColumn ?? other.TextColumn,
            AmountColumn = money.AmountColumn,
            DirectionColumn = money.DirectionColumn,
            PositiveIsOut = money.PositiveIsOut,
            InColumn = money.InColumn,
            OutColumn = money.OutColumn,
            IdColumn = IdColumn ?? other.IdColumn,
            CurrencyColumn = CurrencyColumn ?? other.CurrencyColumn,
            AccountColumn = AccountColumn ?? other.AccountColumn,
        };
    }

    /// <summary>The settings for reading one sheet.</summary>
    /// <param name="currency">The draft's currency, if it is known.</param>
    public SheetReading AsReading(string? currency) => new()
    {
        Semicolon = Dialect == StatementDialect.Semicolon,
        Currency = currency,
        DateOrder = DateOrder,
        DateColumn = DateColumn,
        AmountColumn = AmountColumn,
        DirectionColumn = DirectionColumn,
        PositiveIsOut = PositiveIsOut ?? false,
        InColumn = InColumn,
        OutColumn = OutColumn,
        TextColumn = TextColumn,
        IdColumn = IdColumn,
        CurrencyColumn = CurrencyColumn,
        AccountColumn = AccountColumn,
    };
}

/// <summary>The separator between columns; the decimal mark goes with it.</summary>
public enum StatementDialect
{
    /// <summary>Commas between columns, decimal points.</summary>
    Comma,

    /// <summary>Semicolons between columns, decimal commas.</summary>
    Semicolon,
}
