namespace PriceFloor.Api.OrderChecks;

/// <summary>How many orders got which answer; an order without items, which only asks for leastOrder, is not counted.</summary>
/// <param name="MeetsFloor" example="41">Orders that carry their share.</param>
/// <param name="BelowFloor" example="2">Orders that do not.</param>
/// <param name="Unanswered" example="1">Orders that got a problem instead.</param>
public sealed record OrderSummary(long MeetsFloor, long BelowFloor, long Unanswered);
