using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Profiles;
using PriceFloor.Storage;

namespace PriceFloor.Api.Designs;

/// <summary>Designs: their profile and its materials must be stored, and together they must make a piece that takes bench time.</summary>
public sealed class DesignDocuments(IValidator<Design> validator, CatalogueSource catalogues) : DocumentKind<Design>(Kinds.Design, validator)
{
    public override async ValueTask<Outcome<Checked<Design>>> Check(Writing writing, string key, Design document, Stored<Design>? before,
        ProfileAccess access)
    {
        var catalogue = await catalogues.SeenBy(access).Within(writing, [new(Kinds.Profile, document.Profile)]);
        if (catalogue.Profile(document.Profile) is not { } profile)
            return RequestFault.Unknown(new InputError
            {
                Pointer = "#/profile",
                Code = InputCodes.UnknownProfile,
                Detail = $"There is no profile \"{document.Profile}\"; store it first, or correct the name (case counts).",
            });

        var year = catalogue.Year(profile).Value;
        var faults = UnitCost.Of(document, year).Faults;
        if (faults.Any(fault => fault.Code == FaultCodes.UnknownMaterial))
            return faults.Where(fault => fault.Code == FaultCodes.UnknownMaterial)
                .Select(fault => (Fault)RequestFault.Unknown(InputError.At(fault))).ToList();
        if (faults.Count > 0)
            return faults.Select(fault => (Fault)RequestFault.Invalid(InputError.At(fault))).ToList();

        if (await TakenName(writing, key, document, access) is { } taken)
            return taken;

        var materials = document.Materials.Where(line => line.Material is not null)
            .Select(line => new DocumentName("material", ProfileDocuments.MaterialKey(document.Profile, line.Material!)));
        return new Checked<Design>(document, year.Currency, [new DocumentName(Kinds.Profile, document.Profile), .. materials,
            .. document.Aliases.Select(alias => new DocumentName(Kinds.Alias, alias))]);
    }

    /// <summary>No name may lead to two designs, whether it is a key or an alias.</summary>
    private static async ValueTask<Fault?> TakenName(Writing writing, string key, Design document, ProfileAccess access)
    {
        if (Other(await writing.UsersOf(Kinds.Alias, key)) is { } named)
            return await Taken(key, named, "is an alias of it; take it out there first, or choose another key");
        foreach (var alias in document.Aliases)
        {
            if (alias != key && await writing.Find(Kinds.Design, alias) is not null)
                return await Taken(alias, alias, "is its key; leave the alias out");
            if (Other(await writing.UsersOf(Kinds.Alias, alias)) is { } other)
                return await Taken(alias, other, "is an alias of it already; leave it out here or there");
        }

        return null;

        string? Other(IEnumerable<DocumentName> users) => users.Select(user => user.Key).FirstOrDefault(user => user != key);

        async ValueTask<Fault> Taken(string name, string design, string why) => await access.Against(writing, Kinds.Design, design) is not null
            ? DocumentAccess.Taken(name)
            : RequestFault.InUse($"The name \"{name}\" leads to the design \"{design}\": it {why}.", [new Usage(Kinds.Design, design)]);
    }

    /// <summary>A name that has a listed price of its own cannot leave the design.</summary>
    public override async ValueTask<RequestFault?> AgainstNarrowing(Writing writing, string key, Design document, Stored<Design> before)
    {
        foreach (var alias in before.Sound?.Aliases.Except(document.Aliases) ?? [])
            if (await writing.UsersOf(Kinds.ListedName, $"{key}/{alias}") is { Count: > 0 } prices)
                return RequestFault.InUse($"The name \"{alias}\" of the design \"{key}\" has listed prices of its own; delete them first.",
                    [.. prices.Select(price => new Usage(price.Kind, price.Key))]);
        return null;
    }

    /// <summary>A design's listed prices are deleted with it.</summary>
    public override async ValueTask Cascade(Writing writing, string key)
    {
        foreach (var price in await writing.List(Kinds.ListedPrice, ListedPriceKey.Beginning(key)))
            await writing.Delete(Kinds.ListedPrice, price.Key);
    }
}
