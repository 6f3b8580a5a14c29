using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Years;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class YearOperations
{
    private static readonly ExampleFolder s_files = new(typeof(YearOperations));

    private static readonly Operation Year = new("getYear", "Profiles", "The year on one page",
        "What the year must bring in by what it is made of, beside what is planned and what has come in; the kinds of cost that nothing covers; and "
        + "the ten designs that bring most for each bench hour. As image/svg+xml a picture, as text/html a page to print. Scope: read.")
    {
        Answer = typeof(YearAnswer),
        AnswerExample = s_files["getYear.answer.json"],
        OtherAnswers = [FormatExample.Drawing, new(Format.Html, null, s_files["getYear.answer.html"])],
        Problems = [ProblemTypes.CannotCompute],
    };

    public static void MapYears(this RouteGroupBuilder v1)
    {
        v1.MapGet("/profiles/{key}/year", YearRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Svg, Format.Html).Tell(Year);
        v1.MapGet("/profiles/{key}/year.svg", YearRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(Year.As(Format.Svg));
        v1.MapGet("/profiles/{key}/year.html", YearRoutes.Get).Needs(Scope.Read).Always(Format.Html).Tell(Year.As(Format.Html));
    }
}
