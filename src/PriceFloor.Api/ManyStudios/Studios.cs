using PriceFloor.Api.Access;
using PriceFloor.Api.Backups;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.ManyStudios;

/// <summary>
/// The studios that the process serves: its own; or many, and then its own store is the host's, with the list of studios and everybody's keys.
/// </summary>
public sealed class Studios : IDisposable
{
    private readonly StoreMaker _stores;
    private readonly IServiceProvider _shared;

    /// <param name="settings">The settings, which name its place.</param>
    /// <param name="alone">Made before any store, so it is released after them.</param>
    /// <param name="stores">Makes its store.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="shared">The services that all studios share.</param>
    public Studios(Settings settings, StoreLock alone, StoreMaker stores, TimeProvider clock, IServiceProvider shared)
    {
        ArgumentNullException.ThrowIfNull(alone);
        (_stores, _shared) = (stores, shared);
        Own = new Studio(settings.Store, settings.DataFolder, stores.Make(settings.Store), shared);
        if (!settings.HasManyStudios)
            return;
        Files = new StudioFiles(settings.DataFolder, settings.Store);
        Many = new OpenStudios(Files, settings, clock, Open);
    }

    /// <summary>The studio whose store is in the data folder: the only one, or the host.</summary>
    public Studio Own { get; }

    /// <summary>The host's studios; null if there is one studio, and no host.</summary>
    public OpenStudios? Many { get; }

    /// <summary>Where they are.</summary>
    public StudioFiles? Files { get; }

    /// <summary>Answers the request of a studio's key in that studio, with its services.</summary>
    public async Task InStudio(HttpContext context, RequestDelegate next)
    {
        if (context.Features.Get<Caller>() is not { Studio: { } key } caller)
        {
            await next(context);
            return;
        }

        using var use = await Enter(key, context.Features.Get<FreshStudio>()?.Studio);
        if (!await IsOpenedBy(use.Studio, caller))
            throw new KeyEndedException();
        context.Features.Set<Microsoft.AspNetCore.Http.Features.IServiceProvidersFeature>(use.Studio);
        await next(context);
    }

    /// <summary>Opens a studio, and hears what other processes did to it before.</summary>
    /// <param name="key">The key of the studio.</param>
    /// <param name="fresh">The studio that has been asked about for this request; null if none has.</param>
    public async ValueTask<StudioUse> Enter(string key, Studio? fresh = null)
    {
        while (true)
        {
            var use = await Many!.Enter(key);
            if (!use.Studio.Store.IsShared || await IsInStep(use, fresh))
                return use;
            await Many.Close(key); // another process has forgotten it, and perhaps begun another of that key
        }
    }

    /// <summary>
    /// Hears in one question what other processes did to the host's store and to the studio for which a request probably is.
    /// </summary>
    public async Task Fresh(string? likely, HttpContext context)
    {
        if (likely is null || Many!.Find(likely) is not { } studio)
        {
            await Own.Store.Fresh();
            return;
        }

        var asked = IsThere(studio);
        await Own.Store.Fresh();
        if (await asked)
            context.Features.Set(new FreshStudio(studio));
    }

    /// <summary>The limits of a studio hold from now on.</summary>
    public async Task Limit(string key)
    {
        using var use = await Enter(key);
        await ReadLimits(use.Studio);
    }

    /// <summary>The host's studios for whoever backs them up.</summary>
    public async ValueTask<IReadOnlyList<StudioToBackUp>> ToBackUp() => Many is null ? []
        : [.. (await Own.Store.ReadAsync(snapshot => snapshot.List(Kinds.Studio)))
            .Select(studio => new StudioToBackUp(Files!.FolderOf(studio.Key), ask => AskBackups(studio.Key, ask)))];

    private async Task<TimeSpan?> AskBackups(string key, Func<BackupFolder, TimeSpan> ask)
    {
        try
        {
            using var use = await Many!.Enter(key);
            return ask(use.Studio.GetRequiredService<BackupFolder>());
        }
        catch (Exception e) when (e is StoreTroubleException or NoStudioException)
        {
            Log.Warning("No backup of the studio {Studio} was made: {Message}", key, e.Message);
            return null;
        }
    }

    /// <summary>Makes the store of a new studio; what a studio of that key left behind when it was forgotten is deleted.</summary>
    internal async Task BeginAsync(string key)
    {
        await Files!.BeginAsync(key);
        using var store = _stores.Make(Files.PlaceOf(key));
        await store.OpenAsync();
    }

