using System.Security.Cryptography;
using Xunit;
using static PriceFloor.Storage.Tests.Sqlite.StoreFile;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Backups: whole, private, of one moment, or not at all.</summary>
public sealed class StoreBackupTests : StoreInAFolder
{
    [Fact]
    public void A_backup_is_whole_private_hashed_and_overwrites_nothing()
    {
        Save("a", "1");
        var made = Backup.Make(Db, At("copy.db"));
        Assert.Equal((new FileInfo(made.Path).Length, Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(made.Path))), Migrations.Newest),
            (made.Bytes, made.Sha256, made.Schema));
        Assert.Equal($"{made.Sha256}  copy.db\n", File.ReadAllText(At("copy.db.sha256")));
        if (!OperatingSystem.IsWindows())
            foreach (var file in new[] { made.Path, made.Path + ".sha256" })
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        Assert.Equal("1", Assert.Single(Bodies(made.Path)));
        Assert.Contains(At("copy.db"), Assert.Throws<StoreException>(() => Backup.Make(Db, At("copy.db"))).Message, StringComparison.Ordinal);
        File.Delete(At("copy.db"));
        Assert.Contains(At("copy.db.sha256"), Assert.Throws<StoreException>(() => Backup.Make(Db, At("copy.db"))).Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(Folder, "*.part-*"));
    }

    [Fact]
    public async Task A_backup_beside_a_writer_has_whole_transactions_of_one_moment()
    {
        Open().Write("test", async write => (await write.Save("design", "a", "-1", []), await write.Save("design", "b", "-1", [])));
        using var stop = new CancellationTokenSource();
        var writing = Task.Run(() =>
        {
            for (var i = 0; !stop.IsCancellationRequested; i++)
                Opened.Write("test", async write => (await write.Save("design", "a", $"{i}", []), await write.Save("design", "b", $"{i}", [])));
        }, TestContext.Current.CancellationToken);
        for (var i = 0; i < 5; i++)
        {
            var path = Backup.Make(Db, At($"copy-{i}.db")).Path;
            using var copy = new Store(new SqliteEngine(path, Clock), Clock);
            copy.Open();
            Assert.Empty(StoreCheck.Of(path, (_, _) => null).Faults);
            Assert.Equal(copy.Read(snapshot => snapshot.Find("design", "a"))!.Body, copy.Read(snapshot => snapshot.Find("design", "b"))!.Body);
        }

        await stop.CancelAsync();
        await writing;
    }

    [Fact]
    public void A_backup_that_cannot_be_made_leaves_nothing()
    {
        Assert.Contains("no store", Assert.Throws<StoreException>(() => Backup.Make(Db, At("copy.db"))).Message, StringComparison.Ordinal);
        File.WriteAllText(Db, new string('x', 8192));
        Assert.Throws<StoreException>(() => Backup.Make(Db, At("copy.db")));
        Assert.Contains(At("nowhere"), Assert.Throws<StoreException>(() => Backup.Make(Db, At("nowhere/copy.db"))).Message, StringComparison.Ordinal);
        Assert.Equal(["pricefloor.db"], Directory.GetFileSystemEntries(Folder).Select(Path.GetFileName));
    }
}
