using Microsoft.Extensions.Time.Testing;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>
/// The promises of a store, whichever engine it uses. For each engine a sealed class inherits each of the contracts, and with it their tests.
/// </summary>
/// <typeparam name="TEngine">The engine.</typeparam>
public abstract class StoreContract<TEngine> : IDisposable
    where TEngine : EngineUnderTest, new()
{
    private Store? _store;

    protected StoreContract() => _store = Engine.Open();

    protected TEngine Engine { get; } = new();

    protected FakeTimeProvider Clock => Engine.Clock;

    /// <summary>The store, opened again if it was closed.</summary>
    protected Store Store => _store ??= Engine.Open();

    public void Dispose()
    {
        Close();
        Engine.Dispose();
        GC.SuppressFinalize(this);
    }

    protected void Close()
    {
        _store?.Dispose();
        _store = null;
    }

    protected Revision Save(string key, string body) => Save("design", key, body);

    protected Revision Save(string kind, string key, string body) => Store.Write("test", writing => writing.Save(kind, key, body, []));

    protected string MarkAt(long position) => Store.MarkAt(position).AtOnce();

    protected Revision Delete(string key) => Store.Write("test", writing => writing.Delete("design", key));
}