    /// <summary>
    /// Finishes what a process left that ended while it forgot a studio, or made one. Studios are made within a write of the host, so in one no other
    /// process is halfway.
    /// </summary>
    internal async Task ClearAwayAsync()
    {
        Files!.ClearAway();
        if (!Own.Place.HasRoomForStudios)
            return;
        var left = await Own.Store.WriteAsync("the start", async writing =>
        {
            var listed = (await writing.List(Kinds.Studio)).Select(studio => studio.Key).ToHashSet();
            return (await Own.Place.StudiosAsync()).Where(one => !listed.Contains(one.Key)).ToList();
        });
        foreach (var one in left)
            try
            {
                await one.Delete();
            }
            catch (StoreException e)
            {
                Log.Warning("What the forgotten studio {Studio} has left is deleted at the next start: {Message}", one.Key, e.Message);
            }
    }

    public void Dispose()
    {
        Many?.Dispose();
        Own.Dispose();
    }

    /// <summary>False if it is gone; then it is no longer in use.</summary>
    private async ValueTask<bool> IsInStep(StudioUse use, Studio? fresh)
    {
        try
        {
            if (use.Studio != fresh)
                await use.Studio.Store.Fresh();
            if (use.Studio.LimitsAt?.IsAt(Own.Store.Point) != true)
                await ReadLimits(use.Studio);
            return true;
        }
        catch (StoreGoneException)
        {
            use.Dispose();
            return false;
        }
        catch
        {
            use.Dispose();
            throw;
        }
    }

    private async Task ReadLimits(Studio studio)
    {
        var at = Own.Store.Point; // no later than what is read
        (studio.Store.Limits, studio.LimitsAt) = (await LimitsOf(studio.Key!), at);
    }

    private static async Task<bool> IsThere(Studio studio)
    {
        try
        {
            await studio.Store.Fresh();
            return true;
        }
        catch (Exception e) when (e is StoreGoneException or StoreTroubleException or ObjectDisposedException)
        {
            return false; // whoever opens it finds out
        }
    }

    /// <summary>Whether the studio's own store has the key too: the host may not have been told that it ended.</summary>
    private static async ValueTask<bool> IsOpenedBy(Studio studio, Caller caller) => studio.Store.IsShared
        ? (await studio.GetRequiredService<KeyRing>().Keys).Have(caller.Secret)
        : !studio.HadOtherKeys || await studio.Store.ReadAsync(snapshot => HasKey(snapshot, caller));

    private static async ValueTask<bool> HasKey(Snapshot snapshot, Caller caller) => (await snapshot.Keys).Exists(key =>
        key.Hash.AsSpan().SequenceEqual(caller.Secret) || key.PreviousHash.AsSpan().SequenceEqual(caller.Secret));

    private async Task<Studio> Open(string key, StorePlace place, Action takeAlone)
    {
        var (at, limits) = (Own.Store.Point, await LimitsOf(key)); // nobody opens a studio that is not there
        if (!place.IsShared && !place.Exists)
            throw new StoreException($"The store {place.Name} of the studio {key} is not there. Restore a backup of it.");
        takeAlone();
        var store = _stores.Make(place);
        var studio = new Studio(place, Files!.FolderOf(key), store, _shared) { Key = key, Host = Own, LimitsAt = at };
        try
        {
            await store.OpenAsync();
            store.Limits = limits;
            studio.HadOtherKeys = await new StudioKeys(Own.Store, Own.GetRequiredService<KeyRing>()).Follow(key, await KeysOf(studio));
            return studio;
        }
        catch
        {
            studio.Dispose();
            throw;
        }
    }

    /// <summary>Where a request asks for them too, they are read once.</summary>
    private static async ValueTask<IReadOnlyList<StoredKey>> KeysOf(Studio studio) => studio.Store.IsShared
        ? (await studio.GetRequiredService<KeyRing>().Keys).Stored : await studio.Store.ReadAsync(snapshot => snapshot.Keys);

    private async Task<StoreLimits> LimitsOf(string key) =>
        await Own.Store.ReadAsync(snapshot => snapshot.Find(Kinds.Studio, key)) is { } found
            ? StoredText<HostedStudio>.Of(found).Limits?.OfStore() ?? StoreLimits.None
            : throw new NoStudioException(key);
}

/// <summary>A studio about which a request has asked already.</summary>
internal sealed record FreshStudio(Studio Studio);

/// <summary>There is no studio of that key.</summary>
public sealed class NoStudioException(string key) : Exception($"There is no studio \"{key}\".");
