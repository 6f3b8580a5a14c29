using System.ComponentModel;
using System.Diagnostics;

namespace PriceFloor.Benchmarks;

/// <summary>The service that was written by hand for Node, in node/: one process, as its users would start it.</summary>
public static class NodeService
{
    public const string Key = "a-key-for-the-service-in-node-of-forty-chars";

    private static readonly string s_source = Path.Combine("tests", "PriceFloor.Benchmarks", "node");

    /// <summary>Its folder with the packages that its lock names, or null and why there is none.</summary>
    public static async Task<(string? Folder, string? Why)> InstallAsync()
    {
        if (!Runs("node", "--version") || !Runs("npm", "--version"))
            return (null, "there is no Node (node and npm) here");
        var folder = Path.GetFullPath(Path.Combine(Published.Made, "node"));
        var installed = Path.Combine(folder, "installed.json"); // the lock of what is there, so that nothing is built twice
        var theLock = await File.ReadAllTextAsync(Path.Combine(s_source, "package-lock.json"));
        Directory.CreateDirectory(folder);
        foreach (var file in Directory.EnumerateFiles(s_source))
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)), overwrite: true);
        if (!File.Exists(installed) || await File.ReadAllTextAsync(installed) != theLock)
        {
            using var npm =
                Process.Start(new ProcessStartInfo("npm", ["ci", "--no-audit", "--no-fund", "--loglevel", "error"]) { WorkingDirectory = folder })!;
            await npm.WaitForExitAsync();
            if (npm.ExitCode != 0)
                return (null, "its packages cannot be installed here");
            await File.WriteAllTextAsync(installed, theLock);
        }

        return (folder, null);
    }

    /// <param name="folder">Where it is installed.</param>
    /// <param name="port">Where it listens.</param>
    /// <param name="priceList">What ours answered as its price list.</param>
    public static async Task<CheckingService> StartAsync(string folder, int port, string priceList)
    {
        var data = new TemporaryFolder();
        await File.WriteAllTextAsync(data.File("price-list.json"), priceList);
        var process = await ServedProcess.StartAsync("node", [Path.Combine(folder, "server.mjs")], new Dictionary<string, string>
        {
            ["NODE_ENV"] = "production",
            ["PORT"] = $"{port}",
            ["STORE"] = data.File("prices.db"),
            ["PRICE_LIST"] = data.File("price-list.json"),
            ["KEY"] = Key,
        }, port);
        return new CheckingService(process, Key, new Both(process, data));
    }

    private static bool Runs(string program, string argument)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, argument) { UseShellExecute = false, RedirectStandardOutput = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    private sealed class Both(ServedProcess process, TemporaryFolder data) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            await process.DisposeAsync();
            data.Dispose();
        }
    }
}
