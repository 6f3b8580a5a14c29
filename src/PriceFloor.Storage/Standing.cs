namespace PriceFloor.Storage;

/// <summary>Where a store stands, as a transaction finds it.</summary>
/// <param name="Life">The name of its life and, if the engine has any, of the timeline: positions of another mean nothing in it.</param>
/// <param name="Position">The position of the newest revision; 0 if there is none.</param>
/// <param name="SavedAt">When that was written, in microseconds since 1970 UTC; 0 if there is none.</param>
/// <param name="NumbersAbove">The next revision of any document has a higher number than this.</param>
/// <param name="Events">The position of the newest action on keys and on the whole store: no key changes without one.</param>
internal sealed record Standing(string Life, long Position, long SavedAt, long NumbersAbove, long Events)
{
    public StorePoint Point => new(Life, Position, Events);
}
