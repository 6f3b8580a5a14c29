namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>A store whose file a test removes and replaces by hand, and the note beside it.</summary>
public abstract class StoreWithANote : StoreInAFolder
{
    protected string Note => Db + ".highwater";

    /// <summary>One more revision of a design, a millisecond after the last.</summary>
    protected Revision Save(string key)
    {
        Clock.Advance(TimeSpan.FromMilliseconds(1));
        return Save(key, "1");
    }

    protected void CopyTo(string name)
    {
        Close();
        File.Copy(Db, At(name), overwrite: true);
        File.Delete(At(name) + ".highwater");
    }

    protected void PutInPlace(string name)
    {
        Close();
        File.Copy(At(name), Db, overwrite: true);
    }

    protected static string LifeIn(string note) => File.ReadAllText(note).Split(' ')[1];
}
