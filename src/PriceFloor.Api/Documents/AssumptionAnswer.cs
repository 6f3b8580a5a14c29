namespace PriceFloor.Api.Documents;

/// <summary>A default that the answer rests on and that lowers the floor.</summary>
/// <param name="Pointer">JSON pointer to what was left out.</param>
/// <param name="Value">The value used instead.</param>
public sealed record AssumptionAnswer(string Pointer, object Value)
{
    public static IReadOnlyList<AssumptionAnswer> Of(IEnumerable<Assumption> assumptions) =>
        [.. assumptions.Select(one => new AssumptionAnswer("#" + one.Pointer, one.Value))];
}
