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

    private readonly DateOnly _today;

    private CheckedPrice(FloorOfDesign floor, Stored<Channel> channel, PriceCheck check, DateOnly today) => (_floor, _channel, _check, _today) = (floor, channel, check, today);

    public PriceCheck Check => _check;

    public FloorOfDesign Floor => _floor;

    public BasisAnswer Basis => _floor.BasisWith(_channel);

    public IEnumerable<Assumption> Assumptions => _floor.Assumptions.Concat(Assumed.In(_channel.Document, "/channel"));

    public IEnumerable<Warning> AllWarnings => _floor.WarningsOfTheFloor(_today).Concat(WarningsOfTheSale);

    /// <summary>Those about the channel and the price alone.</summary>
    public IEnumerable<Warning> WarningsOfTheSale => Warnings.In(_channel.Document, _floor.Floor.Piece.Year, "/channel").Concat(OffGrid);

    public IEnumerable<Working> AllWorkings => _floor.WorkingsOfTheFloor.Concat(Workings.Of(_check.Sale, _channel.Document)).Concat(Workings.Of(_check));

    private IEnumerable<Warning> OffGrid => Warnings.In(_check.Sale.Price, _check.Prices.Terms.Grid);

    /// <param name="records">The documents of one moment.</param>
    /// <param name="request">What is asked about.</param>
    /// <param name="at">Where the request stands in the body, such as <c>#</c> or <c>#/lines/3</c>; null for a query.</param>
    /// <param name="otherProfile">Another profile than the design's own.</param>
    /// <param name="mayRead">Whether the caller may learn what other designs there are.</param>
    public static (CheckedPrice? Found, Problem? Problem) Of(Records records, PriceCheckRequest request, string? at, Stored<CostProfile>? otherProfile = null, bool mayRead = true)
    {
        var (design, channel) = (at is null ? records.Design(request.Sku) : records.DesignNamed(request.Sku), records.Channel(request.Channel));
        var unknown = new List<InputError>();
        if (channel is null)
            unknown.Add(At("channel", at, "unknown-channel", $"There is no channel \"{request.Channel}\"; case counts."));
        if (design is null)
            unknown.Add(At("sku", at, "unknown-design", mayRead && records.Documents.SameButForCase(request.Sku) is { } close
                ? $"There is no design \"{request.Sku}\", but there is \"{close}\"; case counts."
                : $"There is no design \"{request.Sku}\"; case counts."));
        if (unknown.Count > 0)
            return (null, Problem.UnknownReference(unknown));

        var currency = Currency.Of(channel!.Document.Currency);
        if (request.Currency is { } code && code != currency.Code)
            return (null, Problem.Of(ProblemTypes.CurrencyMismatch, $"The channel \"{channel.Key}\" sells in {currency.Code}, the price is in {code}; nothing is ever converted."));
        if (NumberText.TooFine(request.Price, "price", currency) is { } detail)
            return (null, Problem.Invalid([At("price", at, "too-many-decimals", detail)]));
        if ((otherProfile ?? records.Profile(design!.Document.Profile)) is not { } profile)
            return (null, Problem.UnknownReference([At("sku", at, "unknown-profile", $"The design's profile \"{design!.Document.Profile}\" was not there at that time.")]));

        var (floor, problem) = FloorOfDesign.Of(records, profile, design!, at is null ? null : "#");
        if (floor is null)
            return (null, problem);
        var prices = floor.On(channel);
        var check = prices.Found?.Check(request.Price);
        return check?.Found is { } found ? (new CheckedPrice(floor, channel, found, records.Today), null) : (null, Problem.OfFaults(check?.Faults ?? prices.Faults));
    }

    /// <summary>The answer, less what the caller's key may not learn.</summary>
    public PriceCheckAnswer Answer(Caller caller, bool workings)
    {
        var answer = new PriceCheckAnswer
        {
            Verdict = _check.Verdict,
            CarriesItsShare = _check.CarriesItsShare,
            Basis = Basis,
            Warnings = WarningAnswer.Of(OffGrid),
        };
        if (caller.May(Scope.Check))
            answer = WithPrices(answer);
        return caller.May(Scope.Read) ? WithCosts(answer, workings) : answer;
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

    private PriceCheckAnswer WithCosts(PriceCheckAnswer answer, bool workings)
    {
        var year = _floor.Floor.Piece.Year;
        return answer with
        {
            NetProceeds = year.Currency.Nearest(_check.Sale.Net),
            AboveFloor = year.Currency.Nearest(_check.AboveFloor),
            EarnedPerBenchHour = year.Currency.Nearest(_check.EarnedPerBenchHour),
            PerBenchHour = year.Currency.Least(year.PerBenchHour),
            TakeHomePerHour = year.Currency.Nearest(year.TakeHomePerHour),
            Assumed = AssumptionAnswer.Of(Assumptions),
            Warnings = WarningAnswer.Of(AllWarnings),
            Workings = WorkingAnswer.Of(workings, () => AllWorkings),
        };
    }

    /// <summary>A fault at a field of the request.</summary>
    public static InputError At(string field, string? at, string code, string detail) => at is null
        ? new InputError { Parameter = field, Code = code, Detail = detail }
        : new InputError { Pointer = $"{at}/{field}", Code = code, Detail = detail };
}
