namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>What the optimal mix takes of the hours or of a limited resource.</summary>
/// <param name="Name">"hours", or the resource's name.</param>
/// <param name="Used">Hours or loads that the mix takes.</param>
/// <param name="Available">Hours or loads that there are.</param>
/// <param name="Binds">
/// Whether the constraint is binding: one more unit of it is worth something, or an activity below its maximum that would improve the mix
/// cannot have one more piece because of this constraint alone. For the largest surplus an activity improves the mix if its contribution is
/// positive; for the fewest hours if it contributes more an hour than some activity that is above its minimum and could be replaced.
/// Hours never bind the fewest hours: with more of them no fewer would do.
/// </param>
/// <param name="WithOneMore">
/// The optimum with one more hour or load, solved again: the largest contribution, or the fewest hours. Null if the search stopped before either
/// optimum was proven.
/// </param>
/// <param name="WorthOfOneMore">
/// The difference of the two optima: money for the largest surplus, hours saved for the fewest hours. Unlike a dual price it holds for whole pieces.
/// </param>
public sealed record ConstraintUsage(
    string Name, decimal Used, decimal Available, bool Binds, decimal? WithOneMore, decimal? WorthOfOneMore);
