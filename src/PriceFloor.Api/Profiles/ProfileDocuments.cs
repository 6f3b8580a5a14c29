using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Profiles;

/// <summary>Cost profiles: fills in their year's start, and keeps a material or currency that designs rest on.</summary>
public sealed class ProfileDocuments(IValidator<CostProfile> validator) : DocumentKind<CostProfile>(Kinds.Profile, validator)
{
    public override ValueTask<Outcome<Checked<CostProfile>>> Check(Writing writing, string key, CostProfile document,
        Stored<CostProfile>? before, ProfileAccess access)
    {
        var stored = before?.Sound; // a damaged one is replaced
        var complete = document with { YearStart = document.YearStart ?? stored?.YearStart ?? new DateOnly(writing.Now.Year, 1, 1) };
        return new(new Checked<CostProfile>(complete, Currency.Of(complete.Currency), []));
    }

    public override async ValueTask<RequestFault?> AgainstNarrowing(Writing writing, string key, CostProfile document, Stored<CostProfile> before)
    {
        var stored = before.Sound; // a damaged one is replaced
        if (stored is not null && stored.Currency != document.Currency && await writing.UsersOf(Name, key) is { Count: > 0 } designs)
            return RequestFault.InUse(
                $"Designs use {stored.Currency} through this profile; store the other currency as a profile of its own.", Usages(designs));

        var gone = stored?.Materials.Select(line => line.Material).Except(document.Materials.Select(line => line.Material)) ?? [];
        foreach (var material in gone)
            if (await writing.UsersOf("material", MaterialKey(key, material)) is { Count: > 0 } users)
                return RequestFault.InUse($"Designs still use the material \"{material}\"; keep it in the list or change them first.", Usages(users));
        return null;
    }

    /// <summary>How a design's reference to a material is stored; a profile's key has no slash.</summary>
    public static string MaterialKey(string profile, string material) => $"{profile}/{material}";

    private static IReadOnlyList<Usage> Usages(IReadOnlyList<DocumentName> names) => [.. names.Select(name => new Usage(name.Kind, name.Key))];
}
