using System.Security.Cryptography;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Lock, backup, check, restore and forgetting, on a store in a folder of its own.</summary>
public sealed class StoreVerbTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-store-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));
    private Store? _store;

    private string Db => Path.Combine(_folder, "pricefloor.db");

    private string At(string name) => Path.Combine(_folder, name);

    public void Dispose()
    {
        _store?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void The_lock_tells_who_holds_it_and_is_free_again_after()
    {
        using (var one = new StoreLock(_folder, _clock))
        {
            one.Take();
            using var two = new StoreLock(_folder, _clock);
            var fault = Assert.Throws<StoreException>(two.Take).Message;
            Assert.Contains(At("pricefloor.lock"), fault, StringComparison.Ordinal);
            if (!OperatingSystem.IsWindows())
                Assert.Contains($"pid {Environment.ProcessId}, started 2027-01-02T09:00:00Z", fault, StringComparison.Ordinal);
        }

        using var three = new StoreLock(_folder, _clock);
        three.Take();
    }

    [Fact]
    public void A_backup_is_whole_private_hashed_and_overwrites_nothing()
    {
        Save("a", "1");
        var made = Backup.Make(Db, At("copy.db"));
        Assert.Equal((new FileInfo(made.Path).Length, Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(made.Path))), Migrations.Newest), (made.Bytes, made.Sha256, made.Schema));
        Assert.Equal($"{made.Sha256}  copy.db\n", File.ReadAllText(At("copy.db.sha256")));
        if (!OperatingSystem.IsWindows())
            foreach (var file in new[] { made.Path, made.Path + ".sha256" })
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        Assert.Equal("1", Assert.Single(Bodies(made.Path)));
        Assert.Contains(At("copy.db"), Assert.Throws<StoreException>(() => Backup.Make(Db, At("copy.db"))).Message, StringComparison.Ordinal);
        File.Delete(At("copy.db"));
        Assert.Contains(At("copy.db.sha256"), Assert.Throws<StoreException>(() => Backup.Make(Db, At("copy.db"))).Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_folder, "*.part-*"));
    }

    [Fact]
    public async Task A_backup_beside_a_writer_has_whole_transactions_of_one_moment()
    {
        Open().Write("test", write => (write.Save("design", "a", "-1", []), write.Save("design", "b", "-1", [])));
        using var stop = new CancellationTokenSource();
        var writing = Task.Run(() =>
        {
            for (var i = 0; !stop.IsCancellationRequested; i++)
                _store!.Write("test", write => (write.Save("design", "a", $"{i}", []), write.Save("design", "b", $"{i}", [])));
        }, TestContext.Current.CancellationToken);
        for (var i = 0; i < 5; i++)
        {
            using var copy = new Store(Backup.Make(Db, At($"copy-{i}.db")).Path, _clock);
            copy.Open();
            Assert.Empty(StoreCheck.Of(copy.Path, (_, _) => null).Faults);
            Assert.Equal(copy.Read(snapshot => snapshot.Find("design", "a"))!.Body, copy.Read(snapshot => snapshot.Find("design", "b"))!.Body);
        }

        await stop.CancelAsync();
        await writing;
    }

    [Fact]
    public void A_restore_that_was_killed_leaves_nothing_for_long_and_one_of_an_unreadable_file_says_so()
    {
        Save("a", "1");
        Backup.Make(Db, At("copy.db"));
        Close();
        File.WriteAllText(At("pricefloor.db.restoring-0"), "half");
        Restoring.Restore(At("copy.db"), Db, _clock.GetUtcNow());
        Assert.Empty(Directory.GetFiles(_folder, "*.restoring-*"));
        using var held = new FileStream(At("copy.db"), FileMode.Open, FileAccess.Read, FileShare.None);
        Assert.Contains($"{At("copy.db")} cannot be read", Assert.Throws<StoreException>(() => Restoring.Restore(At("copy.db"), Db, _clock.GetUtcNow())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_backup_that_cannot_be_made_leaves_nothing()
    {
        Assert.Contains("no store", Assert.Throws<StoreException>(() => Backup.Make(Db, At("copy.db"))).Message, StringComparison.Ordinal);
        File.WriteAllText(Db, new string('x', 8192));
        Assert.Throws<StoreException>(() => Backup.Make(Db, At("copy.db")));
        Assert.Contains(At("nowhere"), Assert.Throws<StoreException>(() => Backup.Make(Db, At("nowhere/copy.db"))).Message, StringComparison.Ordinal);
        Assert.Equal(["pricefloor.db"], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_restore_brings_back_the_backup_and_keeps_what_it_replaced()
    {
        Save("a", "1");
        Backup.Make(Db, At("copy.db"));
        Save("a", "2");
        Close();
        var done = Restoring.Restore(At("copy.db"), Db, _clock.GetUtcNow());
        Assert.Equal(At("pricefloor.db.replaced-20270102T090000Z"), done.Replaced);
        Assert.Equal(["1"], Bodies(Db));
        Assert.Equal(["1", "2"], Bodies(done.Replaced!));
        Assert.Equal(At("pricefloor.db.replaced-20270102T090000Z-2"), Restoring.Restore(At("copy.db"), Db, _clock.GetUtcNow()).Replaced);
        Assert.Equal("1", Open().Read(snapshot => snapshot.Find("design", "a"))!.Body);
    }

    [Fact]
    public void A_copy_of_a_store_in_use_is_not_restored_without_its_log_and_with_it_by_way_of_a_backup()
    {
        Save("a", "1");
        Close();
        Save("a", "2"); // in the log only
        Directory.CreateDirectory(At("copied"));
        foreach (var suffix in new[] { "", "-wal" })
            File.Copy(Db + suffix, At("copied/pricefloor.db") + suffix);
        Save("a", "3");
        Close();
        var refused = Assert.Throws<StoreException>(() => Restoring.Restore(At("copied/pricefloor.db"), Db, _clock.GetUtcNow())).Message;
        Assert.Contains(At("copied/pricefloor.db-wal"), refused, StringComparison.Ordinal);
        Assert.Contains("Nothing was changed", refused, StringComparison.Ordinal);
        Assert.Equal(["1", "2", "3"], Bodies(Db));

        var other = Backup.Make(At("copied/pricefloor.db"), At("other.db")).Path;
        Restoring.Restore(other, Db, _clock.GetUtcNow());
        Assert.Equal(["1", "2"], Bodies(Db));
        File.WriteAllText(other + "-wal", ""); // nothing is in it
        Restoring.Restore(other, Db, _clock.GetUtcNow());
    }

    [Fact]
    public void A_restore_goes_over_a_broken_store_and_into_an_empty_folder()
    {
        Save("a", "1");
        Backup.Make(Db, At("copy.db"));
        Close();
        File.WriteAllText(Db, "broken");
        File.WriteAllText(Db + "-wal", "broken too");
        var replaced = Restoring.Restore(At("copy.db"), Db, _clock.GetUtcNow()).Replaced!;
        Assert.Equal("broken", File.ReadAllText(replaced));
        Assert.Equal(["1"], Bodies(Db));
        Directory.CreateDirectory(At("new"));
        Assert.Null(Restoring.Restore(At("copy.db"), At("new/pricefloor.db"), _clock.GetUtcNow()).Replaced);
        Assert.Equal(["1"], Bodies(At("new/pricefloor.db")));
    }

    [Theory]
    [InlineData("cut")]
    [InlineData("cut, without its hash")]
    [InlineData("one byte")]
    [InlineData("alien")]
    [InlineData("newer")]
    [InlineData("missing")]
    public void A_backup_that_is_not_one_changes_nothing(string trouble)
    {
        for (var i = 0; i < 50; i++)
            Save("a", $"\"{new string('y', 900)}{i}\"");
        var copy = Backup.Make(Db, At("copy.db")).Path;
        var bytes = File.ReadAllBytes(copy);
        if (trouble is not ("cut" or "one byte"))
            File.Delete(copy + ".sha256");
        switch (trouble)
        {
            case "cut" or "cut, without its hash":
                File.WriteAllBytes(copy, bytes[..(bytes.Length / 2 / 4096 * 4096)]);
                break;
            case "one byte":
                bytes[^100] ^= 1;
                File.WriteAllBytes(copy, bytes);
                break;
            case "alien":
                File.Delete(copy);
                Execute(copy, "CREATE TABLE letters (x); PRAGMA user_version = 1");
                break;
            case "newer":
                Execute(copy, $"PRAGMA user_version = {Migrations.Newest + 1}");
                break;
            default:
                File.Delete(copy);
                break;
        }

        Close();
        var before = File.ReadAllBytes(Db);
        Assert.Contains(copy, Assert.Throws<StoreException>(() => Restoring.Restore(copy, Db, _clock.GetUtcNow())).Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(Db));
        Assert.Empty(Directory.GetFiles(_folder, "*.re*"));
    }

    [Fact]
    public void What_is_forgotten_is_in_no_file_any_more()
    {
        const string Secret = "a household's secret";
        Save("other", "1");
        for (var i = 0; i < 30; i++)
            Save("secret-key", $"\"{Secret} {i} {new string('z', 500)}\"");
        Delete("secret-key");
        Save("other", "2");
        Close();
        Assert.Equal(31, Forgetting.Forget(Db, "design", "secret-key", _clock.GetUtcNow()));
        foreach (var file in Directory.GetFiles(_folder))
            foreach (var trace in new[] { Secret, "secret-key" })
                Assert.Equal(-1, File.ReadAllBytes(file).AsSpan().IndexOf(Encoding.UTF8.GetBytes(trace)));
        Assert.Empty(StoreCheck.Of(Db, (_, _) => null).Faults);
        Assert.Equal(["1", "2"], Open().Read(snapshot => snapshot.History("design", "other")).Select(revision => revision.Body!));
    }

    [Fact]
    public void After_forgetting_another_life_begins_whose_numbers_are_higher()
    {
        var life = Open().LifeName;
        for (var i = 1; i <= 6; i++)
            Save("a", $"{i}");
        Delete("a"); // number 7
        Save("b", "1");
        Close();
        Forgetting.Forget(Db, "design", "a", _clock.GetUtcNow());
        Assert.NotEqual(life, Open().LifeName);
        Assert.Equal((8, 8, 9), (Save("a", "1").Number, Save("b", "2").Number, Save("b", "3").Number));
        Assert.Equal(["b@1", "a@8", "b@8", "b@9"], Query<string>("SELECT key || '@' || number FROM revision ORDER BY position"));
        Assert.Empty(StoreCheck.Of(Db, (_, _) => null).Faults);
    }

    [Fact]
    public void After_a_restore_another_life_begins_whose_numbers_are_higher_than_any_that_was_given()
    {
        Save("a", "1");
        Backup.Make(Db, At("copy.db"));
        for (var i = 2; i <= 5; i++)
            Save("a", $"{i}");
        var life = _store!.LifeName;
        Close();
        Restoring.Restore(At("copy.db"), Db, _clock.GetUtcNow());
        Assert.NotEqual(life, Open().LifeName);
        Assert.Equal(6, Save("a", "6").Number); // 5 was given in the store that was replaced
        Close();
        Restoring.Restore(At("copy.db"), Db, _clock.GetUtcNow());
        Assert.Equal(7, (Open(), Save("a", "7")).Item2.Number); // 6 was given in the second life
        Close();
        File.Delete(Db);
        Restoring.Restore(At("copy.db"), Db, _clock.GetUtcNow());
        Assert.Equal(1008, (Open(), Save("a", "8")).Item2.Number); // the 7 of the note that was left, a leap of 1000, the next
        Close();
        File.Delete(Db);
        File.Delete(Db + ".highwater");
        Restoring.Restore(At("copy.db"), Db, _clock.GetUtcNow());
        Assert.Equal(1002, (Open(), Save("a", "9")).Item2.Number); // the backup's 1, a leap of 1000, the next
    }

    [Theory]
    [InlineData("UPDATE head SET position = 1 WHERE key = 'a'", "not the one that is shown")]
    [InlineData("UPDATE head SET deleted = 1 WHERE key = 'b'", "not the one that is shown")]
    [InlineData("DELETE FROM head WHERE key = 'b'", "not the one that is shown")]
    [InlineData("UPDATE revision SET body = '{\"cut\":' WHERE key = 'b'", "design b, revision 1: is not JSON")]
    [InlineData("UPDATE revision SET saved_at = 1 WHERE position = 2", "earlier time")]
    [InlineData("INSERT INTO reference VALUES ('design', 'gone', 'profile', 'main')", "refers to profile main")]
    [InlineData("PRAGMA foreign_keys=OFF; DELETE FROM revision WHERE key = 'b'", "names one of revision")]
    public void A_check_names_what_is_wrong(string spoil, string told)
    {
        Save("a", "1");
        Save("a", "2");
        Save("b", "1");
        Assert.Empty(StoreCheck.Of(Db, (_, _) => null).Faults);
        Assert.Equal(3, StoreCheck.Of(Db, (kind, _) => $"is a bad {kind}").Faults.Count);
        Execute(Db, spoil);
        Assert.Contains(StoreCheck.Of(Db, (_, _) => null).Faults, fault => fault.Contains(told, StringComparison.Ordinal));
    }

    private Store Open()
    {
        _store ??= new Store(Db, _clock);
        _store.Open();
        return _store;
    }

    private void Close()
    {
        _store?.Dispose();
        _store = null;
    }

    private Revision Save(string key, string body) => (_store ?? Open()).Write("test", writing => writing.Save("design", key, body, []));

    private Revision Delete(string key) => _store!.Write("test", writing => writing.Delete("design", key));

    private static void Execute(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False;Foreign Keys=False");
        connection.Open();
        connection.Execute(sql);
    }

    private IEnumerable<string> Bodies(string path) => Query<string>("SELECT body FROM revision ORDER BY position", path);

    private List<T> Query<T>(string sql, string? path = null)
    {
        using var connection = new SqliteConnection($"Data Source={path ?? Db};Pooling=False");
        connection.Open();
        return connection.Query<T>(sql).AsList();
    }
}
