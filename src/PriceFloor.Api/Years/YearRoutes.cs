using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Years;

/// <summary>Answers the year of a profile on one page.</summary>
public static class YearRoutes
{
    public static ValueTask<IResult> Get(PathKey path, FromQuery<YearQuery> query, CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        return reader.Read<IResult>(asked.AsOf, catalogue =>
        {
            if (catalogue.Profile(path.Text) is not { } profile)
                return Problem.Of(ProblemTypes.NotFound, $"There is no profile \"{path.Text}\"{(asked.AsOf is null ? "" : " at that time")}.");
            var year = catalogue.Year(profile);
            if (year.Found is not { } found)
                return Problem.Of(year.Faults);
            var answer = AnswerOf(catalogue, profile, found, asked);
            var format = Offers.Of(context).Wanted(context.Request);
            return format == Format.Svg ? TaggedBody.Of(YearPicture.Of(answer)).Answer(context, Format.Svg)
                : format == Format.Html ? TaggedBody.Of(YearPage.Of(answer, ChannelNames(catalogue), profile.Key)).Answer(context, Format.Html)
                : JsonAnswer.Of(answer);
        });
    }

    private static YearAnswer AnswerOf(Catalogue catalogue, Stored<CostProfile> profile, StudioYear year, YearQuery asked)
    {
        var money = year.Currency;
        var required = money.RoundUp(year.RequiredRevenue);
        return new YearAnswer
        {
            Name = profile.Document.Name,
            YearStart = year.YearStart,
            Currency = money.Code,
            RequiredRevenue = required,
            Parts = PartsOf(year, required),
            PerBenchHour = money.RoundUp(year.PerBenchHour),
            Planned = With(asked.Planned, money),
            NotPlanned = With(LeftOpen(required, asked.Planned), money),
            Received = With(asked.Received, money),
            StillToCome = With(LeftOpen(required, asked.Received), money),
            NotCovered = [.. year.NotCovered],
            CarryMost = CarryingDesigns.Of(catalogue, profile),
            Basis = new Dictionary<string, string> { ["profile"] = profile.Basis },
            Assumed = AssumptionAnswer.Of(Pricing.Explaining.Assumed.In(year.Profile)),
            Warnings = [.. WarningAnswer.Of(Pricing.Explaining.Warnings.In(year, catalogue.Today)),
                .. WarningAnswer.Of(DamagedDocumentException.WarningsOf(catalogue.Channels, "/carryMost"))],
        };
    }

    /// <summary>To the nearest, still adding up to the required revenue; or to what they are, if other income is more than all of the rest.</summary>
    private static IReadOnlyList<YearPartAnswer> PartsOf(StudioYear year, decimal required)
    {
        var parts = RevenueParts.Of(year);
        var sum = parts.Sum(part => part.Amount);
        var rounded = year.Currency.NearestTogether([.. parts.Select(part => part.Amount)], sum > 0 ? required : year.Currency.Round(sum));
        return [.. parts.Zip(rounded, (part, amount) => new YearPartAnswer(part.Of, part.CostKind, amount))];
    }

    private static decimal? LeftOpen(decimal required, decimal? amount) => amount is { } some ? decimal.Max(0, required - some) : null;

    private static decimal? With(decimal? amount, Currency money) => amount is { } some ? money.RoundUp(some) : null;

    private static Dictionary<string, string?> ChannelNames(Catalogue catalogue) =>
        catalogue.Channels.ToDictionary(channel => channel.Key, channel => channel.Sound?.Name);
}
