using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>A file as it was understood.</summary>
/// <param name="Name">The name of its field in the form; where it was the whole body, what the query calls its account.</param>
/// <param name="Format">The format, by its content.</param>
/// <param name="Accounts">The accounts in it.</param>
public sealed record FileAnswer(string Name, StatementFormat Format, IReadOnlyList<FileAccountAnswer> Accounts);

/// <summary>One account in one file. The period is the file's own, or the whole months that its lines stand in.</summary>
/// <param name="Account">What the account is called.</param>
/// <param name="From">The first day of the statement; null where it has no lines and says no period.</param>
/// <param name="To">The last day of the statement.</param>
/// <param name="SaysPeriod">True where the file says its period itself; false where its lines show it.</param>
/// <param name="Count">Its lines.</param>
public sealed record FileAccountAnswer(string Account, DateOnly? From, DateOnly? To, bool SaysPeriod, CountAnswer Count)
{
    public static FileAccountAnswer Of(AccountStatement statement, Currency money)
    {
        var period = Sorting.PeriodOf(statement);
        return new(statement.Account, period?.From, period?.To, statement is { From: not null, To: not null },
            CountAnswer.Of(statement.Transactions, money));
    }
}
