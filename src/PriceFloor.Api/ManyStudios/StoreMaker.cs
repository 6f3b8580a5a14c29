using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>Makes the store of a place, with its engine; it is opened later.</summary>
public sealed record StoreMaker(Func<StorePlace, Store> Make)
{
    public static StoreMaker By(TimeProvider clock) => new(place => new Store(place.Engine(clock), clock));
}
