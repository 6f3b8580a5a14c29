namespace PriceFloor.Storage.Sqlite;

/// <summary>A store in one file, beside the service.</summary>
/// <param name="path">The file, which is made if it does not exist.</param>
/// <param name="cacheKibibytes">How much of it each connection keeps in memory; null: as much as SQLite thinks best for one file.</param>
public sealed class StoreInFile(string path, int? cacheKibibytes = null) : StorePlace
{
    /// <summary>The schema to which this program brings a store in a file.</summary>
    public static int Schema => Migrations.Newest;

    public override string Name { get; } = Path.GetFullPath(path);

    public override bool Exists => File.Exists(path);

    public override long Bytes => new FileInfo(path) is { Exists: true } file ? file.Length : 0;

    public override int NewestSchema => Schema;

    public override string AfterErasing => "and the file is rewritten";

    /// <summary>Loads the libraries of a store in a file, so opening one is faster.</summary>
    public static void LoadLibraries() => SqliteEngine.Load();

    public override Engine Engine(TimeProvider clock) => new SqliteEngine(path, clock, cacheKibibytes);

    public override T Read<T>(Func<Snapshot, ValueTask<T>> read) => ReadOnlyStore.Read(path, read);

    public override BackupMade BackUp(string file, Action<string>? growing = null) => Backup.Make(path, file, growing);

    public override bool TellOfBackup(string file, DateTimeOffset now) => Backup.Tell(path, file, now);

    public override StoreReport Check(Func<string, string, string?> faultOf, Action<long, long>? checkedOf = null) =>
        StoreCheck.Of(path, faultOf, checkedOf);

    public override Restored Restore(string file, DateTimeOffset now) => Restoring.Restore(file, path, now);

    public override int Forget(DocumentName document, DateTimeOffset now, IReadOnlyList<string> kindsBelow, bool mayStand) =>
        Forgetting.Forget(path, document.Kind, document.Key, now, kindsBelow, mayStand);

    public override int ForgetSource(string source, DateTimeOffset now) => Forgetting.ForgetSource(path, source, now);
}
