namespace PriceFloor.Evidence.Lines;

/// <summary>What is known of a source of lines, as kept last.</summary>
/// <param name="Name">Its name, as its lines give it.</param>
/// <param name="WholeDays">Whether its bench entries cover whole days, packing and books included.</param>
/// <param name="CountsAsMade">Whether good pieces of the last bench step count as made.</param>
public sealed record LogSource(string Name, bool WholeDays = false, bool CountsAsMade = false);
