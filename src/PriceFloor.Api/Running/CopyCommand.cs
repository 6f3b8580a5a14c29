using System.Security.Cryptography;
using PriceFloor.Api.Access;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Storage;

namespace PriceFloor.Api.Running;

/// <summary>
/// Copies a store between a data folder and the database that the settings name, that of a host with all its studios. All of it is copied,
/// checked and compared, or nothing.
/// </summary>
public static class CopyCommand
{
    public const string Name = "copy-store";

    public const string Does = "copies the store of a data folder into the database of PRICEFLOOR_STORE, or back, with its keys and its log";

    public const string Note = "Give one of --from and --to. No service may use the folder. A store of many studios is copied with all of them.\n"
        + "The copy has a life of its own: followers of /v1/floor-changes begin again, and no ETag from before matches. It ends with 0, or with 1 after one "
        + "sentence that says what is wrong.";

    private static readonly VerbOption s_from = new("from", "FOLDER", "the data folder whose store is copied into the database");
    private static readonly VerbOption s_to = new("to", "FOLDER", "a new data folder for a copy of the store in the database");

    public static readonly VerbOption[] Options = [s_from, s_to];

    /// <summary>Runs the verb and returns the exit code.</summary>
    public static int Run(IReadOnlyDictionary<string, string> options, IConfiguration configuration, TextWriter output)
    {
        var (from, to) = (options.GetValueOrDefault(s_from.Name), options.GetValueOrDefault(s_to.Name));
        if (from is null == to is null)
            throw new SettingsException($"Write it like this: {Name} {s_from.Usage}, or {Name} {s_to.Usage}");
        var settings = Settings.Read(configuration, demo: false);
        if (!settings.Store.HasRoomForStudios)
            throw new SettingsException($"{Name} needs a database in {StoreChoice.Setting}; between folders use backup and restore.");
        var database = new Side(settings.DataFolder, settings.Store);
        try
        {
            ProgressLine.During(Name, () => null, () => from is null ? OutInto(to!, database, output) : InFrom(from, database, output));
            return 0;
        }
        catch (StoreTroubleException e)
        {
            throw new StoreException($"Nothing was copied: {e.Message}", e) { Trouble = e.Trouble };
        }
        catch (ImportException e)
        {
            throw new StoreException($"Nothing was copied: {e.Message}", e);
        }
    }

    private static bool InFrom(string folder, Side database, TextWriter output)
    {
        var files = new Side(folder, StoreChoice.InFolder(folder));
        if (!files.Own.Exists)
            throw new StoreException($"There is no store at {files.Own.Name}. Check --{s_from.Name}.");
        using var alone = Alone(folder);
        CopyAll(files, database, output);
        return true;
    }

    /// <summary>The folder gets its name once everything is in it.</summary>
    private static bool OutInto(string folder, Side database, TextWriter output)
    {
        var whole = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (Directory.Exists(whole) && Directory.EnumerateFileSystemEntries(whole).Any())
            throw new StoreException($"The folder {whole} is not empty. Name a new one.");
        var part = $"{whole}.part-{Guid.NewGuid():N}";
        try
        {
            DataFolder.Create(part);
            CopyAll(database, new Side(part, StoreChoice.InFolder(part)), output);
            if (Directory.Exists(whole))
                Directory.Delete(whole);
            Directory.Move(part, whole);
            output.WriteLine($"It is in {whole}.");
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DataFolder.Refused(whole, e);
        }
        finally
        {
            if (Directory.Exists(part))
                Directory.Delete(part, recursive: true);
        }
    }

    private static void CopyAll(Side from, Side to, TextWriter output)
    {
        var studios = from.Own.Read(StudiosOf);
        if (to.Own.Exists && !to.Own.Read(StoreImport.IsFor))
            throw new StoreException($"The store {to.Own.Name} has documents, keys or a log already. Copy into an empty one.");
        List<string> begun = [];
        try
        {
            if (studios.Count > 0)
                StoreCommands.Opened(to.Own).Dispose(); // makes the tables
            foreach (var key in studios)
            {
                begun.Add(key);
                to.Studios.BeginAsync(key).GetAwaiter().GetResult();
                output.WriteLine($"{key}: {CopyOne(from.Studios.PlaceOf(key), to.Studios.PlaceOf(key))} lines");
            }

            var lines = CopyOne(from.Own, to.Own); // last: until then nobody can find the studios
            output.WriteLine($"{from.Own.Name}: {lines} lines, {studios.Count} studios. The copy has the same but for its life. "
                + "Its keys open it as before; the original is as it was. Followers of /v1/floor-changes must begin again without since.");
        }
        catch
        {
            foreach (var key in begun)
                to.Studios.DeleteAsync(key).GetAwaiter().GetResult();
            throw;
        }
    }

    /// <summary>The studios of a host; none if it is the store of one studio.</summary>
    private static async ValueTask<IReadOnlyList<string>> StudiosOf(Snapshot snapshot) =>
        (await snapshot.Keys).Exists(key => KeyRing.ScopesOf(key).Contains(Scope.Host))
            ? [.. (await snapshot.List(Kinds.Studio)).Select(studio => studio.Key)] : [];

    /// <summary>Copies one store in one transaction, in which the copy is also compared; returns the number of its lines.</summary>
    private static long CopyOne(StorePlace from, StorePlace to)
    {
        using var store = StoreCommands.Opened(to);
        return from.Read(snapshot => new ValueTask<long>(store.WriteAsync(Name, async writing =>
        {
            if (!await StoreImport.IsFor(writing))
                throw new StoreException($"The store {to.Name} has documents, keys or a log already. Copy into an empty one.");
            var import = new StoreImport(writing);
            using var given = new Lines();
            await snapshot.Export(line =>
            {
                given.Add(line.Span);
                return import.Add(line);
            });
            await import.Finish(StoreCommands.FaultOf);
            using var kept = new Lines();
            await writing.Export(line =>
            {
                kept.Add(line.Span);
                return ValueTask.CompletedTask;
            });
            return given.Sum().SequenceEqual(kept.Sum()) ? given.Count
                : throw new StoreException($"The copy {to.Name} is not the same as {from.Name}. Nothing was kept.");
        })));
    }

    private static StoreLock Alone(string folder)
    {
        var held = new StoreLock(folder, TimeProvider.System);
        held.Take();
        return held;
    }

    /// <summary>One end of a copy: the process's own store, and where the studios are if it is a host's.</summary>
    private sealed record Side(string Folder, StorePlace Own)
    {
        public StudioFiles Studios { get; } = new(Folder, Own);
    }

    /// <summary>The lines of an export after its life, which differs.</summary>
    private sealed class Lines : IDisposable
    {
        private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

        public long Count { get; private set; }

        public void Add(ReadOnlySpan<byte> line)
        {
            if (Count++ == 0)
                return;
            _hash.AppendData(line);
            _hash.AppendData("\n"u8);
        }

        public byte[] Sum() => _hash.GetHashAndReset();

        public void Dispose() => _hash.Dispose();
    }
}
