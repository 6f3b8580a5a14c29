using System.Globalization;
using PriceFloor.Api.Access;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.Running;

/// <summary>What the program can do with a store without serving it: copy, check, restore, forget, make a new key.</summary>
public static class StoreCommands
{
    public const string Backup = "backup";
    public const string CheckStore = "check-store";
    public const string Restore = "restore";
    public const string Forget = "forget";
    public const string NewAdminKey = "new-admin-key";
    public const string Migrate = "migrate";

    public static readonly IReadOnlyList<string> All = [Backup, CheckStore, Restore, Forget, NewAdminKey, Migrate, CopyCommand.Name];

    private static readonly Dictionary<string, string> s_noOptions = [];

    /// <summary>For verbs that work on one studio of many.</summary>
    public static readonly VerbOption Studio = new("studio", "KEY", "the studio of that key, if the store is that of a host of many");

    /// <summary>Runs a verb and returns the exit code.</summary>
    public static int Run(string verb, IReadOnlyList<string> words, IConfiguration configuration, TextWriter output,
        IReadOnlyDictionary<string, string>? options = null)
    {
        if (verb == CopyCommand.Name)
            return CopyCommand.Run(options ?? s_noOptions, configuration, output);
        var store = StoreOf(Settings.Read(configuration, demo: false), options?.GetValueOrDefault(Studio.Name));
        try
        {
            return verb switch
            {
                Backup => MakeBackup(store, words[0], output),
                CheckStore => Check(store, output),
                Restore => Put(store, words[0], output),
                NewAdminKey => MakeAdminKey(store, output),
                Migrate => Bring(store, output),
                _ => Erase(store, words[0], words[1], output),
            };
        }
        catch (StoreTroubleException e)
        {
            throw new StoreException(
                $"The store {store.Place.Name} cannot be used by {DataFolder.Asker}: {e.Message} "
                + "Check the space on its disk and the permissions of its folder.", e)
            {
                Trouble = e.Trouble,
            };
        }
    }

    private static int MakeBackup(ChosenStore store, string file, TextWriter output)
    {
        string? part = null;
        var made = ProgressLine.During(Backup, () => ShareOf(part, store.Place.Bytes),
            () => store.Place.BackUp(file, growing => part = growing));
        output.WriteLine($"{made.Path}: {made.Bytes} bytes, schema {made.Schema}, sha256 {made.Sha256}");
        if (!store.Place.TellOfBackup(made.Path, TimeProvider.System.GetUtcNow()))
            output.WriteLine("The trail (/v1/audit) does not list it: the store cannot be written now, or is from an earlier program.");
        return 0;
    }

    private static int Check(ChosenStore store, TextWriter output)
    {
        (long Done, long All) so = (0, 0);
        var report = ProgressLine.During(CheckStore, () => so.All > 0 ? (decimal)so.Done / so.All : null,
            () => store.Place.Check(FaultOf, (done, all) => so = (done, all)));
        output.WriteLine($"{store.Place.Name}: schema {report.Schema} of {store.Place.NewestSchema}, {report.Documents} documents, "
            + $"{report.Revisions} revisions, position {report.Position}");
        foreach (var fault in report.Faults)
            output.WriteLine($"  {fault}");
        output.WriteLine(report.Faults.Count == 0
            ? "All is well."
            : "Something is wrong. Restore a backup with the verb \"restore FILE\"; the store as it is will be kept.");
        return report.Faults.Count == 0 ? 0 : 1;
    }

    private static int Put(ChosenStore store, string file, TextWriter output)
    {
        using var held = Alone(store);
        var done = ProgressLine.During(Restore, () => null,
            () => store.Place.Restore(file, TimeProvider.System.GetUtcNow()));
        output.WriteLine($"{store.Place.Name} is now {Path.GetFullPath(file)} (schema "
            + $"{done.Schema}{(done.Schema < store.Place.NewestSchema ? $", brought to {store.Place.NewestSchema}" : "")}).");
        if (done.Replaced is not null)
            output.WriteLine($"What it replaced is kept as {done.Replaced}; delete it when all is well.");
        output.WriteLine("The keys are those of the backup. Followers of /v1/floor-changes must begin again without since.");
        return 0;
    }

    private static int Erase(ChosenStore store, string name, string key, TextWriter output)
    {
        if (name == Trail.Log)
            return EraseSource(store, key, output);
        if (Kinds.Find(name) is not { } kind)
            throw new SettingsException($"\"{name}\" is not a kind of document; "
                + $"they are {string.Join(", ", Kinds.All.Select(one => one.Name))} (a price's key is SKU/CHANNEL), and "
                + $"{Trail.Log} for a source of the log.");
        using var held = Alone(store);
        SpillingWriter.ClearAway(store.Folder);
        var gone = ProgressLine.During(Forget, () => null, () => store.Place.Forget(new DocumentName(name, key),
            TimeProvider.System.GetUtcNow(), kind.Below, kind.IsForgottenWhole));
        output.WriteLine($"The {name} \"{key}\" is forgotten: "
            + $"{gone} revisions are erased{Included(kind)}, {store.Place.AfterErasing}.");
        output.WriteLine("Earlier revisions of other documents may still name it; forget those by themselves. "
            + "Followers of /v1/floor-changes must begin again without since.");
        output.WriteLine(BackupsHoldIt);
        return 0;
    }

