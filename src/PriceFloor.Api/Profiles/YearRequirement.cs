using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Profiles;

/// <summary>Answers what a cost profile's year must bring in.</summary>
public static class YearRequirement
{
    public static ValueTask<Results<JsonAnswer<RequirementAnswer>, Problem>> Get(PathKey path, FromQuery<ComputeQuery> query,
        CatalogueReader reader, HttpContext context)
    {
        var (asOf, workings) = query.Value;
        Answers.ForThisCallerOnly(context);
        return reader.Read<Results<JsonAnswer<RequirementAnswer>, Problem>>(asOf, catalogue =>
        {
            if (catalogue.Profile(path.Text) is not { } profile)
                return Problem.Of(ProblemTypes.NotFound, $"There is no profile \"{path.Text}\"{(asOf is null ? "" : " at that time")}.");
            var year = catalogue.Year(profile);
            return year.Found is { } found
                ? JsonAnswer.Of(RequirementAnswer.Of(found, profile.Basis, catalogue.Today, workings))
                : Problem.Of(year.Faults);
        });
    }
}
