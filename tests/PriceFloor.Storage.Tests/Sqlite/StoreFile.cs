using Dapper;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Reads and changes the store's file without the store.</summary>
internal static class StoreFile
{
    internal static void Execute(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False;Foreign Keys=False");
        connection.Open();
        connection.Execute(sql);
    }

    internal static IEnumerable<string> Bodies(string path) => Query<string>(path, "SELECT body FROM revision ORDER BY position");

    internal static List<T> Query<T>(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        return connection.Query<T>(sql).AsList();
    }
}
