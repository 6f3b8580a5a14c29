using Dapper;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Api.Tests.Running;

/// <summary>A store as an earlier program left it: made by the scripts shipped until then, with one profile in it.</summary>
public static class OldStore
{
    public static void Make(string path, int schema)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        connection.Execute("PRAGMA journal_mode=WAL");
        Migrations.Apply(path, upTo: schema);
        connection.Execute(
            """
            INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body) VALUES (1, 'profile', 'main', 1, 1798880400000000, 'first-admin-key', @body);
            INSERT INTO head (kind, key, position, deleted) VALUES ('profile', 'main', 1, 0);
            """,
            new { body = Sample.SmallProfile });
    }
}
