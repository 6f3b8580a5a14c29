using Microsoft.Data.Sqlite;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>
/// A store whose file, disk or neighbour fails: the engine's exceptions leave it as a trouble with a kind, with the engine's own exception inside.
/// </summary>
public abstract class StoreInTrouble : StoreInAFolder
{
    protected Store NewStore(string? path = null)
    {
        var store = new Store(new SqliteEngine(path ?? Db, Clock), Clock);
        store.Open();
        return store;
    }

    /// <summary>Another program that has begun this.</summary>
    protected SqliteConnection Held(string sql)
    {
        var other = new SqliteConnection($"Data Source={Db};Pooling=False");
        other.Open();
        using var command = other.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
        return other;
    }

    /// <summary>In the middle of work: the engine's message, and its exception.</summary>
    protected static StoreTrouble TroubleOf(Action act)
    {
        var trouble = Assert.Throws<StoreTroubleException>(act);
        var engines = Assert.IsType<SqliteException>(trouble.InnerException);
        Assert.Equal(engines.Message, trouble.Message);
        if (trouble.Trouble == StoreTrouble.Busy)
            Assert.Equal(5, engines.SqliteErrorCode);
        return trouble.Trouble;
    }

    /// <summary>Before anything was begun: what to do about it.</summary>
    protected static StoreTrouble? StoppedBy(Action act) => Assert.Throws<StoreException>(act).Trouble;

    protected static string? Body(Store store, string key) => store.Read(snapshot => snapshot.Find("design", key))?.Body;

    protected static Task<Revision> SaveAsync(Store store, string key, string body) =>
        store.WriteAsync("test", writing => writing.Save("design", key, body, []));

    protected static Revision Save(Store store, string key, string body) => store.Write("test", writing => writing.Save("design", key, body, []));
}
