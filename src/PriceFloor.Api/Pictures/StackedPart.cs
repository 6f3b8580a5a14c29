namespace PriceFloor.Api.Pictures;

/// <summary>A part of a bar.</summary>
/// <param name="Letter">Its letter, in the bar and in the list.</param>
/// <param name="Words">What it is.</param>
/// <param name="Amount">How much of the bar it is; a part at or below 0 is only listed.</param>
/// <param name="Palette">Its colour.</param>
/// <param name="Hatch">Its pattern.</param>
public sealed record StackedPart(char Letter, string Words, decimal Amount, Palette Palette, Hatch Hatch);
