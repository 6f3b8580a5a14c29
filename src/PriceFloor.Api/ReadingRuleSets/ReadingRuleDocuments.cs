using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.ReadingRuleSets;

/// <summary>Reading rules: they refer to nothing, and can be used for statements in any currency.</summary>
public sealed class ReadingRuleDocuments(IValidator<ReadingRules> validator) : DocumentKind<ReadingRules>(Kinds.ReadingRules, validator)
{
    /// <summary>ISO 4217's code for no currency: amounts are written with the decimals they need.</summary>
    private static readonly Currency s_none = new("XXX", 0);

    public override ValueTask<Outcome<Checked<ReadingRules>>> Check(Writing writing, string key, ReadingRules document,
        Stored<ReadingRules>? before, ProfileAccess access) => new(new Checked<ReadingRules>(document, s_none, []));
}

/// <summary>The rules between the fields of a reading rule; its patterns must run in bounded time.</summary>
public sealed class ReadingRulesValidator : AbstractValidator<ReadingRules>
{
    public ReadingRulesValidator() => RuleFor(rules => rules).Custom((rules, context) =>
    {
        context.AddAll(ReadingRuleFaults.Of(rules, at => context.IsSound(at)));
        foreach (var (index, rule) in (rules.Rules ?? []).Index())
            if (rule?.TextMatches is not null)
                context.AddAll(ReadyRules.FaultsOf(new ReadingRules { Rules = [rule] })
                    .Select(fault => fault with { Pointer = FormattableString.Invariant($"/rules/{index}/textMatches") }));
    });
}
