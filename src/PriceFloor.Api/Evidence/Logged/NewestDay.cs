using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The day of the newest line of a log.</summary>
/// <param name="End">Where the log ends.</param>
/// <param name="To">Later lines do not count.</param>
/// <param name="Day">The day; null if there is no line.</param>
internal sealed record NewestDay(LogPosition End, DateOnly To, DateOnly? Day);
