namespace PriceFloor.Evidence.Sheets;

/// <summary>The names that whoever sends lines may use: any other is placed nowhere, like one that nobody knows.</summary>
/// <param name="Design">The key of a design by its key or alias; null if there is none.</param>
/// <param name="Channel">A channel by its key; null if there is none.</param>
public sealed record KnownNames(Func<string, string?> Design, Func<string, KnownChannel?> Channel);

/// <summary>A channel and the currency of its amounts.</summary>
public sealed record KnownChannel(string Key, Currency Currency);

/// <summary>The days that a request is about: lines of other days are left out.</summary>
/// <param name="From">The first day; null if there is none.</param>
/// <param name="To">The last day; null if there is none.</param>
public sealed record LogWindow(DateOnly? From = null, DateOnly? To = null)
{
    public bool Holds(DateOnly day) => !(day < From) && !(day > To);
}
