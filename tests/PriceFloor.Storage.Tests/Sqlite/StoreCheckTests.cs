using Xunit;
using static PriceFloor.Storage.Tests.Sqlite.StoreFile;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Checking a store names every fault in it.</summary>
public sealed class StoreCheckTests : StoreInAFolder
{
    [Theory]
    [InlineData("UPDATE head SET position = 1 WHERE key = 'a'", "not the one that is shown")]
    [InlineData("UPDATE head SET deleted = 1 WHERE key = 'b'", "not the one that is shown")]
    [InlineData("DELETE FROM head WHERE key = 'b'", "not the one that is shown")]
    [InlineData("UPDATE revision SET body = '{\"cut\":' WHERE key = 'b'", "design b, revision 1: is not JSON")]
    [InlineData("UPDATE revision SET saved_at = 1 WHERE position = 2", "earlier time")]
    [InlineData("INSERT INTO reference VALUES ('design', 'gone', 'profile', 'main')", "refers to profile main")]
    [InlineData("PRAGMA foreign_keys=OFF; DELETE FROM revision WHERE key = 'b'", "names one of revision")]
    public void A_check_names_what_is_wrong(string spoil, string told)
    {
        Save("a", "1");
        Save("a", "2");
        Save("b", "1");
        Assert.Empty(StoreCheck.Of(Db, (_, _) => null).Faults);
        Assert.Equal(3, StoreCheck.Of(Db, (kind, _) => $"is a bad {kind}").Faults.Count);
        Execute(Db, spoil);
        Assert.Contains(StoreCheck.Of(Db, (_, _) => null).Faults, fault => fault.Contains(told, StringComparison.Ordinal));
    }
}
