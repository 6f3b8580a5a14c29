using Microsoft.Extensions.Time.Testing;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>A store in a folder of its own, opened and closed as a test asks.</summary>
public abstract class StoreInAFolder : IDisposable
{
    private Store? _store;

    protected string Folder { get; } = Directory.CreateTempSubdirectory("pricefloor-store-").FullName;

    protected FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));

    protected string Db => At("pricefloor.db");

    /// <summary>The one that is open.</summary>
    protected Store Opened => _store!;

    protected string At(string name) => Path.Combine(Folder, name);

    public void Dispose()
    {
        Close();
        Directory.Delete(Folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    protected Store Open()
    {
        _store ??= new Store(new SqliteEngine(Db, Clock), Clock);
        _store.Open();
        return _store;
    }

    protected void Close()
    {
        _store?.Dispose();
        _store = null;
    }

    protected Revision Save(string key, string body) => (_store ?? Open()).Write("test", writing => writing.Save("design", key, body, []));

    protected Revision Delete(string key) => Opened.Write("test", writing => writing.Delete("design", key));
}
