namespace PriceFloor.Pricing.Numbers;

/// <summary>Why something cannot be computed: where in the document, a stable code, and a sentence that says how to fix it.</summary>
/// <param name="Pointer">JSON pointer inside the document, such as <c>/calendar/benchShare</c>; empty for the whole.</param>
/// <param name="Code">A stable word for programs.</param>
/// <param name="Detail">A sentence for people.</param>
public record Fault(string Pointer, Code Code, string Detail)
{
    /// <summary>A figure passed what <c>decimal</c> can hold (about 7.9 x 10^28), or a divisor fell below 10^-28.</summary>
    public static Fault TooLarge { get; } =
        new("", FaultCodes.TooLarge, "A figure on the way to the answer is too large to be exact; check the amounts for a slipped decimal point.");
}
