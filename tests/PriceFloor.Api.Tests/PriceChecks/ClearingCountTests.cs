using PriceFloor.Api.Tests.LogLines;
using PriceFloor.Api.Tests.Running;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.PriceChecks;

/// <summary>What was counted in the log for a price at which pieces are sold off is kept, and only until the log is another.</summary>
public sealed class ClearingCountTests
{
    private const string Price = "/v1/designs/RB-014/prices/web", Check = "/v1/price-checks?sku=RB-014&channel=web&price=40.00",
        Clears = """{"price":40.00,"currency":"USD","clears":{"pieces":3,"until":"2027-08-31"}}""";

    [Fact]
    public async Task The_log_is_asked_once_and_again_after_each_change_of_it()
    {
        Assert.SkipWhen(ServerStore.IsForAll, "Another process may write to a database, so its position is asked for each time.");
        var asked = 0;
        await using var studio = new Studio(configure: host => CountedEngine.Count(host, () => Interlocked.Increment(ref asked)));
        await Clearing(studio);
        await Sells(studio, 1, pieces: 2);
        Assert.True(await IsOpen(studio));
        var before = Volatile.Read(ref asked);
        for (var i = 0; i < 20; i++)
            Assert.True(await IsOpen(studio));
        Assert.Equal(before, Volatile.Read(ref asked));

        await Sells(studio, 2, pieces: 1); // three of three
        Assert.False(await IsOpen(studio));
        await Sells(studio, 1, pieces: 1); // corrected: two of three
        Assert.True(await IsOpen(studio));
        await Sells(studio, 3, pieces: 1);
        Assert.False(await IsOpen(studio));
        await studio.Delete("/v1/movements/shop/3");
        Assert.True(await IsOpen(studio));
        // A price that is stored again counts from its own day, with its own number of pieces.
        await studio.Has(Price, Clears.Replace("\"pieces\":3", "\"pieces\":2", StringComparison.Ordinal));
        Assert.False(await IsOpen(studio));
    }

    [Fact]
    public async Task A_restored_store_is_counted_anew()
    {
        Assert.SkipWhen(ServerStore.IsForAll, "A database is restored by its own means.");
        var studio = new Studio();
        await Clearing(studio);
        await Sells(studio, 1, pieces: 2);
        Backup.Make(Path.Combine(studio.Folder, "pricefloor.db"), Path.Combine(studio.Folder, "b.db"));
        await Sells(studio, 2, pieces: 1);
        Assert.False(await IsOpen(studio));
        var folder = await studio.Stopped();
        Restoring.Restore(Path.Combine(folder, "b.db"), Path.Combine(folder, "pricefloor.db"), studio.Clock.GetUtcNow());
        await using var again = await studio.Restarted();
        Assert.True(await IsOpen(again));
        await Sells(again, 9, pieces: 1); // at the position that the lost line had
        Assert.False(await IsOpen(again));
    }

    [Fact]
    public async Task What_one_process_appends_another_counts_with_its_next_check()
    {
        await using var both = new TwoProcesses();
        await Clearing(both.One);
        Assert.True(await IsOpen(both.One));
        Assert.True(await IsOpen(both.Other));
        await Sells(both.One, 1, pieces: 3);
        Assert.False(await IsOpen(both.Other));
        Assert.False(await IsOpen(both.One));
        await both.Other.Delete("/v1/movements/shop/1");
        Assert.True(await IsOpen(both.One));
        Assert.True(await IsOpen(both.Other));
    }

    private static async Task Clearing(Studio studio)
    {
        await studio.HasASmallShop();
        await studio.Has(Price, Clears);
    }

    private static Task Sells(Studio studio, int order, int pieces) =>
        studio.Sheet("source=shop", $"ref,on,what,sku,channel,pieces,price\n{order},2027-01-03,sold,RB-014,web,{pieces},40.00\n");

    private static async Task<bool> IsOpen(Studio studio) => (await studio.Get(Check)).Json.TryGetProperty("clearing", out _);
}
