namespace PriceFloor.Storage.Postgres;

/// <summary>What whoever runs the server chooses of a store in a database.</summary>
/// <param name="AsksEvery">The pause between two questions where the store stands; null: each request asks.</param>
/// <param name="LosesNothing">Whether a standby that takes over has everything that was acknowledged.</param>
public sealed record ServerChoices(TimeSpan? AsksEvery = null, bool LosesNothing = false);
