using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Remedies;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class RemedyOperations
{
    private static readonly ExampleFolder s_files = new(typeof(RemedyOperations));

    private static readonly Operation Remedies = new("getRemedies", "Questions", "What would fix a price",
        "Each single change that lets a price carry its part of the year, with its figure before and after, or the reason why it cannot; "
        + "and one proposal that spreads the gap. Time that safety depends on is never offered; weeks over 48 hours are flagged, "
        + "never advised. Scope: read.")
    {
        Answer = typeof(RemediesAnswer),
        Cases = RemedyCases.Remedies,
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    private static readonly Operation RemedyList = new("listRemedies", "Questions", "What would fix every price that falls short",
        "Each listed price below its floor (or, toward=target, "
        + "below its target) with what it is short by and the ways that are enough alone: where to "
        + "begin when many prices fall short. sort=short-by puts the worst first. As text/csv a sheet with a column for each way. Scope: read.")
    {
        Answer = typeof(RemedyListAnswer),
        AnswerExample = s_files["listRemedies.answer.json"],
        OtherAnswers = [new(Format.Csv, null, s_files["listRemedies.answer.csv"])],
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The prices that fall short.", [304] = "The caller has this list already." },
        Problems = [ProblemTypes.UnknownReference],
    };

    public static void MapRemedies(this RouteGroupBuilder v1)
    {
        v1.MapGet("/remedies", RemedyListRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Csv).Tell(RemedyList);
        v1.MapGet("/designs/{sku}/remedies", RemedyRoutes.Get).Needs(Scope.Read).Tell(Remedies);
    }
}
