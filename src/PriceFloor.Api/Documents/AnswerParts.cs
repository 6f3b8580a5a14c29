namespace PriceFloor.Api.Documents;

/// <summary>What the parts of every computed answer are made of.</summary>
public static class Answers
{
    /// <summary>Up to four decimals: hours and days.</summary>
    public static decimal Hours(decimal value) => Rounding.Trim(Rounding.Nearest(value, 4));

    /// <summary>Up to six decimals: shares and rates.</summary>
    public static decimal Ratio(decimal value) => Rounding.Trim(Rounding.Nearest(value, 6));

    /// <summary>No cache between may keep an answer for somebody else, nor give it without asking again.</summary>
    public static void ForThisCallerOnly(HttpContext context) => context.Response.Headers.CacheControl = "private, no-cache";
}

/// <summary>A default that the answer leaned on and that lowers the floor.</summary>
/// <param name="Pointer">JSON pointer to what was left out.</param>
/// <param name="Value">What was taken instead.</param>
public sealed record AssumptionAnswer(string Pointer, object Value)
{
    public static IReadOnlyList<AssumptionAnswer> Of(IEnumerable<Assumption> assumptions) =>
        [.. assumptions.Select(one => new AssumptionAnswer("#" + one.Pointer, one.Value))];
}

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

/// <summary>One line of the workings: a symbol that later formulas use, a label, a formula and what it comes to, with 12 decimals at most.</summary>
/// <param name="Symbol">What later formulas call it.</param>
/// <param name="Label">What it is.</param>
/// <param name="Formula">How it is got from the lines before it.</param>
/// <param name="Value">What it comes to, with 12 decimals at most.</param>
public sealed record WorkingAnswer(string Symbol, string Label, string Formula, decimal Value)
{
    public static IReadOnlyList<WorkingAnswer>? Of(bool wanted, Func<IEnumerable<Working>> workings) =>
        wanted
            ? [.. workings().Select(one => new WorkingAnswer(one.Symbol, one.Label, one.Formula, Rounding.Trim(Rounding.Settle(one.Value))))]
            : null;
}
