namespace PriceFloor.Api.Documents;

/// <summary>Something that may make a figure wrong without making it impossible.</summary>
/// <param name="Code">A stable word for programs.</param>
/// <param name="Message">What may be wrong.</param>
/// <param name="Pointer">JSON pointer to what it concerns.</param>
public sealed record WarningAnswer(string Code, string Message, string Pointer)
{
    public static IReadOnlyList<WarningAnswer> Of(IEnumerable<Warning> warnings)
    {
        List<WarningAnswer>? answers = null; // mostly there are none
        foreach (var one in warnings)
            (answers ??= []).Add(new WarningAnswer(one.Code, one.Message, "#" + one.Pointer));
        return answers ?? (IReadOnlyList<WarningAnswer>)[];
    }
}
