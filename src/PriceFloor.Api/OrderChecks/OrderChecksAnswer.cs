using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OrderChecks;

/// <summary>The answer to one order, or to an array.</summary>
[EitherOf(typeof(OrderCheckAnswer), typeof(OrderCheckBatchAnswer))]
public sealed record OrderChecksAnswer([property: JsonIgnore] OrderCheckAnswer? One, [property: JsonIgnore] OrderCheckBatchAnswer? Many);
