namespace PriceFloor.Api.Access;

/// <summary>How a request hears what other processes have written before it came.</summary>
/// <param name="HasStudios">Whether it may be for one of a host's studios.</param>
/// <param name="Ask">Asks about the process's own store and, in the same question, about the studio for which the request probably is.</param>
public sealed record StoreFreshness(bool HasStudios, Func<string?, HttpContext, Task> Ask);
