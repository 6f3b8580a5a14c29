using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Scenarios;

/// <summary>
/// Scenarios: their profile must be stored. What they change is looked for when they are used, since the documents go on changing.
/// </summary>
public sealed class ScenarioDocuments(IValidator<Scenario> validator, CatalogueSource catalogues)
    : DocumentKind<Scenario>(Kinds.Scenario, validator)
{
    public override async ValueTask<Outcome<Checked<Scenario>>> Check(Writing writing, string key, Scenario document, Stored<Scenario>? before,
        ProfileAccess access)
    {
        var catalogue = await catalogues.SeenBy(access).Within(writing, [new(Kinds.Profile, document.Profile)]);
        return catalogue.Profile(document.Profile) is { } profile
            ? new Checked<Scenario>(document, Currency.Of(profile.Document.Currency), [new DocumentName(Kinds.Profile, document.Profile)])
            : RequestFault.Unknown(new InputError
            {
                Pointer = "#/profile",
                Code = InputCodes.UnknownProfile,
                Detail = $"There is no profile \"{document.Profile}\"; store it first, or correct the name (case counts).",
            });
    }
}
