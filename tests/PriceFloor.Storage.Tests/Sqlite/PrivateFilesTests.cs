using System.Runtime.Versioning;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Whoever runs the service is warned of files that others can reach, with the command to close them.</summary>
[UnsupportedOSPlatform("windows")]
public sealed class PrivateFilesTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-rights-").FullName; // mode 0700

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_folder_of_private_files_needs_no_word()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Rights of files are those of Unix.");
        Make("pricefloor.db", "rw-------");
        Make("somebody-elses.txt", "rw-r--r--");
        Assert.Null(PrivateFiles.Warning(_folder));
        Assert.Null(PrivateFiles.Warning(Path.Combine(_folder, "nowhere")));
    }

    [Theory]
    [InlineData("pricefloor.db", "rw-r--r--", "0644")]
    [InlineData("pricefloor.db-wal", "rw-r-----", "0640")]
    [InlineData("pricefloor.db.replaced-20270102T090000Z", "rw----r--", "0604")]
    [InlineData("first-admin-key", "rw-rw----", "0660")]
    [InlineData("admin-key-20270102-090000", "rw-----w-", "0602")]
    public void A_file_that_others_can_reach_is_named_with_its_mode_and_the_command(string name, string rights, string mode)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Rights of files are those of Unix.");
        var path = Make(name, rights);
        Assert.Equal(
            $"Other users of this machine can reach {path} (mode {mode}). A household's budget and keys are in there. Run: chmod go= {path}",
            PrivateFiles.Warning(_folder));
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        Assert.Null(PrivateFiles.Warning(_folder));
    }

    [Fact]
    public void Backups_count_too_and_many_files_are_closed_by_one_command()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Rights of files are those of Unix.");
        Directory.CreateDirectory(Path.Combine(_folder, "backups"), Mode("rwx------"));
        var one = Make("backups/pricefloor-20270102T090000Z.db", "rw-r--r--");
        Assert.Contains(one, PrivateFiles.Warning(_folder), StringComparison.Ordinal);
        for (var i = 0; i < 8; i++)
            Make($"backups/pricefloor-2027010{i}T000000Z.db", "rw-r--r--");
        Assert.EndsWith($" and 1 more. A household's budget and keys are in there. Run: chmod -R go= {_folder}", PrivateFiles.Warning(_folder),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_store_and_a_lock_are_private_and_a_store_that_was_there_keeps_its_rights()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Rights of files are those of Unix.");
        var path = Path.Combine(_folder, "pricefloor.db");
        using (var alone = new StoreLock(_folder, TimeProvider.System))
        using (var store = new Store(new SqliteEngine(path, TimeProvider.System), TimeProvider.System))
        {
            alone.Take();
            store.Open();
            Assert.Null(PrivateFiles.Warning(_folder));
        }

        File.SetUnixFileMode(path, Mode("rw-r-----"));
        using var again = new Store(new SqliteEngine(path, TimeProvider.System), TimeProvider.System);
        again.Open();
        Assert.Equal(Mode("rw-r-----"), File.GetUnixFileMode(path));
        Assert.Contains($"{path} (mode 0640)", PrivateFiles.Warning(_folder), StringComparison.Ordinal);
    }

    private string Make(string name, string rights)
    {
        var path = Path.Combine(_folder, name);
        File.WriteAllText(path, "");
        File.SetUnixFileMode(path, Mode(rights));
        return path;
    }

    /// <summary>Permissions as ls writes them.</summary>
    private static UnixFileMode Mode(string rights) => (UnixFileMode)rights.Select((letter, i) => letter == '-' ? 0 : 1 << (8 - i)).Sum();
}
