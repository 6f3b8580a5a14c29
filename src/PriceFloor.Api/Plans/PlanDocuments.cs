using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Plans;

/// <summary>
/// Plans: the profile, designs and channels that they name must be stored, and the lines of the profile that they date must be there.
/// </summary>
public sealed class PlanDocuments(IValidator<Plan> validator, CatalogueSource catalogues) : DocumentKind<Plan>(Kinds.Plan, validator)
{
    public override async ValueTask<Outcome<Checked<Plan>>> Check(Writing writing, string key, Plan document, Stored<Plan>? before,
        ProfileAccess access)
    {
        var catalogue = await catalogues.SeenBy(access).WholeWithin(writing); // a plan may name designs by any of their names
        var profile = catalogue.Profile(document.Profile);
        List<Fault> faults = profile is null
            ? [RequestFault.Unknown(Place.Body.Error("profile", InputCodes.UnknownProfile,
                $"There is no profile \"{document.Profile}\"; store it first, or correct the name (case counts)."))]
            : [.. DueLine.Of(profile.Document, document.PaidIn, hints: false).Faults.Select(fault => RequestFault.Invalid(InputError.At(fault)))];
        var resolved = PlanNames.Resolved(catalogue, document);
        faults.AddRange(resolved.Faults);
        if (faults.Count > 0)
            return faults;
        var (plan, currency) = (resolved.Value, Currency.Of(profile!.Document.Currency));
        if (OtherCurrency(catalogue, plan, currency) is { } other)
            return other;
        faults = [.. plan.Lines.Index().Select(line => TooFine(line.Item, line.Index, currency)).OfType<Fault>()];
        return faults.Count > 0 ? faults : new Checked<Plan>(plan, currency, PlanNames.References(plan));
    }

    private static RequestFault? OtherCurrency(Catalogue catalogue, Plan plan, Currency currency) => plan.Lines
        .Select(line => (line.Channel, catalogue.Channel(line.Channel)!.Document.Currency))
        .Where(channel => channel.Currency != currency.Code)
        .Select(channel => RequestFault.Of(ProblemTypes.CurrencyMismatch,
            $"The profile is in {currency.Code} and the channel \"{channel.Channel}\" sells in {channel.Currency}; nothing is ever converted."))
        .FirstOrDefault();

    private static RequestFault? TooFine(PlanLine line, int index, Currency currency) =>
        line.Price is { } price && ChannelRules.TooFine(price, "price", currency) is { } detail
            ? RequestFault.Invalid(Place.In(FormattableString.Invariant($"#/lines/{index}")).Error("price", FaultCodes.TooManyDecimals, detail))
            : null;
}
