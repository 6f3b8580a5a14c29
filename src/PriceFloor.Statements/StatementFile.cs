namespace PriceFloor.Statements;

/// <summary>One file after reading: the statements of one or more accounts, and the lines that could not be read.</summary>
public sealed record StatementFile
{
    public required StatementFormat Format { get; init; }

    public required IReadOnlyList<AccountStatement> Statements { get; init; }

    /// <summary>Lines that could not be read; the others are valid.</summary>
    public required IReadOnlyList<RefusedLine> Refused { get; init; }

    /// <summary>True for a sheet in which only the sign of an amount says which way the money went.</summary>
    public bool IsSigned { get; init; }

    /// <summary>The lines that failed, if every line did: then the file as a whole was not understood. Else none.</summary>
    public IEnumerable<RefusedLine> WhollyFailed => Statements.Any(statement => statement.Transactions.Count > 0) ? []
        : Refused.Where(line => LineCodes.IsFailure(line.Code));
}

/// <summary>The open formats that are read, recognised by content.</summary>
public enum StatementFormat
{
    /// <summary>A sheet with named columns, RFC 4180.</summary>
    Csv,

    /// <summary>OFX 1.x, in SGML.</summary>
    OfxSgml,

    /// <summary>OFX 2.x, in XML.</summary>
    OfxXml,

    /// <summary>ISO 20022 camt.053, the bank to customer statement.</summary>
    Camt053,
}

/// <summary>The statement of one account in one file.</summary>
/// <param name="Account">The account's name in the file, else the name given for the file.</param>
/// <param name="From">First day covered, if the file gives it.</param>
/// <param name="To">Last day covered, if the file gives it.</param>
/// <param name="Transactions">In the order of the file.</param>
public sealed record AccountStatement(string Account, DateOnly? From, DateOnly? To, IReadOnlyList<Transaction> Transactions)
{
    /// <summary>True for money that never meets a bank: it covers the days of the other accounts, however few its lines.</summary>
    public bool IsCashBook { get; init; }
}

/// <summary>Money that came in or went out.</summary>
public sealed record Transaction
{
    /// <summary>The line of a sheet or of OFX SGML, the count of the entry in XML, from 1.</summary>
    public required int Line { get; init; }

    /// <summary>The day it was booked.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Positive: came in; negative: went out.</summary>
    public required decimal Amount { get; init; }

    /// <summary>ISO 4217 code from the file; null if it has none.</summary>
    public string? Currency { get; init; }

    /// <summary>The bank's own id, unique in its account.</summary>
    public string? BankId { get; init; }

    /// <summary>Payee and purpose: all the file's text, with single spaces.</summary>
    public required string Text { get; init; }

    /// <summary>What a line of a cash book says that it is, as a reading rule would; null if it leaves that to the rules.</summary>
    public ReadingRule? Says { get; init; }

    public Paid Paid => Amount < 0 ? Paid.Out : Paid.In;
}

/// <summary>A line that could not be read.</summary>
/// <param name="Line">As in <see cref="Transaction.Line"/>.</param>
/// <param name="Code">A stable word for programs.</param>
/// <param name="Detail">What is wrong and how to fix it; never the bank's own words.</param>
public sealed record RefusedLine(int Line, Code Code, string Detail);
