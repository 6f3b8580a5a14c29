using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>An answer or a problem for each check, in order. This is the schema of JSON answers; they are written piece by piece.</summary>
public sealed record PriceCheckBatchAnswer
{
    /// <summary>For each check its answer, or a problem in its place.</summary>
    public required IReadOnlyList<CheckOrProblem> Items { get; init; }

    /// <summary>How many lines got which answer.</summary>
    public required BatchSummary Summary { get; init; }
}

/// <summary>Either an answer (it has a verdict) or a problem (it has a status).</summary>
[EitherOf(typeof(PriceCheckAnswer), typeof(ProblemBody))]
public sealed record CheckOrProblem([property: JsonIgnore] PriceCheckAnswer? Check, [property: JsonIgnore] ProblemBody? Problem);
