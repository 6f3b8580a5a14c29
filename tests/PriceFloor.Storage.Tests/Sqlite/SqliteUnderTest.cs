using Microsoft.Data.Sqlite;
using PriceFloor.Storage.Tests.Contract;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>SQLite: a file in a folder of its own.</summary>
public class SqliteUnderTest : EngineUnderTest
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-store-").FullName;

    internal string Db => Path.Combine(_folder, "pricefloor.db");

    public override Store Open()
    {
        var store = new Store(EngineOf(Db), Clock);
        store.Open();
        return store;
    }

    public override IDisposable Hold()
    {
        var other = new SqliteConnection($"Data Source={Db};Pooling=False");
        other.Open();
        other.BeginTransaction(deferred: false); // ends with the connection
        return other;
    }

    public override Action Keep()
    {
        var backup = Backup.Make(Db, Path.Combine(_folder, $"{Guid.NewGuid():N}.db"));
        return () => Restoring.Restore(backup.Path, Db, Clock.GetUtcNow());
    }

    public override int Forget(string kind, string key, string? kindBelow = null, bool mayStand = false) =>
        Forgetting.Forget(Db, kind, key, Clock.GetUtcNow(), kindBelow is null ? [] : [kindBelow], mayStand);

    public override int ForgetSource(string source) => Forgetting.ForgetSource(Db, source, Clock.GetUtcNow());

    public override IReadOnlyList<string> Faults() => StoreCheck.Of(Db, (_, _) => null).Faults;

    public override void Dispose()
    {
        Directory.Delete(_folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    protected virtual Engine EngineOf(string path) => new SqliteEngine(path, Clock);
}
