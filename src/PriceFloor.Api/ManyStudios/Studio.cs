using Microsoft.AspNetCore.Http.Features;
using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>
/// A studio: its store, and everything that the service keeps in memory of it, each part made when it is first asked for. It provides the services
/// of its requests: its own parts, and what all studios share. It owns its parts; nobody else disposes of them.
/// </summary>
public sealed class Studio : IServiceProvider, IServiceProvidersFeature, IDisposable
{
    private readonly IServiceProvider _shared;
    private readonly Lock _making = new();
    private readonly object?[] _parts = new object?[StudioParts.Count];

    /// <param name="place">Where its store is.</param>
    /// <param name="folder">The folder of its store.</param>
    /// <param name="store">Its store.</param>
    /// <param name="shared">The services that all studios share.</param>
    public Studio(StorePlace place, string folder, Store store, IServiceProvider shared) =>
        (Place, Folder, Store, _shared) = (place, folder, store, shared);

    /// <summary>Its key; null if it is the only one, or the host.</summary>
    public string? Key { get; init; }

    /// <summary>Its host; null if it is the only one, or the host.</summary>
    public Studio? Host { get; init; }

    /// <summary>True if the host knew other keys of it when it was opened, so a request may have come with one that does not open it.</summary>
    public bool HadOtherKeys { get; set; }

    /// <summary>Where the host's store stood when the limits of this one were read.</summary>
    public StorePoint? LimitsAt { get; set; }

    public StorePlace Place { get; }

    public string Folder { get; }

    public Store Store { get; }

    IServiceProvider IServiceProvidersFeature.RequestServices
    {
        get => this;
        set => throw new NotSupportedException("A request stays in its studio.");
    }

    public object? GetService(Type serviceType) => StudioParts.Find(serviceType) is { } part ? Own(part) : _shared.GetService(serviceType);

    public void Dispose()
    {
        foreach (var part in _parts)
            if (part != Store)
                (part as IDisposable)?.Dispose();
        Store.Dispose();
    }

    private object Own(StudioPart part)
    {
        if (Volatile.Read(ref _parts[part.Place]) is { } known)
            return known;
        lock (_making)
        {
            if (_parts[part.Place] is { } made)
                return made;
            var own = part.Make(this);
            Volatile.Write(ref _parts[part.Place], own);
            return own;
        }
    }
}
