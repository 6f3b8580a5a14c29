using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OrderChecks;

/// <summary>One order, or an array of 1 to 1000.</summary>
[EitherOf(typeof(OrderCheckRequest), typeof(OrderCheckRequest[]))]
public sealed record OrderChecksRequest([property: JsonIgnore] OrderCheckRequest? One, [property: JsonIgnore] IReadOnlyList<OrderCheckRequest>? Many);
