using PriceFloor.Api.Tests.Conventions;
using Xunit;
using static PriceFloor.Api.Tests.Statements.SentStatements;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>A cash book beside the files of banks.</summary>
public sealed class CashBookFileTests
{
    [Fact]
    public async Task A_cash_book_is_one_more_sheet()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main",
            await File.ReadAllTextAsync(Repository.File("src/PriceFloor.Api/ReadingRuleSets/starter-rules.json"), Studio.Cancellation));
        var current = await File.ReadAllTextAsync(Repository.File("docs/statements/current-2026.csv"), Studio.Cancellation);
        var book = await File.ReadAllTextAsync(Repository.File("docs/statements/cash-book-2026.csv"), Studio.Cancellation);
        var before = (await Send(studio, "?currency=USD", ("current", current))).Json;
        var after = (await Send(studio, "?currency=USD&lines=true", ("current", current), ("cash-book", book))).Json;

        // Two stalls: 148.00 + 205.50
        Assert.Equal(353.50m, after.GetProperty("moneyReceived").GetProperty("received").GetDecimal()
            - before.GetProperty("moneyReceived").GetProperty("received").GetDecimal());
        Assert.Equal("12", after.GetProperty("coverage").EnumerateArray().Single(account => account.GetProperty("account").GetString() == "cash-book")
            .GetProperty("months").GetRawText());
        Assert.Equal(["own-account", "placed", "placed", "placed", "placed", "placed"], after.GetProperty("transactions").EnumerateArray()
            .Where(line => line.GetProperty("file").GetString() == "cash-book").Select(line => line.GetProperty("outcome").GetString()));
        Assert.Equal(0, after.GetProperty("refused").GetProperty("count").GetInt32());
        Assert.Equal(201, (await studio.Put("/v1/profiles/drafted", after.GetProperty("draft").GetRawText())).Status);
    }
}
