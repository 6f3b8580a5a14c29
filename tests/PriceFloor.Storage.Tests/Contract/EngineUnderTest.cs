using Microsoft.Extensions.Time.Testing;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>An engine as the contract sees it: one empty store in a fresh place that nothing else uses.</summary>
public abstract class EngineUnderTest : IDisposable
{
    /// <summary>The clock of the store.</summary>
    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));

    /// <summary>Opens the store: always the same one, as another program or the next start does. The caller disposes of it.</summary>
    public abstract Store Open();

    /// <summary>Locks out every writer, as a program in the middle of a write does, until the returned object is disposed of.</summary>
    public abstract IDisposable Hold();

    /// <summary>
    /// Copies the present state of the store by the engine's own means. The returned action restores it while nobody has the store open.
    /// </summary>
    public abstract Action Keep();

    /// <summary>
    /// Erases a deleted document, and those of the kind below it, while nobody has the store open. Returns the number of erased revisions.
    /// </summary>
    public abstract int Forget(string kind, string key, string? kindBelow = null, bool mayStand = false);

    /// <summary>Erases what a source has sent to the log, while nobody has the store open. Returns the number of erased lines.</summary>
    public abstract int ForgetSource(string source);

    /// <summary>The faults of the stored data.</summary>
    public abstract IReadOnlyList<string> Faults();

    /// <summary>Deletes the place.</summary>
    public abstract void Dispose();
}
