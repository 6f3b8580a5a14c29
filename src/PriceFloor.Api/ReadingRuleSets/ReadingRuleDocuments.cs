using FluentValidation;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.ReadingRuleSets;

/// <summary>Reading rules: they refer to nothing, and serve statements in any currency.</summary>
public sealed class ReadingRuleDocuments(IValidator<ReadingRules> validator) : DocumentKind<ReadingRules>(Kinds.ReadingRules, validator)
{
    /// <summary>ISO 4217's code for no currency: amounts are written with the decimals they need.</summary>
    private static readonly Currency s_none = new("XXX", 0);

    public override Checked<ReadingRules> Check(Writing writing, string key, ReadingRules document, ReadingRules? stored, Sight sight) => new(document, s_none, [], null);
}

/// <summary>The rules between the fields of a reading rule, and patterns that can be run in bounded time.</summary>
public sealed class ReadingRulesValidator : AbstractValidator<ReadingRules>
{
    public ReadingRulesValidator() => RuleFor(rules => rules).Custom((rules, context) =>
    {
        foreach (var (index, rule) in (rules.Rules ?? []).Index())
            if (rule is not null)
                foreach (var fault in Faults(rule, FormattableString.Invariant($"/rules/{index}"), context))
                    context.Add(fault);
    });

    private static IEnumerable<Fault> Faults(ReadingRule rule, string at, ValidationContext<ReadingRules> context)
    {
        if (rule is { TextHas: not null, TextMatches: not null })
            yield return new(at + "/textMatches", "unexpected", "Say textHas or textMatches, not both.");
        if (rule is { TextHas: null, TextMatches: null, Paid: null, Least: null, Most: null })
            yield return new(at, "required", "A rule needs a condition: textHas, textMatches, paid, least or most; without one it would take every line.");
        if (rule.TextHas is { } text && Words.Single(text).Length == 0)
            yield return new(at + "/textHas", "required", "textHas is empty; say a part of the line's words or leave it out.");
        if (rule.Most < rule.Least)
            yield return new(at + "/most", "out-of-order", "most must be at least least.");
        if (context.IsSound(at + "/to"))
            foreach (var fault in FaultsOf(rule, at))
                yield return fault;
        if (rule.TextMatches is not null)
            foreach (var fault in ReadyRules.FaultsOf(new ReadingRules { Rules = [rule] }))
                yield return fault with { Pointer = at + "/textMatches" };
    }

    private static IEnumerable<Fault> FaultsOf(ReadingRule rule, string at)
    {
        if (rule.CostKind is not null && rule.To is not (Placement.Business or Placement.Household))
            yield return new(at + "/costKind", "unexpected", "costKind goes with to \"business\" (or names a household line); leave it out or change to.");
        if (rule.BusinessShare is not null && rule.To is not (Placement.Business or Placement.Household))
            yield return new(at + "/businessShare", "unexpected", "businessShare goes with to \"business\" or \"household\"; leave it out or change to.");
        if (rule.TracedTo is not null && rule.To != Placement.Business)
            yield return new(at + "/tracedTo", "unexpected", "tracedTo goes with to \"business\"; leave it out or change to.");
    }
}
