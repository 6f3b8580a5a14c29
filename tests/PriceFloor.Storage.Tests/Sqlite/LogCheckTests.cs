using PriceFloor.Storage.Tests.Contract;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Checking a store names every fault of its log, and its file holds no id.</summary>
public sealed class LogCheckTests : StoreWithALog<SqliteUnderTest>
{
    [Theory]
    [InlineData("DELETE FROM name WHERE kind = 'design'", "line 1 of movement: its design has no name")]
    [InlineData("UPDATE movement SET stall = 99 WHERE position = 2", "line 2 of movement: its stall has no name")]
    [InlineData("UPDATE movement SET ended = 1 WHERE position = 2", "line 2 of movement: it ends before it begins")]
    [InlineData("UPDATE movement SET ended = 9 WHERE position = 2", "line 2 of movement: it ends after the last batch")]
    [InlineData("UPDATE movement SET batch = 2 WHERE position = 2", "line 2 of movement: it is not in a batch of this list")]
    [InlineData("UPDATE log_batch SET last = 1 WHERE id = 1", "line 2 of movement: it is not in a batch of this list")]
    [InlineData("INSERT INTO log_batch (list, at, by, last) VALUES ('bench', 1, 'x', 5)", "batch 3 of bench: has an earlier time")]
    [InlineData("DELETE FROM log_secret", "secret of the log is missing")]
    public void A_check_names_what_is_wrong(string spoil, string told)
    {
        Send(Sold("a"), Sold("b"));
        Append(new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1")] });
        Assert.Empty(Engine.Faults());
        StoreFile.Execute(Engine.Db, spoil);
        Assert.Contains(Engine.Faults(), fault => fault.Contains(told, StringComparison.Ordinal));
    }

    [Fact]
    public void No_id_of_a_line_or_of_an_order_is_in_the_file()
    {
        Send(Sold("ORDER-4711-SECRET"), Sold("b"));
        Append(new LogAppend<MovementLine> { Source = Shop, Withdrawn = [Marks.OfRef(Shop, "ORDER-4711-SECRET")] });
        Close();
        Assert.DoesNotContain("4711", File.ReadAllText(Engine.Db, System.Text.Encoding.Latin1), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("design", "SECRET-7", "1: 1 RB-014 5200")]
    [InlineData("channel", "secret-fair", "1: 1 RB-014 5200")]
    [InlineData("profile", "main", "1: 1 RB-014 5200, 2: 1 SECRET-7 5200")]
    public void A_forgotten_design_or_channel_takes_its_lines_along(string kind, string key, string left)
    {
        Store.Write("maker", async writing =>
        {
            await writing.Save(kind, key, "{}", []);
            return await writing.Delete(kind, key);
        });
        Send(Sold("a"), Sold("b", "SECRET-7") with { Place = "secret-fair" });
        Append(new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1") with { Design = "SECRET-7", Step = "own step" }, Bench("2")] });
        Close();
        Engine.Forget(kind, key);
        if (kind != "profile")
            Assert.DoesNotContain(key, File.ReadAllText(Engine.Db, System.Text.Encoding.Latin1), StringComparison.Ordinal);
        Assert.Equal(left, Told(Movements()));
        Assert.Equal(kind == "design" ? 1 : 2, Store.Read(snapshot => snapshot.BenchEntries(new LogQuestion { UpTo = 2 })).Count);
        Assert.Empty(Engine.Faults());
    }

    [Fact]
    public void A_forgotten_source_leaves_no_trace_in_the_file()
    {
        var line = Sold("f", "SECRET-7") with { Source = "secret-fair", Stall = "Secret stall" };
        Append(new LogAppend<MovementLine> { Source = "secret-fair", Lines = [line] });
        Close();
        Assert.Contains("secret-fair", Text(), StringComparison.Ordinal);
        Engine.ForgetSource("secret-fair");
        Assert.DoesNotContain("secret", Text(), StringComparison.OrdinalIgnoreCase);

        string Text() => File.ReadAllText(Engine.Db, System.Text.Encoding.Latin1).Replace("log_secret", "", StringComparison.Ordinal)
            .Replace("secret BLOB", "", StringComparison.Ordinal).Replace("secret_delete", "", StringComparison.Ordinal);
    }
}
