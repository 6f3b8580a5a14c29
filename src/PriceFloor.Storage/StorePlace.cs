namespace PriceFloor.Storage;

/// <summary>
/// A place where a store is kept, and all that can be done with it there: serve it, read it without changing it, copy, check, restore, forget. Each
/// kind of engine has its own.
/// </summary>
public abstract class StorePlace
{
    /// <summary>Its name for whoever runs the server: no secret is in it.</summary>
    public abstract string Name { get; }

    /// <summary>Whether a store is there.</summary>
    public abstract bool Exists { get; }

    /// <summary>The size of the store without what waits to be written into it; 0 if there is none.</summary>
    public abstract long Bytes { get; }

    /// <summary>The schema to which this program brings a store.</summary>
    public abstract int NewestSchema { get; }

    /// <summary>Whether the program makes backups of the store; false if they are the server's own.</summary>
    public virtual bool MakesBackups => true;

    /// <summary>What becomes of the erased rows' bytes, as the end of a sentence.</summary>
    public abstract string AfterErasing { get; }

    /// <summary>An engine that serves the store, and makes it if it does not exist.</summary>
    /// <param name="clock">The clock of the store.</param>
    public abstract Engine Engine(TimeProvider clock);

    /// <summary>Whether other processes may serve the store at the same time, each with a data folder of its own.</summary>
    public virtual bool IsShared => false;

    /// <summary>Whether it is a database, which keeps the studios of a host too; else each of them has a file of its own.</summary>
    public bool HasRoomForStudios => IsShared;

    /// <summary>The place of a host's studio beside the host's own store.</summary>
    /// <param name="key">The key of the studio.</param>
    public virtual StorePlace OfStudio(string key) => throw new NotSupportedException();

    /// <summary>Begins an empty store for a host's studio. What a studio of that key left behind is deleted.</summary>
    public virtual Task BeginAsync() => throw new NotSupportedException();

    /// <summary>Deletes the store of a host's studio with everything in it.</summary>
    public virtual Task DeleteAsync() => throw new NotSupportedException();

    /// <summary>The studios that have something beside this host's store, whether or not the host lists them.</summary>
    public virtual Task<IReadOnlyList<StudioThere>> StudiosAsync() => throw new NotSupportedException();

    /// <summary>Reads from one moment and changes nothing, also while a service writes: no lock is taken, and no schema is upgraded.</summary>
    public abstract T Read<T>(Func<Snapshot, ValueTask<T>> read);

    /// <summary>Makes a backup. It gets its name only once it is whole, checked and on the disk; nothing is overwritten.</summary>
    /// <param name="file">The backup.</param>
    /// <param name="growing">Told the file that grows meanwhile, for whoever watches.</param>
    public abstract BackupMade BackUp(string file, Action<string>? growing = null);

    /// <summary>
    /// Records a backup that a verb has made, perhaps beside a service that writes. False if the store cannot be
    /// written, or has an earlier schema.
    /// </summary>
    public abstract bool TellOfBackup(string file, DateTimeOffset now);

    /// <summary>Checks the whole store at one moment, without changing it; a service may be using it.</summary>
    /// <param name="faultOf">The fault of a document of that kind and text; null if there is none.</param>
    /// <param name="checkedOf">Told how many revisions of how many are checked, for whoever watches.</param>
    public abstract StoreReport Check(Func<string, string, string?> faultOf, Action<long, long>? checkedOf = null);

    /// <summary>Puts a backup in the place of the store, which is kept beside it. The caller holds the data folder's lock.</summary>
    public abstract Restored Restore(string file, DateTimeOffset now);

    /// <summary>Erases a document, and returns the number of erased revisions. The caller holds the data folder's lock.</summary>
    /// <param name="document">The document.</param>
    /// <param name="now">The time. The trail lists it with the document's kind, but not its key, which would be a trace.</param>
    /// <param name="kindsBelow">Documents of these kinds are erased with it if they have its key, or one that begins with it and a slash.</param>
    /// <param name="mayStand">Whether it is also erased if it was not deleted before.</param>
    public abstract int Forget(DocumentName document, DateTimeOffset now, IReadOnlyList<string> kindsBelow, bool mayStand);

    /// <summary>
    /// Erases every line that a source has ever sent to the log, and returns their number. The caller holds the data folder's lock.
    /// </summary>
    /// <param name="source">The source's name.</param>
    /// <param name="now">The time. The trail lists it without the source's name, which would be a trace.</param>
    public abstract int ForgetSource(string source, DateTimeOffset now);
}
