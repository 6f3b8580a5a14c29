using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>Checks a whole store at one moment, without changing it; a service may be using it.</summary>
internal static class StoreCheck
{
    /// <param name="path">The store.</param>
    /// <param name="faultOf">The fault of a document of that kind and text; null if there is none.</param>
    /// <param name="checkedOf">Told how many revisions of how many are checked, for whoever watches.</param>
    public static StoreReport Of(string path, Func<string, string, string?> faultOf, Action<long, long>? checkedOf = null)
    {
        try
        {
            using var connection = StoreFile.Open(path);
            var schema = StoreFile.SchemaOf(connection, path);
            using var session = SqliteSession.On(connection, deferred: true);
            if (StoreFile.Damage(connection) is { Count: > 0 } damage)
                return new StoreReport(schema, 0, 0, 0, damage); // the contents of a damaged file mean nothing
            var hasLog = connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_master WHERE name = 'log_batch'") > 0;
            return StoreChecking.Of(session, schema, hasLog, ForeignKeys(connection), (faultOf, checkedOf)).AtOnce();
        }
        catch (StoreTroubleException e)
        {
            throw StoreFaults.CannotOpen(path, e);
        }
    }

    private static List<string> ForeignKeys(SqliteConnection connection) =>
        connection.Query<(string Table, long? RowId, string Parent)>("PRAGMA foreign_key_check")
            .ConvertAll(row => $"A row of {row.Table} names one of {row.Parent} that is not there.");
}
