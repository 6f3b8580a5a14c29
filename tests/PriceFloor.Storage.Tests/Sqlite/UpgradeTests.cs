using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Stores of every earlier program, made by the scripts shipped until then, are upgraded whole to the newest schema.</summary>
public sealed class UpgradeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-upgrade-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));

    private string Db => Path.Combine(_folder, "pricefloor.db");

    public static TheoryData<int> EarlierSchemas => [.. Enumerable.Range(1, Migrations.Newest - 1)];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [MemberData(nameof(EarlierSchemas))]
    public void Everything_in_an_earlier_store_is_there_after_it_and_the_store_as_it_was_is_kept(int schema)
    {
        MakeStore(schema);
        using (var store = new Store(new SqliteEngine(Db, _clock), _clock))
        {
            Assert.True(store.IsBehind());
            Assert.Equal(new Upgrade(schema, Migrations.Newest, $"{Db}.schema-{schema}-20270102T090000Z"), store.Open());
            Assert.False(store.IsBehind());
            Assert.Equal(["1", "2"], store.Read(snapshot => snapshot.History("design", "a")).Select(revision => revision.Body!));
            Assert.Equal([new DocumentName("design", "a")], store.Read(snapshot => snapshot.UsersOf("profile", "main")));
            Assert.Equal("first-admin-key", Assert.Single(store.Read(snapshot => snapshot.Keys)).Name);
            Assert.Equal((3, 3),
                store.Write("test", writing => writing.Save("design", "a", "3", [])) is var next ? (next.Number, next.Position) : default);
            Assert.Null(store.Open());
        }

        Assert.Empty(StoreCheck.Of(Db, (_, _) => null).Faults);
        var kept = StoreCheck.Of($"{Db}.schema-{schema}-20270102T090000Z", (_, _) => null);
        Assert.Equal((schema, 2, 0), (kept.Schema, kept.Revisions, kept.Faults.Count));
    }

    [Theory]
    [MemberData(nameof(EarlierSchemas))]
    public void A_backup_of_an_earlier_program_is_restored_at_the_newest_schema(int schema)
    {
        MakeStore(schema);
        File.Move(Db, Path.Combine(_folder, "old.db"));
        Assert.Equal(schema, Restoring.Restore(Path.Combine(_folder, "old.db"), Db, _clock.GetUtcNow()).Schema);
        Assert.Equal((Migrations.Newest, 2), StoreCheck.Of(Db, (_, _) => null) is var report ? (report.Schema, report.Revisions) : default);
        Assert.Equal(schema, StoreCheck.Of(Path.Combine(_folder, "old.db"), (_, _) => null).Schema);
    }

    [Fact]
    public void A_damaged_store_is_not_brought_to_another_schema()
    {
        MakeStore(1);
        using (var connection = new SqliteConnection($"Data Source={Db};Pooling=False"))
        {
            connection.Open();
            connection.Execute("PRAGMA writable_schema=ON; UPDATE sqlite_master SET rootpage = 3 WHERE name = 'head'");
        }

        using var store = new Store(new SqliteEngine(Db, _clock), _clock);
        Assert.Contains(Db, Assert.Throws<StoreException>(() => store.Open()).Message, StringComparison.Ordinal);
        Assert.Equal(["pricefloor.db"], Directory.GetFiles(_folder).Select(Path.GetFileName)
            .Where(name => !name!.EndsWith("-wal", StringComparison.Ordinal) && !name.EndsWith("-shm", StringComparison.Ordinal)));
    }

    private void MakeStore(int schema)
    {
        Migrations.Apply(Db, upTo: schema);
        using var connection = new SqliteConnection($"Data Source={Db};Pooling=False");
        connection.Open();
        connection.Execute(
            """
            INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body) VALUES (1, 'design', 'a', 1, 1000, 'x', '1'), (2, 'design', 'a', 2, 2000, 'x', '2');
            INSERT INTO head (kind, key, position, deleted) VALUES ('design', 'a', 2, 0);
            INSERT INTO reference (from_kind, from_key, to_kind, to_key) VALUES ('design', 'a', 'profile', 'main');
            INSERT INTO access_key (name, hash, scopes, created_at) VALUES ('first-admin-key', x'00', 'read', 1000);
            """);
    }
}
