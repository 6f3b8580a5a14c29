using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Pricing;

namespace PriceFloor.Api.PriceChecks;

/// <summary>One price checked against the stored documents, and what of it a caller may learn.</summary>
public sealed class CheckedPrice
{
    private readonly FloorOfDesign _floor;
    private readonly Stored<Channel> _channel;
    private readonly PriceCheck _check;

    private CheckedPrice(FloorOfDesign floor, Stored<Channel> channel, PriceCheck check) => (_floor, _channel, _check) = (floor, channel, check);

    public static (CheckedPrice? Found, Problem? Problem) Of(Records records, PriceCheckRequest request, bool isQuery)
    {
        var (design, channel) = (records.Design(request.Sku), records.Channel(request.Channel));
        var unknown = new List<InputError>();
        if (channel is null)
            unknown.Add(At("channel", isQuery, "unknown-channel", $"There is no channel \"{request.Channel}\"; case counts."));
        if (design is null)
            unknown.Add(At("sku", isQuery, "unknown-design", $"There is no design \"{request.Sku}\"; case counts."));
        if (unknown.Count > 0)
            return (null, Problem.UnknownReference(unknown));

        var currency = Currency.Of(channel!.Document.Currency);
        if (request.Currency is { } code && code != currency.Code)
            return (null, Problem.Of(ProblemTypes.CurrencyMismatch, $"The channel \"{channel.Key}\" sells in {currency.Code}, the price is in {code}; nothing is ever converted."));
        if (NumberText.TooFine(request.Price, "price", currency) is { } detail)
            return (null, Problem.Invalid([At("price", isQuery, "too-many-decimals", detail)]));
        if (records.Profile(design!.Document.Profile) is not { } profile)
            return (null, Problem.UnknownReference([At("sku", isQuery, "unknown-profile", $"The design's profile \"{design.Document.Profile}\" was not there at that time.")]));

        var (floor, problem) = FloorOfDesign.Of(records, profile, design);
        if (floor is null)
            return (null, problem);
        var prices = floor.On(channel.Document);
        var check = prices.Found?.Check(request.Price);
        return check?.Found is { } found ? (new CheckedPrice(floor, channel, found), null) : (null, Problem.OfFaults(check?.Faults ?? prices.Faults));
    }

    /// <summary>The answer, less what the caller's key may not learn.</summary>
    public PriceCheckAnswer Answer(Caller caller, bool workings)
    {
        var offGrid = Warnings.In(_check.Sale.Price, _check.Prices.Terms.Grid);
        var answer = new PriceCheckAnswer
        {
            Verdict = _check.Verdict,
            CarriesItsShare = _check.CarriesItsShare,
            Basis = _floor.BasisWith(_channel),
            Warnings = WarningAnswer.Of(offGrid),
        };
        if (caller.May(Scope.Check))
            answer = WithPrices(answer);
        return caller.May(Scope.Read) ? WithCosts(answer, offGrid, workings) : answer;
    }

    private PriceCheckAnswer WithPrices(PriceCheckAnswer answer)
    {
        var money = Currency.Of(_channel.Document.Currency);
        return answer with
        {
            FloorPrice = Rounding.WithDecimals(_check.Prices.FloorPrice, money.Decimals),
            TargetPrice = Rounding.WithDecimals(_check.Prices.TargetPrice, money.Decimals),
            Price = Rounding.WithDecimals(_check.Sale.Price, money.Decimals),
            Currency = money.Code,
        };
    }

    private PriceCheckAnswer WithCosts(PriceCheckAnswer answer, IEnumerable<Warning> offGrid, bool workings)
    {
        var year = _floor.Floor.Piece.Year;
        return answer with
        {
            NetProceeds = year.Currency.Nearest(_check.Sale.Net),
            AboveFloor = year.Currency.Nearest(_check.AboveFloor),
            EarnedPerBenchHour = year.Currency.Nearest(_check.EarnedPerBenchHour),
            PerBenchHour = year.Currency.Least(year.PerBenchHour),
            TakeHomePerHour = year.Currency.Nearest(year.TakeHomePerHour),
            Assumed = AssumptionAnswer.Of(_floor.Assumptions.Concat(Assumed.In(_channel.Document, "/channel"))),
            Warnings = WarningAnswer.Of(_floor.WarningsOfTheFloor.Concat(Warnings.In(_channel.Document, year, "/channel")).Concat(offGrid)),
            Workings = WorkingAnswer.Of(workings, () => _floor.WorkingsOfTheFloor.Concat(Workings.Of(_check.Sale, _channel.Document)).Concat(Workings.Of(_check))),
        };
    }

    private static InputError At(string field, bool isQuery, string code, string detail) => isQuery
        ? new InputError { Parameter = field, Code = code, Detail = detail }
        : new InputError { Pointer = "#/" + field, Code = code, Detail = detail };
}
