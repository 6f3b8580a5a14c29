using Microsoft.Extensions.Time.Testing;
using PriceFloor.Storage.Postgres;
using Xunit;

namespace PriceFloor.Storage.Tests.Postgres;

/// <summary>Two processes have the same store open.</summary>
public sealed class InStepTests : IDisposable
{
    private readonly PostgresCluster _cluster = PostgresCluster.One;
    private readonly string _database;
    private readonly Store _one, _other;

    public InStepTests()
    {
        _database = _cluster.NewDatabase();
        (_one, _other) = (Opened(), Opened());
    }

    public void Dispose()
    {
        _one.Dispose();
        _other.Dispose();
        _cluster.Drop(_database);
    }

    [Fact]
    public async Task They_see_and_number_each_others_writes()
    {
        for (var round = 0; round < 4; round++)
        {
            Assert.Equal((2 * round) + 1, (await _one.WriteAsync("test", writing => writing.Save("design", "a", "1", []))).Number);
            await _other.Fresh();
            Assert.Equal((2 * round) + 1, _other.Position);
            Assert.Equal((2 * round) + 2, (await _other.WriteAsync("test", async writing =>
            {
                Assert.Equal("1", (await writing.Find("design", "a"))!.Body);
                return await writing.Save("design", "a", "2", [new DocumentName("profile", $"P{round}")]);
            })).Number);
            Assert.Equal([new DocumentName("design", "a")], await _one.WriteAsync("test", writing => writing.UsersOf("profile", $"P{round}")));
        }
    }

    [Fact]
    public async Task A_key_that_ended_at_one_does_not_open_in_a_write_of_the_other()
    {
        await _one.WriteAsync("test", async writing =>
        {
            await writing.AddKey(new StoredKey("shop", [1], "read", 1, null));
            return true;
        });
        Assert.True(await _other.WriteAsync("test", writing => writing.Opens([1])));
        await _one.WriteAsync("test", writing => writing.DeleteKey("shop"));
        Assert.False(await _other.WriteAsync("test", writing => writing.Opens([1])));
    }

    [Fact]
    public async Task Each_knows_how_many_they_are()
    {
        await Count(_one, 2);
        _other.Dispose();
        await Count(_one, 1);

        static async Task Count(Store store, int wanted)
        {
            for (var tries = 0; store.Processes != wanted; tries++)
            {
                Assert.True(tries < 300, $"{store.Processes} instead of {wanted}");
                await Task.Delay(TimeSpan.FromMilliseconds(100), TestContext.Current.CancellationToken);
            }
        }
    }

    private Store Opened()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));
        var store = new Store(new StoreOnServer(_cluster.ConnectionString(_database)).Engine(clock), clock);
        store.Open();
        return store;
    }
}
