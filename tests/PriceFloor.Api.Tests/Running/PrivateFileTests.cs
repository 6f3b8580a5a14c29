using System.Net.Http.Headers;
using System.Runtime.Versioning;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>No other user of the machine can read what the program writes, not even for a moment.</summary>
[UnsupportedOSPlatform("windows")]
public sealed class PrivateFileTests : IDisposable
{
    private const UnixFileMode Mine = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode Open = Mine | UnixFileMode.GroupRead | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherExecute;

    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-private-").FullName;
    private readonly string _elsewhere = Directory.CreateTempSubdirectory("pricefloor-elsewhere-").FullName;

    public void Dispose()
    {
        Directory.Delete(_folder, recursive: true);
        Directory.Delete(_elsewhere, recursive: true);
    }

    [Fact]
    public async Task Every_file_is_its_owners_only_from_its_first_byte_in_a_folder_that_is_open_to_all()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Rights of files are those of Unix.");
        foreach (var folder in new[] { _folder, _elsewhere })
            File.SetUnixFileMode(folder, Open);
        using var watch = new Watch(_folder, _elsewhere);
        using (var service = RealProgram.StartUnmasked(_folder))
        {
            await RealProgram.Ready(service);
            await MakeBackup(service.Address, (await File.ReadAllTextAsync(Path.Combine(_folder, "first-admin-key"), Studio.Cancellation)).Trim());
            using (var verb = RealProgram.StartUnmasked(_folder, "backup", Path.Combine(_elsewhere, "monday.db")))
                await verb.Process.WaitForExitAsync(Studio.Cancellation);
            watch.Look();
            await RealProgram.Terminate(service);
            var log = await service.Process.StandardOutput.ReadToEndAsync(Studio.Cancellation);
            Assert.Contains($"Other users of this machine can reach {_folder} (mode 0755). A household's budget and keys are in there. Run: "
                + $"chmod go= {_folder}", log, StringComparison.Ordinal);
        }

        using (var verb = RealProgram.StartUnmasked(_folder, "restore", Path.Combine(_elsewhere, "monday.db")))
            await verb.Process.WaitForExitAsync(Studio.Cancellation);
        using (var verb = RealProgram.StartUnmasked(_folder, "new-admin-key"))
            await verb.Process.WaitForExitAsync(Studio.Cancellation);
        Assert.Equal([], watch.Ended());
        string[] expected = ["pricefloor.db", "pricefloor.db-wal", "pricefloor.db-shm", "pricefloor.lock", "first-admin-key", "backups", "monday.db",
            "monday.db.sha256", "pricefloor.db.replaced-", "admin-key-"];
        Assert.All(expected, name => Assert.Contains(watch.Seen, seen => Path.GetFileName(seen).StartsWith(name, StringComparison.Ordinal)));
    }

    private static async Task MakeBackup(string address, string key)
    {
        using var client = new HttpClient { BaseAddress = new Uri(address) };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        using var made = await client.PostAsync(new Uri("/v1/backups", UriKind.Relative), null, Studio.Cancellation);
        Assert.Equal(201, (int)made.StatusCode);
    }

    /// <summary>Checks the permissions of all files repeatedly until it is stopped.</summary>
    private sealed class Watch : IDisposable
    {
        private readonly string[] _folders;
        private readonly CancellationTokenSource _end = new();
        private readonly HashSet<string> _open = [];
        private readonly Thread _looking;

        public Watch(params string[] folders)
        {
            _folders = folders;
            _looking = new Thread(() =>
            {
                while (!_end.IsCancellationRequested)
                {
                    Look();
                    Thread.Sleep(1);
                }
            })
            { IsBackground = true };
            _looking.Start();
        }

        public HashSet<string> Seen { get; } = [];

        public void Look()
        {
            lock (Seen)
                foreach (var path in _folders.SelectMany(folder => Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories)))
                    try
                    {
                        var mode = File.GetUnixFileMode(path);
                        Seen.Add(path);
                        if ((mode & ~Mine) != UnixFileMode.None)
                            _open.Add($"{path} {mode}");
                    }
                    catch (IOException)
                    {
                        // It has gone meanwhile.
                    }
        }

        public IReadOnlyCollection<string> Ended()
        {
            _end.Cancel();
            _looking.Join();
            return _open;
        }

        public void Dispose()
        {
            Ended();
            _end.Dispose();
        }
    }
}
