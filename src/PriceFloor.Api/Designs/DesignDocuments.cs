using FluentValidation;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Profiles;
using PriceFloor.Pricing;
using PriceFloor.Storage;

namespace PriceFloor.Api.Designs;

/// <summary>Designs: their profile and its materials must be stored, and together they must make a piece that takes bench time.</summary>
public sealed class DesignDocuments(IValidator<Design> validator) : DocumentKind<Design>(Kinds.Design, validator)
{
    public override Checked<Design> Check(Writing writing, string key, Design document, Design? stored)
    {
        if (Records.Of(writing).Profile(document.Profile) is not { } profile)
            return Problem.UnknownReference([new InputError { Pointer = "#/profile", Code = "unknown-profile", Detail = $"There is no profile \"{document.Profile}\"; store it first, or correct the name (case counts)." }]);

        var year = StudioYear.Of(profile.Document, default).Value;
        var faults = Piece.Of(document, year).Faults;
        if (faults.Any(fault => fault.Code == "unknown-material"))
            return Problem.UnknownReference([.. faults.Where(fault => fault.Code == "unknown-material").Select(fault => InputError.At(fault))]);
        if (faults.Count > 0)
            return Problem.Invalid(faults.Select(fault => InputError.At(fault)));

        var materials = document.Materials.Where(line => line.Material is not null).Select(line => new DocumentName("material", ProfileDocuments.MaterialKey(document.Profile, line.Material!)));
        return new Checked<Design>(document, year.Currency, [new DocumentName(Kinds.Profile, document.Profile), .. materials], null);
    }

    /// <summary>A design's listed prices go with it.</summary>
    public override void Cascade(Writing writing, string key)
    {
        foreach (var price in writing.List(Kinds.ListedPrice, key + "/"))
            writing.Delete(Kinds.ListedPrice, price.Key);
    }
}
