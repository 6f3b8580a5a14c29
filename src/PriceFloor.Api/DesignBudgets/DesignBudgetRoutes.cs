using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.DesignBudgets;

public static class DesignBudgetRoutes
{
    public static ValueTask<Results<JsonAnswer<DesignBudgetAnswer>, Problem>> Post(JsonBody<DesignBudgetRequest> body, FromQuery<ComputeQuery> query,
        CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (request, (asOf, workings)) = (body.Value, query.Value);
        return reader.Read<Results<JsonAnswer<DesignBudgetAnswer>, Problem>>(asOf, catalogue =>
        {
            var (profile, channel) = (catalogue.Profile(request.Profile), catalogue.Channel(request.Channel));
            if (profile is null || channel is null)
                return Problem.UnknownReference([.. Unknown(request, profile, channel)]);
            if (Refusal(request, profile, channel) is { } refusal)
                return refusal;
            var year = catalogue.Year(profile);
            var budget = year.Found is null ? null
                : DesignBudget.Of(year.Value, Sale.Of(request.Price, channel.Document), request.Minutes, request.Materials);
            return budget?.Found is { } found
                ? JsonAnswer.Of(AnswerOf(request, catalogue, profile, channel, found, workings))
                : Problem.Of(budget?.Faults ?? year.Faults);
        });
    }

    private static IEnumerable<InputError> Unknown(DesignBudgetRequest request, Stored<CostProfile>? profile, Stored<Channel>? channel)
    {
        if (profile is null)
            yield return new InputError
            {
                Pointer = "#/profile",
                Code = InputCodes.UnknownProfile,
                Detail = $"There is no profile \"{request.Profile}\"; case counts.",
            };
        if (channel is null)
            yield return new InputError
            {
                Pointer = "#/channel",
                Code = InputCodes.UnknownChannel,
                Detail = $"There is no channel \"{request.Channel}\"; case counts.",
            };
    }

    private static Problem? Refusal(DesignBudgetRequest request, Stored<CostProfile> profile, Stored<Channel> channel)
    {
        var currency = Currency.Of(channel.Document.Currency);
        if (currency.Code != profile.Document.Currency)
            return Problem.Of(ProblemTypes.CurrencyMismatch,
                $"The channel sells in {currency.Code} and the profile counts in {profile.Document.Currency}; nothing is ever converted.");
        return ChannelRules.TooFine(request.Price, "price", currency) is { } detail
            ? Problem.Invalid([Place.Body.Error("price", FaultCodes.TooManyDecimals, detail)])
            : null;
    }

    private static DesignBudgetAnswer AnswerOf(DesignBudgetRequest request, Catalogue catalogue, Stored<CostProfile> profile, Stored<Channel> channel,
        DesignBudget budget, bool workings)
    {
        var (year, channels) = (budget.Year, catalogue.Channels);
        var asked = ChannelBudgetAnswer.Of(channel.Key, budget);
        return new DesignBudgetAnswer
        {
            Currency = year.Currency.Code,
            Price = Rounding.WithDecimals(request.Price, year.Currency.Decimals),
            Channel = channel.Key,
            NetProceeds = year.Currency.Round(budget.Sale.Net),
            Minutes = asked.Minutes,
            Materials = asked.Materials,
            Reason = asked.Reason,
            PerBenchHour = year.Currency.RoundUp(year.PerBenchHour),
            SoldShare = Rounding.Trim(profile.Document.SoldShare),
            Channels = [.. channels.Select(one => Row(one, request, year))],
            Basis = new BasisAnswer { Profile = profile.Basis, Channel = channel.Basis, Channels = [.. channels.Select(one => one.Basis)] },
            Assumed = AssumptionAnswer.Of(Assumed.In(profile.Document).Concat(Assumed.OfUnsoldPieces(profile.Document))
                .Concat(Assumed.In(channel.Document, "/channel"))),
            Warnings = WarningAnswer.Of(Warnings.In(year, catalogue.Today)
                .Concat(Warnings.In(channel.Document, year, "/channel", catalogue.Channels.Select(other => other.Document)))
                .Concat(Warnings.In(request.Price, PriceGrid.Of(channel.Document)))),
            Workings = WorkingAnswer.Of(workings, () => Workings.Of(year).Concat(Workings.Of(budget.Sale)).Concat(Workings.Of(budget))),
        };
    }

    private static ChannelBudgetAnswer Row(Stored<Channel> channel, DesignBudgetRequest request, StudioYear year)
    {
        if (channel.Document.Currency != year.Currency.Code)
            return new ChannelBudgetAnswer { Channel = channel.Key, Reason = FaultCodes.CurrencyMismatch };
        var budget = DesignBudget.Of(year, Sale.Of(request.Price, channel.Document), request.Minutes, request.Materials);
        return budget.Found is { } found
            ? ChannelBudgetAnswer.Of(channel.Key, found)
            : new ChannelBudgetAnswer { Channel = channel.Key, Reason = budget.Faults[0].Code };
    }
}
