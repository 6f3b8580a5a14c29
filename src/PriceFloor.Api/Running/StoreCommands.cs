using System.Globalization;
using PriceFloor.Api.Access;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
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

    public static readonly IReadOnlyList<string> All = [Backup, CheckStore, Restore, Forget, NewAdminKey];

    /// <summary>Runs a verb and returns the exit code.</summary>
    public static int Run(string verb, IReadOnlyList<string> words, IConfiguration configuration, TextWriter output)
    {
        var settings = Settings.Read(configuration, demo: false);
        try
        {
            return verb switch
            {
                Backup => MakeBackup(settings, words[0], output),
                CheckStore => Check(settings, output),
                Restore => Put(settings, words[0], output),
                NewAdminKey => MakeAdminKey(settings, output),
                _ => Erase(settings, words[0], words[1], output),
            };
        }
        catch (StoreTroubleException e)
        {
            throw new StoreException(
                $"The store {settings.Store.Name} cannot be used by {DataFolder.Asker}: {e.Message} "
                + "Check the space on its disk and the permissions of its folder.", e)
            {
                Trouble = e.Trouble,
            };
        }
    }

    private static int MakeBackup(Settings settings, string file, TextWriter output)
    {
        string? part = null;
        var made = ProgressLine.During(Backup, () => ShareOf(part, settings.Store.Bytes),
            () => settings.Store.BackUp(file, growing => part = growing));
        output.WriteLine($"{made.Path}: {made.Bytes} bytes, schema {made.Schema}, sha256 {made.Sha256}");
        if (!settings.Store.TellOfBackup(made.Path, TimeProvider.System.GetUtcNow()))
            output.WriteLine("The trail (/v1/audit) does not list it: the store cannot be written now, or is from an earlier program.");
        return 0;
    }

    private static int Check(Settings settings, TextWriter output)
    {
        (long Done, long All) so = (0, 0);
        var report = ProgressLine.During(CheckStore, () => so.All > 0 ? (decimal)so.Done / so.All : null,
            () => settings.Store.Check(FaultOf, (done, all) => so = (done, all)));
        output.WriteLine($"{settings.Store.Name}: schema {report.Schema} of {settings.Store.NewestSchema}, {report.Documents} documents, "
            + $"{report.Revisions} revisions, position {report.Position}");
        foreach (var fault in report.Faults)
            output.WriteLine($"  {fault}");
        output.WriteLine(report.Faults.Count == 0
            ? "All is well."
            : "Something is wrong. Restore a backup with the verb \"restore FILE\"; the store as it is will be kept.");
        return report.Faults.Count == 0 ? 0 : 1;
    }

    private static int Put(Settings settings, string file, TextWriter output)
    {
        using var held = Alone(settings);
        var done = ProgressLine.During(Restore, () => null,
            () => settings.Store.Restore(file, TimeProvider.System.GetUtcNow()));
        output.WriteLine($"{settings.Store.Name} is now {Path.GetFullPath(file)} (schema "
            + $"{done.Schema}{(done.Schema < settings.Store.NewestSchema ? $", brought to {settings.Store.NewestSchema}" : "")}).");
        if (done.Replaced is not null)
            output.WriteLine($"What it replaced is kept as {done.Replaced}; delete it when all is well.");
        output.WriteLine("The keys are those of the backup. Followers of /v1/floor-changes must begin again without since.");
        return 0;
    }

    private static int Erase(Settings settings, string name, string key, TextWriter output)
    {
        if (name == Trail.Log)
            return EraseSource(settings, key, output);
        if (Kinds.Find(name) is not { } kind)
            throw new SettingsException($"\"{name}\" is not a kind of document; "
                + $"they are {string.Join(", ", Kinds.All.Select(one => one.Name))} (a price's key is SKU/CHANNEL), and "
                + $"{Trail.Log} for a source of the log.");
        using var held = Alone(settings);
        SpillingWriter.ClearAway(settings.DataFolder);
        var gone = ProgressLine.During(Forget, () => null, () => settings.Store.Forget(new DocumentName(name, key),
            TimeProvider.System.GetUtcNow(), kind.Below, kind.IsForgottenWhole));
        output.WriteLine($"The {name} \"{key}\" is forgotten: "
            + $"{gone} revisions are erased{Included(kind)}, {settings.Store.AfterErasing}.");
        output.WriteLine("Earlier revisions of other documents may still name it; forget those by themselves. "
            + "Followers of /v1/floor-changes must begin again without since.");
        output.WriteLine(BackupsHoldIt);
        return 0;
    }

    private static int EraseSource(Settings settings, string source, TextWriter output)
    {
        using var held = Alone(settings);
        var gone = settings.Store.ForgetSource(source, TimeProvider.System.GetUtcNow());
        output.WriteLine($"What the source \"{source}\" sent to the log is forgotten: {gone} lines are erased, corrected and withdrawn "
            + $"ones included, {settings.Store.AfterErasing}.");
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

    /// <summary>Makes a key with every scope, to replace a lost one. A running service would not know it, so none may run.</summary>
    private static int MakeAdminKey(Settings settings, TextWriter output)
    {
        using var held = Alone(settings);
        if (!settings.Store.Exists)
            throw new StoreException($"There is no store at {settings.Store.Name}. The first start makes one, with its first key.");
        using var store = new Store(settings.Store.Engine(TimeProvider.System), TimeProvider.System);
        store.Open();
        var (name, key) =
            (string.Create(CultureInfo.InvariantCulture, $"admin-key-{TimeProvider.System.GetUtcNow():yyyyMMdd-HHmmss}"), KeyText.New());
        var path = KeyFile.Write(settings, name, key);
        store.Write(NewAdminKey, async writing =>
        {
            await writing.AddKey(KeyRing.Stored(name, key, ScopeConventions.Of(settings), writing.Now, expires: null));
            return true;
        });
        output.WriteLine($"A key with every scope is in {path}; its name is {name}.");
        output.WriteLine(
            "The lost key still works. GET /v1/keys lists it, DELETE /v1/keys/NAME ends it. Delete the file after you have stored the key.");
        return 0;
    }

    /// <summary>How much of the store the copy already has; unknown once it is whole and is checked.</summary>
    private static decimal? ShareOf(string? copy, long store) =>
        copy is not null && new FileInfo(copy) is { Exists: true } part && part.Length < store
            ? (decimal)part.Length / store : null;

    /// <summary>Locks the data folder, so no service runs meanwhile.</summary>
    private static StoreLock Alone(Settings settings)
    {
        var held = new StoreLock(settings.DataFolder, TimeProvider.System);
        held.Take();
        return held;
    }

    /// <summary>The fault of a stored document; null if it can be read.</summary>
    private static string? FaultOf(string kind, string body) =>
        Kinds.Find(kind) is { } known ? known.FaultIn(body) : "is of a kind that this program does not know.";
}
