using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OrderChecks;

/// <summary>An answer or a problem for each order, in order. This is the schema of JSON answers; they are written piece by piece.</summary>
public sealed record OrderCheckBatchAnswer
{
    /// <summary>For each order its answer, or a problem in its place.</summary>
    public required IReadOnlyList<OrderCheckOrProblem> Items { get; init; }

    /// <summary>How many orders got which answer.</summary>
    public required OrderSummary Summary { get; init; }
}

/// <summary>Either an answer (it has a currency) or a problem (it has a status).</summary>
[EitherOf(typeof(OrderCheckAnswer), typeof(ProblemBody))]
public sealed record OrderCheckOrProblem([property: JsonIgnore] OrderCheckAnswer? Check, [property: JsonIgnore] ProblemBody? Problem);
