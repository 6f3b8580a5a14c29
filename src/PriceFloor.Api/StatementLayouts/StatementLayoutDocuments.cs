using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.StatementLayouts;

/// <summary>How the sheets of an account are written; the key is the account's name. They refer to nothing.</summary>
public sealed class StatementLayoutDocuments(IValidator<StatementLayout> validator)
    : DocumentKind<StatementLayout>(Kinds.StatementLayout, validator)
{
    /// <summary>ISO 4217's code for no currency: a layout has no amounts.</summary>
    private static readonly Currency s_none = new("XXX", 0);

    public override ValueTask<Outcome<Checked<StatementLayout>>> Check(Writing writing, string key, StatementLayout document,
        Stored<StatementLayout>? before, ProfileAccess access) => new(new Checked<StatementLayout>(document, s_none, []));
}

/// <summary>The rules between the fields of a layout.</summary>
public sealed class StatementLayoutValidator : AbstractValidator<StatementLayout>
{
    public StatementLayoutValidator() => RuleFor(layout => layout).Custom((layout, context) => context.AddAll(layout.Faults()));
}
