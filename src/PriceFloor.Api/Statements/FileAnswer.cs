using System.Text.Json.Serialization;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>A file as the service read it.</summary>
/// <param name="Name">The name of its form field; if the file was the whole body, the account's name from the query.</param>
/// <param name="Format">The format, by its content.</param>
/// <param name="Layout" example="card@2">The stored layout that a sheet was read by; absent if there is none for its name.</param>
/// <param name="Accounts">The accounts in it.</param>
public sealed record FileAnswer(string Name, StatementFormat Format,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Layout, IReadOnlyList<FileAccountAnswer> Accounts);

/// <summary>One account in one file. The period is the file's own, or the whole months of its lines.</summary>
/// <param name="Account">The account's name.</param>
/// <param name="From">The first day of the statement; null if it has no lines and no period.</param>
/// <param name="To">The last day of the statement.</param>
/// <param name="SaysPeriod">True if the file gives its period; false if it follows from its lines.</param>
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
