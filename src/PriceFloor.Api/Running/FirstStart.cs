using PriceFloor.Api.Demo;
using PriceFloor.Api.Http;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.Running;

/// <summary>Before the first request: makes sure that no other process serves the data folder, opens the store, makes the first key, fills an empty store with the demo studio where asked.</summary>
public sealed class FirstStart(Settings settings, StoreLock alone, Store store, KeyRing ring, DemoStudio demo, IConfiguration configuration) : IHostedService
{
    public Task StartAsync(CancellationToken cancellationToken)
    {
        WarnAboutUnknownNames();
        alone.Take();
        store.Open();
        var firstKey = store.Read(snapshot => snapshot.Keys.Count == 0) ? MakeFirstKey() : null;
        if (settings.Demo)
            FillWithDemo(firstKey);
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>The operator's own key, or a new one in a file that only they can read: never in a log.</summary>
    private string MakeFirstKey()
    {
        var key = settings.AdminKey ?? KeyText.New();
        if (settings.AdminKey is null)
        {
            var path = Path.GetFullPath(Path.Combine(settings.DataFolder, "first-admin-key"));
            WriteForOwnerOnly(path, key + "\n");
            Log.Information("The first key is in {Path}", path);
        }

        store.Write("first-start", writing =>
        {
            writing.AddKey(KeyRing.Stored("first-admin-key", key, Enum.GetValues<Scope>(), writing.Now, expires: null));
            return true;
        });
        ring.Refresh();
        return key;
    }

    private void FillWithDemo(string? firstKey)
    {
        if (!store.Read(snapshot => snapshot.IsEmpty))
        {
            Console.WriteLine("The store is not empty, so the demo studio was left out.");
            return;
        }

        demo.Fill(store);
        Console.WriteLine(DemoStudio.Greeting(firstKey, settings.DataFolder, configuration["urls"]?.Split(';')[0] ?? Starting.DefaultAddress));
    }

    private static void WriteForOwnerOnly(string path, string text)
    {
        try
        {
            var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            File.Delete(path); // one that lies there from before may be open to others
            using var writer = new StreamWriter(path, options);
            writer.Write(text);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StoreException($"The first key cannot be written to {path}: {e.Message} Make the data folder writable.", e);
        }
    }

    private void WarnAboutUnknownNames()
    {
        foreach (var (name, _) in configuration.AsEnumerable())
            if (name.StartsWith("PRICEFLOOR_", StringComparison.OrdinalIgnoreCase) && !Settings.Names.ContainsKey(name))
                Log.Warning("{Name} is not a setting of PriceFloor; known are {Names}", name, string.Join(", ", Settings.Names.Keys));
    }
}
