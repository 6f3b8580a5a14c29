using PriceFloor.Api.Access;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Demo;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.Running;

/// <summary>
/// Before the first request: makes sure that no other process serves the data folder, opens the store, makes the first key, and fills an empty store
/// with the demo studio if requested.
/// </summary>
public sealed class StoreInitializer(Settings settings, StoreLock alone, Store store, StoreReadiness opening, KeyRing ring, Lazy<DemoStudio> demo,
    Studios studios, IConfiguration configuration, IHostApplicationLifetime lifetime) : IHostedService
{
    private static readonly TimeSpan s_untilAskedAgain = TimeSpan.FromSeconds(1);

    private readonly Lock _once = new();
    private Task? _begun;
    private Task _upgrading = Task.CompletedTask;

    /// <summary>Begins while the rest of the service is still being built; <see cref="StartAsync"/> reports failures.</summary>
    public Task Begin()
    {
        lock (_once)
            return _begun ??= Task.Run(OpenOrUpgrade);
    }

    public Task StartAsync(CancellationToken cancellationToken) => Begin();

    /// <summary>An upgrade that has begun is finished, however long the host is willing to wait.</summary>
    public Task StopAsync(CancellationToken cancellationToken) => _upgrading;

    private void OpenOrUpgrade()
    {
        SettingsInUse.Tell(configuration, settings);
        alone.Take();
        SpillingWriter.ClearAway(settings.DataFolder);
        if (store.IsShared)
            _upgrading = OpenSoon();
        else if (store.IsBehind())
            _upgrading = Task.Run(OpenOrStop, CancellationToken.None);
        else
            Open();
    }

    private void OpenOrStop()
    {
        Log.Information("The store is from an earlier program; it is upgraded first");
        try
        {
            using var progress = ProgressLine.Start("upgrade", () => null);
            Open();
        }
        catch (Exception e)
        {
            opening.Fail(e);
            lifetime.StopApplication();
        }
    }

    /// <summary>
    /// A server that cannot be reached is asked again: the process lives on, refuses what needs the store, and serves when the server is there.
    /// </summary>
    private Task OpenSoon()
    {
        try
        {
            Open();
            return Task.CompletedTask;
        }
        catch (StoreException e) when (e.Trouble == StoreTrouble.Busy)
        {
            Log.Warning("{Message:l} It is asked again each second", e.Message);
            return Task.Run(OpenWhenThere);
        }
    }

    private async Task OpenWhenThere()
    {
        while (!lifetime.ApplicationStopping.IsCancellationRequested)
        {
            await Task.Delay(s_untilAskedAgain, lifetime.ApplicationStopping).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            try
            {
                Open();
                Log.Information("The store is open");
                return;
            }
            catch (StoreException e) when (e.Trouble == StoreTrouble.Busy)
            {
                // Not yet.
            }
            catch (Exception e)
            {
                opening.Fail(e);
                lifetime.StopApplication();
                return;
            }
        }
    }

    private void Open()
    {
        if (store.Open() is { } upgrade)
            Log.Information("The store was upgraded from schema {From} to {To}; a copy of the old store is in {Backup}", upgrade.From,
                upgrade.To, upgrade.Backup ?? "the server's own backups");
        if (store.WhyAnotherLife is { } why)
            Log.Warning("The store is not the one served here last: {Why:l}. Followers of floor changes must begin again, "
                + "and no ETag from before matches. To go back to a backup, use the verb restore", why);
        var keys = store.Read(snapshot => snapshot.Keys);
        RefuseOtherKind(keys);
        if (settings.HasManyStudios && keys.Count > 0)
            studios.ClearAwayAsync().GetAwaiter().GetResult();
        var isNew = keys.Count == 0;
        var madeKey = isNew ? MakeFirstKey() : null;
        if (settings.Demo)
            FillWithDemo(madeKey, isNew);
        if (PrivateFiles.Warning(settings.DataFolder) is { } warning)
            Log.Warning("{Warning:l}", warning);
        opening.Finish();
    }

    /// <summary>The store of a studio is not served as a host's, nor a host's as a studio's: its keys say which it is.</summary>
    private void RefuseOtherKind(IReadOnlyList<StoredKey> keys)
    {
        var isOfHost = keys.Any(key => KeyRing.ScopesOf(key).Contains(Scope.Host));
        if (isOfHost && !settings.HasManyStudios)
            throw new StoreException($"{settings.Store.Name} is the store of a host of many studios. Set PRICEFLOOR_STUDIOS=many, or "
                + (store.IsShared ? "use another database." : "set PRICEFLOOR_DATA to the folder of one of them, in studios/ beside it."));
        if (keys.Count > 0 && !isOfHost && settings.HasManyStudios)
            throw new StoreException($"{settings.Store.Name} is the store of one studio. For many, "
                + (store.IsShared ? "use another database, and copy this store into a studio there; "
                    : "set PRICEFLOOR_DATA to another folder, make the studio there, and restore a backup of this store in its folder; ")
                + "docs/many-studios.md says how.");
    }

    /// <summary>The operator's own key, or a new one in a file that only they can read: never in a log.</summary>
    /// <returns>The key if it was made here; only the operator may show their own. Of processes that start at once, the first one makes it.</returns>
    private string? MakeFirstKey()
    {
        var key = settings.AdminKey?.Value ?? KeyText.New();
        var isFirst = store.Write("first-start", async writing =>
        {
            if ((await writing.Keys).Count > 0)
                return false;
            if (settings.AdminKey is null)
                Log.Information("The first key is in {Path}", KeyFile.Write(settings.DataFolder, "first-admin-key", key));
            await writing.AddKey(KeyRing.Stored("first-admin-key", key, ScopeConventions.Of(settings), writing.Now, expires: null));
            return true;
        });
        ring.Refresh();
        return settings.AdminKey is null && isFirst ? key : null;
    }

    private void FillWithDemo(string? madeKey, bool isNew)
    {
        if (!store.Read(snapshot => snapshot.IsEmpty) || !demo.Value.Fill(store))
        {
            Console.WriteLine("The store is not empty, so the demo studio was left out.");
            return;
        }

        var elsewhere = isNew
            ? $"your own, {settings.AdminKey?.Place}"
            : $"from an earlier start: the one chosen then, or the one in {Path.Combine(settings.DataFolder, "first-admin-key")}";
        Console.WriteLine(DemoStudio.Greeting(madeKey, elsewhere, configuration["urls"]?.Split(';')[0] ?? Addresses.Usual));
    }
}
