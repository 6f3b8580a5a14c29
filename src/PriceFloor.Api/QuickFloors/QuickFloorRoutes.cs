using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.QuickFloors;

public static class QuickFloorRoutes
{
    private const string ProfileKey = "main";

    public static Results<JsonAnswer<QuickFloorAnswer>, Problem> Post(JsonBody<FirstNumbers> body, FromQuery<ComputeQuery> query,
        TimeProvider clock, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var today = DateOnly.FromDateTime((query.Value.AsOf ?? clock.GetUtcNow()).UtcDateTime);
        var yearStart = new DateOnly(today.Year, 1, 1);
        var documents = new FirstDocuments { Profile = body.Value.Profile(yearStart), Design = body.Value.Design(ProfileKey) };
        var year = StudioYear.Of(documents.Profile, yearStart);
        var piece = year.Found is null ? year.Faults.ToList() : UnitCost.Of(documents.Design, year.Value);
        var floor = piece.Found is null ? piece.Faults.ToList() : FloorPrice.Of(piece.Value, null);
        return floor.Found is { } found ? JsonAnswer.Of(AnswerOf(found, documents, today, query.Value.Workings)) : Problem.Of(floor.Faults);
    }

    private static QuickFloorAnswer AnswerOf(FloorPrice floor, FirstDocuments documents, DateOnly today, bool workings)
    {
        var (piece, year) = (floor.UnitCost, floor.UnitCost.Year);
        var money = year.Currency;
        return new QuickFloorAnswer
        {
            Currency = money.Code,
            Floor = money.RoundUp(piece.Floor),
            Retail = floor.Retail,
            TakeHomePerHour = money.Round(year.TakeHomePerHour),
            RequiredRevenue = money.RoundUp(year.RequiredRevenue),
            PerDay = money.RoundUp(year.PerDay),
            PiecesPerYear = Rounding.Down(piece.PiecesPerYear, 0),
            Documents = documents,
            Assumed = AssumptionAnswer.Of(Assumed.In(documents.Profile).Concat(Assumed.In(piece))),
            Warnings = WarningAnswer.Of(Warnings.In(year, today).Concat(Warnings.In(piece))),
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(year).Concat(Workings.Of(piece)).Concat(Workings.Of(floor))),
        };
    }
}
