namespace PriceFloor.Statements;

/// <summary>The rules between the fields of a reading rule. <see cref="ReadyRules"/> checks whether its pattern can be run.</summary>
public static class ReadingRuleFaults
{
    /// <summary>The broken rules.</summary>
    /// <param name="document">The rules.</param>
    /// <param name="isSound">False at a pointer whose value could not be read, so nothing follows from it.</param>
    public static IEnumerable<Fault> Of(ReadingRules document, Func<string, bool> isSound) => (document.Rules ?? []).Index()
        .Where(rule => rule.Item is not null)
        .SelectMany(rule => Of(rule.Item, FormattableString.Invariant($"/rules/{rule.Index}"), isSound));

    private static IEnumerable<Fault> Of(ReadingRule rule, string at, Func<string, bool> isSound)
    {
        if (rule is { TextHas: not null, TextMatches: not null })
            yield return new(at + "/textMatches", FaultCodes.Unexpected, "Say textHas or textMatches, not both.");
        if (rule is { TextHas: null, TextMatches: null, Paid: null, Least: null, Most: null })
            yield return new(at, FaultCodes.Required,
                "A rule needs a condition: textHas, textMatches, paid, least or most; without one it would take every line.");
        if (rule.TextHas is { } text && Words.Single(text).Length == 0)
            yield return new(at + "/textHas", FaultCodes.Required, "textHas is empty; give a part of the line's text or leave it out.");
        if (rule.Most < rule.Least)
            yield return new(at + "/most", FaultCodes.OutOfOrder, "most must be at least least.");
        if (isSound(at + "/to"))
            foreach (var fault in FaultsOfTo(rule, at))
                yield return fault;
    }

    private static IEnumerable<Fault> FaultsOfTo(ReadingRule rule, string at)
    {
        if (rule.CostKind is not null && rule.To is not (Placement.Business or Placement.Household))
            yield return new(at + "/costKind", FaultCodes.Unexpected,
                "costKind goes with to \"business\" (or names a household line); leave it out or change to.");
        if (rule.BusinessShare is not null && rule.To is not (Placement.Business or Placement.Household))
            yield return new(at + "/businessShare", FaultCodes.Unexpected,
                "businessShare goes with to \"business\" or \"household\"; leave it out or change to.");
        if (rule.TracedTo is not null && rule.To != Placement.Business)
            yield return new(at + "/tracedTo", FaultCodes.Unexpected, "tracedTo goes with to \"business\"; leave it out or change to.");
        if (rule.IncomeKind is not null && rule.To != Placement.OtherIncome)
            yield return new(at + "/incomeKind", FaultCodes.Unexpected, "incomeKind goes with to \"other-income\"; leave it out or change to.");
        if (rule.TimesAYear is not null && rule.To is not (Placement.Business or Placement.Household or Placement.OtherIncome))
            yield return new(at + "/timesAYear", FaultCodes.Unexpected,
                "timesAYear goes with to \"business\", \"household\" or \"other-income\"; leave it out or change to.");
    }
}
