using Microsoft.Extensions.Time.Testing;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>An engine as the contract sees it: one empty store in a fresh place that nothing else uses.</summary>
public abstract class EngineUnderTest : IDisposable
{
    /// <summary>The clock of the store.</summary>
    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));

    /// <summary>Opens the store: always the same one, as another program or the next start does. Whoever asked for it disposes of it.</summary>
    public abstract Store Open();

    /// <summary>Keeps every writer out, as a program that stands in the middle of a write does, until the answer is disposed of.</summary>
    public abstract IDisposable Hold();

    /// <summary>Keeps the store as it is now by the engine's own means. The answer brings it back while nobody has the store open.</summary>
    public abstract Action Keep();

    /// <summary>
    /// Erases a deleted document, and those of the kind below it, while nobody has the store open. Returns how many revisions went.
    /// </summary>
    public abstract int Forget(string kind, string key, string? kindBelow = null);

    /// <summary>What is wrong with what is stored.</summary>
    public abstract IReadOnlyList<string> Faults();

    /// <summary>Clears the place away.</summary>
    public abstract void Dispose();
}
