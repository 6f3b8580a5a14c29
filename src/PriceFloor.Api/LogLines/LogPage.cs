using PriceFloor.Storage;

namespace PriceFloor.Api.LogLines;

/// <summary>A page of lines in order of position.</summary>
/// <param name="Items">The lines.</param>
/// <param name="Next" example="100">Send this as after for the next page; null on the last.</param>
/// <param name="Basis">What it rests on.</param>
public sealed record LogPage<T>(IReadOnlyList<T> Items, string? Next, LogBasisAnswer Basis);

/// <summary>How far the log had come.</summary>
/// <param name="Log" example="m1204881+b3310">The last position of movements and of bench entries.</param>
public sealed record LogBasisAnswer(string Log)
{
    public static LogBasisAnswer Of(LogPosition position) => new(FormattableString.Invariant($"m{position.Movements}+b{position.Bench}"));
}
