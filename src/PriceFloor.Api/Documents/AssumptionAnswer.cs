namespace PriceFloor.Api.Documents;

/// <summary>A default that the answer leaned on and that lowers the floor.</summary>
/// <param name="Pointer">JSON pointer to what was left out.</param>
/// <param name="Value">What was taken instead.</param>
public sealed record AssumptionAnswer(string Pointer, object Value)
{
    public static IReadOnlyList<AssumptionAnswer> Of(IEnumerable<Assumption> assumptions) =>
        [.. assumptions.Select(one => new AssumptionAnswer("#" + one.Pointer, one.Value))];
}
