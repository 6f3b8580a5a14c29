namespace PriceFloor.Statements;

/// <summary>A transaction with its file and account.</summary>
/// <param name="File">The number of the file, from 0.</param>
/// <param name="Account">The account.</param>
/// <param name="Transaction">The transaction.</param>
public sealed record Entry(int File, string Account, Transaction Transaction)
{
    /// <summary>True for a line of a cash book.</summary>
    public bool IsCash { get; init; }

    public DateOnly Date => Transaction.Date;

    public decimal Amount => Transaction.Amount;
}

/// <summary>An entry and its outcome.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Outcome">The outcome.</param>
/// <param name="Rule">The place of the rule that took it, from 0; null if none did.</param>
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
