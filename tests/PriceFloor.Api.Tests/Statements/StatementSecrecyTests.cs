using System.Text;
using PriceFloor.Api.Http.Reading;
using Xunit;
using static PriceFloor.Api.Tests.Statements.SentStatements;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>Only the caller sees the bank's data, and only keys that may read it see stored data.</summary>
public sealed class StatementSecrecyTests
{
    [Fact]
    public async Task Nothing_of_the_bank_is_stored_or_logged()
    {
        var log = new CapturedLog();
        await using var studio = new Studio(configure: log.Of);
        await studio.Has("/v1/reading-rules/main", SortingRules);
        var secret = "Zaunkoenig" + Guid.NewGuid().ToString("N");
        Assert.Contains(secret,
            (await Send(studio, "?currency=USD", ("current", $"Date,Amount,Description\r\n2026-01-05,-4711.13,{secret}\r\n"))).Text,
            StringComparison.Ordinal);
        foreach (var broken in new[]
        {
            $"{secret}",
            $"<?xml version=\"1.0\"?><{secret}>",
            $"OFXHEADER:100\r\n<OFX><{secret}>",
            $"Date,Amount,Description\r\n{secret},{secret},{secret}\r\n",
        })
            Assert.DoesNotContain(secret, (await Send(studio, "?currency=USD", ("current", broken))).Text, StringComparison.Ordinal);

        Assert.Contains(log.Lines, line => line.Contains("/v1/statements", StringComparison.Ordinal));
        Assert.DoesNotContain(log.Lines, line => line.Contains(secret, StringComparison.Ordinal) || line.Contains("4711", StringComparison.Ordinal));
        foreach (var file in Directory.EnumerateFiles(studio.Folder).Where(file => !file.EndsWith(".lock", StringComparison.Ordinal)))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var memory = new MemoryStream();
            await stream.CopyToAsync(memory, Studio.Cancellation);
            Assert.True(memory.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(secret)) < 0, file);
        }
    }

    [Fact]
    public async Task What_is_stored_serves_only_a_key_that_may_read()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main", SortingRules);
        await studio.Has("/v1/profiles/main", """{"currency":"USD","calendar":{"weeksPerYear":46,"daysPerWeek":5,"hoursPerDay":7}}""");
        using var writer = await studio.ClientFor("write");
        foreach (var query in new[] { "?against=main", "?currency=USD&rules=main", "?against=nobody", "?rules=nobody" })
            (await Send(studio, query, writer, ("current", Sheet))).IsProblem(403, "key-not-allowed");
        var unsorted = await Send(studio, "?currency=USD", writer, ("current", Sheet));
        Assert.Equal((200, 5, "{}"), (unsorted.Status, unsorted.Json.GetProperty("accounted").GetProperty("unplaced").GetProperty("lines").GetInt32(),
            unsorted.Json.GetProperty("basis").GetRawText()));

        using var both = await studio.ClientFor("read", "write");
        Assert.Equal(200, (await Send(studio, "?against=main&rules=main", both, ("current", Sheet))).Status);
    }
}
