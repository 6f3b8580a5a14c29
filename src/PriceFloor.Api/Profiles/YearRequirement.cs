using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Profiles;

/// <summary>Answers what a cost profile's year must bring in.</summary>
public static class YearRequirement
{
    public static Results<JsonAnswer<RequirementAnswer>, Problem> Get(PathKey path, FromQuery<ComputeQuery> query, CatalogueReader reader, HttpContext context)
    {
        var (asOf, workings) = query.Value;
        var answer = reader.Read<(RequirementAnswer?, Problem?)>(asOf, catalogue =>
        {
            if (catalogue.Profile(path.Text) is not { } profile)
                return (null, Problem.Of(ProblemTypes.NotFound, $"There is no profile \"{path.Text}\"{(asOf is null ? "" : " at that time")}."));
            var year = catalogue.Year(profile);
            return year.Found is null
                ? (null, Problem.OfFaults(year.Faults))
                : (RequirementAnswer.Of(year.Value, profile.Basis, catalogue.Today, workings), null);
        });
        Answers.ForThisCallerOnly(context);
        return answer is (_, { } problem) ? problem : JsonAnswer.Of(answer.Item1!);
    }
}
