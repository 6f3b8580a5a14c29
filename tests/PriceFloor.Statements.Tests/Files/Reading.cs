using System.Text;
using PriceFloor.Statements.Files;
using Xunit;

namespace PriceFloor.Statements.Tests.Files;

/// <summary>Helpers to read files and compare the results.</summary>
internal static class Reading
{
    public const string Account = "the studio's account";

    public static Outcome<StatementFile> Of(string text, SheetReading? sheet = null) => Of(Encoding.UTF8.GetBytes(text), sheet);

    public static Outcome<StatementFile> Of(byte[] bytes, SheetReading? sheet = null) =>
        StatementReader.Read(bytes, Account, sheet ?? new SheetReading(), TestContext.Current.CancellationToken);

    public static Transaction Only(StatementFile file) => Assert.Single(Assert.Single(file.Statements).Transactions);

    public static void FailsWith(string code, Outcome<StatementFile> read) => Assert.Equal(code, Assert.Single(read.Faults).Code);

    /// <summary>"2027-03-05 -12.50 EUR id text", a line each, to compare at a glance.</summary>
    public static string Told(AccountStatement statement) => string.Join('\n', statement.Transactions.Select(Told));

    public static string Told(Transaction one) => $"{one.Date:yyyy-MM-dd} {one.Amount:0.00##} {one.Currency ?? "-"} {one.BankId ?? "-"} {one.Text}";

    public static string Refused(StatementFile file) => string.Join(", ", file.Refused.Select(refused => $"{refused.Line} {refused.Code}"));
}
