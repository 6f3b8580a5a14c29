using Dapper;
using Microsoft.Data.Sqlite;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>A store of every earlier schema is upgraded with everything in it.</summary>
public sealed class MigrationTests : IDisposable
{
    private static readonly string[] s_kinds = ["channel", "design", "profile", "reading-rules"];
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-store-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Keys_and_revisions_of_the_first_schema_stay_as_they_were()
    {
        var path = Path.Combine(_folder, "pricefloor.db");
        Migrations.Apply(path, upTo: 1);
        using (var connection = new SqliteConnection($"Data Source={path};Pooling=False"))
        {
            connection.Open();
            connection.Execute("INSERT INTO access_key (name, hash, scopes, created_at) VALUES ('shop', x'01', 'check', 5)");
            connection.Execute("INSERT INTO revision (kind, key, number, saved_at, saved_by, body) VALUES ('design', 'a', 1, 7, 'shop', '{}')");
            connection.Execute("INSERT INTO head (kind, key, position, deleted) VALUES ('design', 'a', 1, 0)");
        }

        using var store = new Store(new SqliteEngine(path, TimeProvider.System), TimeProvider.System);
        store.Open();
        var key = Assert.Single(store.Read(snapshot => snapshot.Keys));
        Assert.Equal(("shop", "check", 5L, null, null, null, null),
            (key.Name, key.Scopes, key.CreatedAt, key.Profiles, key.LastUsed, key.PreviousHash, key.PreviousUntil));
        var entry = Assert.Single(store.Read(snapshot => snapshot.DocumentEntries(long.MaxValue, 10)));
        Assert.Equal(("shop", "design", "a", 1L, "created", 7L), (entry.By, entry.Kind, entry.Key, entry.Number, entry.What, entry.At));
        Assert.Empty(store.Read(snapshot => snapshot.OtherEntries(long.MaxValue, 10))); // earlier schemas did not record who made a key
    }

    [Fact]
    public void Renamed_fields_have_their_new_names_in_every_revision_and_texts_are_unchanged()
    {
        var path = Path.Combine(_folder, "pricefloor.db");
        Migrations.Apply(path, upTo: 4);
        using (var connection = new SqliteConnection($"Data Source={path};Pooling=False"))
        {
            connection.Open();
            Insert(connection, "profile", """{"name":"\"heading\": and \"event\":","expenses":[{"heading":"rent"},{"heading":"office"}]}""");
            Insert(connection, "reading-rules", """{"rules":[{"heading":"rent"}]}""");
            Insert(connection, "design", """{"making":{"steps":[{"rushable":false},{"rushable":true}]}}""");
            Insert(connection, "channel", """{"stockistShare":0.4,"event":{"cost":60,"pieces":20}}""");
        }

        using var store = new Store(new SqliteEngine(path, TimeProvider.System), TimeProvider.System);
        store.Open();
        Assert.Equal(
            [
                """{"shopShare":0.4,"stall":{"cost":60,"pieces":20}}""",
                """{"making":{"steps":[{"mayBeHurried":false},{"mayBeHurried":true}]}}""",
                """{"name":"\"heading\": and \"event\":","expenses":[{"costKind":"rent"},{"costKind":"office"}]}""",
                """{"rules":[{"costKind":"rent"}]}""",
            ],
            s_kinds.Select(kind => store.Read(snapshot => snapshot.Newest(kind, "a"))!.Body!));
    }

    private static void Insert(SqliteConnection connection, string kind, string body)
    {
        connection.Execute(
            "INSERT INTO revision (kind, key, number, saved_at, saved_by, body) VALUES (@kind, 'a', 1, 7, 'shop', @body)", new { kind, body });
        connection.Execute(
            "INSERT INTO head (kind, key, position, deleted) SELECT kind, key, position, 0 FROM revision WHERE kind = @kind", new { kind });
    }
}
