using PriceFloor.Api.Configuration;
using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>The studios that the process serves. So far it is one, its own.</summary>
public sealed class Studios : IDisposable
{
    /// <param name="settings">The settings, which name its place.</param>
    /// <param name="alone">Made before any store, so it is released after them.</param>
    /// <param name="stores">Makes its store.</param>
    /// <param name="shared">The services that all studios share.</param>
    public Studios(Settings settings, StoreLock alone, StoreMaker stores, IServiceProvider shared)
    {
        ArgumentNullException.ThrowIfNull(alone);
        Own = new Studio(settings.Store, settings.DataFolder, stores.Make(settings.Store), shared);
    }

    /// <summary>The studio whose store is in the data folder.</summary>
    public Studio Own { get; }

    public void Dispose() => Own.Dispose();
}