    private static int EraseSource(ChosenStore store, string source, TextWriter output)
    {
        using var held = Alone(store);
        var gone = store.Place.ForgetSource(source, TimeProvider.System.GetUtcNow());
        output.WriteLine($"What the source \"{source}\" sent to the log is forgotten: {gone} lines are erased, corrected and withdrawn "
            + $"ones included, {store.Place.AfterErasing}.");
        output.WriteLine(BackupsHoldIt);
        return 0;
    }

    private const string BackupsHoldIt =
        "Warning: backups made before (and replaced stores beside this one) still hold it. Delete them if it must be gone.";

    private static string Included(Kind kind) => kind.Name switch
    {
        Kinds.Design => ", those of its listed prices included, with its lines in the log",
        Kinds.Channel => ", with the movements there that the log had",
        Kinds.Quote => ", those of its outcome and its actual figures included",
        _ => "",
    };

    /// <summary>Does what the start does first. A database may be served meanwhile, by this version or the one before.</summary>
    private static int Bring(ChosenStore store, TextWriter output)
    {
        using var held = store.Place.IsShared ? null : Alone(store);
        using var opened = Opened(store.Place);
        output.WriteLine($"{store.Place.Name} has schema {store.Place.NewestSchema}.");
        return 0;
    }

    /// <summary>Makes a key with every scope, to replace a lost one. A running service on a file would not know it, so none may run.</summary>
    private static int MakeAdminKey(ChosenStore store, TextWriter output)
    {
        using var held = Alone(store);
        if (!store.Place.Exists)
            throw new StoreException($"There is no store at {store.Place.Name}. The first start makes one, with its first key.");
        using var opened = Opened(store.Place);
        var (name, key) =
            (string.Create(CultureInfo.InvariantCulture, $"admin-key-{TimeProvider.System.GetUtcNow():yyyyMMdd-HHmmss}"), KeyText.New());
        var path = KeyFile.Write(store.Folder, name, key);
        opened.Write(NewAdminKey, async writing =>
        {
            await writing.AddKey(KeyRing.Stored(name, key, store.Scopes, writing.Now, expires: null));
            return true;
        });
        if (store.Host is { } host)
            TellHost(host, store.Studio!, opened);
        output.WriteLine($"A key with every scope is in {path}; its name is {name}.");
        output.WriteLine(
            "The lost key still works. GET /v1/keys lists it, DELETE /v1/keys/NAME ends it. Delete the file after you have stored the key.");
        return 0;
    }

    /// <summary>How much of the store the copy already has; unknown once it is whole and is checked.</summary>
    private static decimal? ShareOf(string? copy, long store) =>
        copy is not null && new FileInfo(copy) is { Exists: true } part && part.Length < store
            ? (decimal)part.Length / store : null;

    /// <summary>
    /// Locks the data folder, so no service runs meanwhile. A database has locks of its own, and processes that serve it hear of changes.
    /// </summary>
    private static StoreLock Alone(ChosenStore store)
    {
        var held = new StoreLock(store.Folder, TimeProvider.System);
        if (!store.Place.IsShared)
            held.Take();
        return held;
    }

    /// <summary>A store that is open; one that cannot be opened is let go.</summary>
    internal static Store Opened(StorePlace place)
    {
        var store = new Store(place.Engine(TimeProvider.System), TimeProvider.System);
        try
        {
            store.Open();
            return store;
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    /// <summary>The host finds a studio by its keys. With files it looks when it opens the studio.</summary>
    private static void TellHost(StorePlace host, string studio, Store store)
    {
        using var own = Opened(host);
        new StudioKeys(own, new KeyRing(own, new KeyUses())).Follow(studio, store).GetAwaiter().GetResult();
    }

    /// <summary>The store that the settings name, or that of one of its studios.</summary>
    private static ChosenStore StoreOf(Settings settings, string? studio)
    {
        if (studio is null)
            return new ChosenStore(settings.DataFolder, settings.Store, ScopeConventions.Of(settings));
        var files = new StudioFiles(settings.DataFolder, settings.Store);
        var place = files.PlaceOf(studio);
        if (!place.Exists)
            throw new StoreException($"There is no studio \"{studio}\": the store {place.Name} is not there.");
        return settings.Store.HasRoomForStudios
            ? new ChosenStore(settings.DataFolder, place, ScopeConventions.OfStudios) { Host = settings.Store, Studio = studio }
            : new ChosenStore(files.FolderOf(studio), place, ScopeConventions.OfStudios);
    }

    /// <summary>The fault of a stored document; null if it can be read.</summary>
    internal static string? FaultOf(string kind, string body) =>
        Kinds.Find(kind) is { } known ? known.FaultIn(body) : "is of a kind that this program does not know.";

    /// <summary>The store on which a verb works.</summary>
    /// <param name="Folder">Its data folder.</param>
    /// <param name="Place">Where it is.</param>
    /// <param name="Scopes">What its keys may do.</param>
    private sealed record ChosenStore(string Folder, StorePlace Place, IReadOnlyList<Scope> Scopes)
    {
        /// <summary>The host beside whose rows it has its own.</summary>
        public StorePlace? Host { get; init; }

        /// <summary>The key by which the host knows it.</summary>
        public string? Studio { get; init; }
    }
}
