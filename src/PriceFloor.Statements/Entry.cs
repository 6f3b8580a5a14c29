namespace PriceFloor.Statements;

/// <summary>What became of one line. Every line that was read has exactly one outcome.</summary>
public enum LineOutcome
{
    /// <summary>A rule took it into a line of the draft, the money received or the sales tax.</summary>
    Placed,

    /// <summary>No rule matched.</summary>
    Unplaced,

    /// <summary>One half of a transfer between two of the accounts given, the other half is there too.</summary>
    Paired,

    /// <summary>A rule says that it is between own accounts; its other half is not in these files.</summary>
    OwnAccount,

    /// <summary>A rule says that it is to be left out.</summary>
    LeftOut,

    /// <summary>It stands in another file, or a second time under the same id.</summary>
    Duplicate,

    /// <summary>Before or after the period that was asked for.</summary>
    OutsidePeriod,

    /// <summary>In another currency; nothing is ever converted.</summary>
    ForeignCurrency,
}

/// <summary>A transaction with the file and account that it stands in.</summary>
/// <param name="File">Which of the files, from 0.</param>
/// <param name="Account">The account.</param>
/// <param name="Transaction">The transaction.</param>
public sealed record Entry(int File, string Account, Transaction Transaction)
{
    public DateOnly Date => Transaction.Date;

    public decimal Amount => Transaction.Amount;
}

/// <summary>An entry and what became of it.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Outcome">What became of it.</param>
/// <param name="Rule">The place of the rule that took it, from 0; null where none did.</param>
public sealed record Sorted(Entry Entry, LineOutcome Outcome, int? Rule);

/// <summary>How many, how much in and how much out.</summary>
public sealed record Count(int Lines, decimal In, decimal Out)
{
    public static Count Of(IEnumerable<Transaction> transactions)
    {
        var (lines, moneyIn, moneyOut) = (0, 0m, 0m);
        foreach (var transaction in transactions)
        {
            lines++;
            if (transaction.Amount < 0)
                moneyOut -= transaction.Amount;
            else
                moneyIn += transaction.Amount;
        }

        return new Count(lines, moneyIn, moneyOut);
    }
}
