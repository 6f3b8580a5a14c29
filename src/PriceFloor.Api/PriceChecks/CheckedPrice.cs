using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceChecks;

/// <summary>One price checked against the stored documents, and what of it a caller may learn.</summary>
public sealed class CheckedPrice
{
    private readonly DesignFloor _floor;
    private readonly Stored<Channel> _channel;
    private readonly decimal _price;
    private readonly PriceCheck? _check;
    private readonly Catalogue _catalogue;
    private TakeHome? _takeHome;

    private CheckedPrice(DesignFloor floor, Stored<Channel> channel, ChannelPrices prices, decimal price, PriceCheck? check, Catalogue catalogue)
    {
        (_floor, _channel, Prices, _price, _check, _catalogue) = (floor, channel, prices, price, check, catalogue);
        Verdict = check?.Verdict ?? prices.VerdictOf(price);
    }

    public Verdict Verdict { get; }

    /// <summary>What the sale brings. A caller who may not read is told the verdict alone, which is found without it.</summary>
    public PriceCheck Check => _check ?? throw new InvalidOperationException("What the sale brings was not calculated for a caller who may not read.");

    public ChannelPrices Prices { get; }

    public DesignFloor Floor => _floor;

    public BasisAnswer Basis => _floor.Basis() with { Channel = _channel.Basis };

    public IEnumerable<Assumption> Assumptions => _floor.Assumptions.Concat(Assumed.In(_channel.Document, "/channel"));

    public IEnumerable<Warning> AllWarnings => _floor.WarningsOfTheFloor(_catalogue.Today).Concat(WarningsOfTheSale);

    /// <summary>Those about the channel and the price alone.</summary>
    public IEnumerable<Warning> WarningsOfTheSale => Warnings.In(_channel.Document, _floor.Floor.UnitCost.Year, "/channel", _catalogue.Channels.Select(channel => channel.Document)).Concat(NotAllowed);

    public IEnumerable<Working> AllWorkings => _floor.WorkingsOfTheFloor.Concat(Workings.Of(Prices)).Concat(Workings.Of(Check.Sale)).Concat(Workings.Of(Check));

    private IEnumerable<Warning> NotAllowed => Warnings.In(_price, Prices.Terms.Grid);

    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="request">What is asked about.</param>
    /// <param name="at">Where the request stands in the body, such as <c>#</c> or <c>#/lines/3</c>; null for a query.</param>
    /// <param name="otherProfile">Another profile than the design's own.</param>
    /// <param name="mayRead">Whether the caller may learn what the sale brings, and what other designs there are.</param>
    public static (CheckedPrice? Found, Problem? Problem) Of(Catalogue catalogue, PriceCheckRequest request, string? at, Stored<CostProfile>? otherProfile = null, bool mayRead = true)
    {
        var (design, channel) = (at is null ? catalogue.Design(request.Sku) : catalogue.DesignNamed(request.Sku), catalogue.Channel(request.Channel));
        if (design is null || channel is null)
            return (null, Unknown(catalogue, request, at, design, channel, mayRead));

        var currency = Currency.Of(channel.Document.Currency);
        if (request.Currency is { } code && code != currency.Code)
            return (null, Problem.Of(ProblemTypes.CurrencyMismatch, $"The channel \"{channel.Key}\" sells in {currency.Code}, the price is in {code}; nothing is ever converted."));
        if (ChannelRules.TooFine(request.Price, "price", currency) is { } detail)
            return (null, Problem.Invalid([InputError.AtField("price", at, FaultCodes.TooManyDecimals, detail)]));
        if ((otherProfile ?? catalogue.Profile(design.Document.Profile)) is not { } profile)
            return (null, Problem.UnknownReference([InputError.AtField("sku", at, InputCodes.UnknownProfile, mayRead ? $"The design's profile \"{design.Document.Profile}\" was not there at that time." : "The design's profile was not there at that time.")]));

        var outcome = catalogue.Floor(profile, design);
        if (outcome.Found is not { } floor)
            return (null, mayRead ? FloorAnswers.ProblemOf(outcome.Faults, profile, design, at is null ? null : "#") : NoFloor(outcome.Faults, at));
        var prices = floor.On(channel);
        if (prices.Found is null)
            return (null, Problem.OfFaults(prices.Faults));
        var check = mayRead ? prices.Value.Check(request.Price) : null;
        return check is { Found: null }
            ? (null, Problem.OfFaults(check.Faults))
            : (new CheckedPrice(floor, channel, prices.Value, request.Price, check?.Value, catalogue), null);
    }

    /// <summary>The same for an answer of its own, with what the price would leave the household: only a reader learns that.</summary>
    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="request">What is asked about.</param>
    /// <param name="at">Where the request stands in the body, such as <c>#</c> or <c>#/3</c>; null for a query.</param>
    /// <param name="mayRead">Whether the caller may learn what the sale brings, and what other designs there are.</param>
    public static (CheckedPrice? Found, Problem? Problem) ForAnswer(Catalogue catalogue, PriceCheckRequest request, string? at, bool mayRead)
    {
        var (found, problem) = Of(catalogue, request, at, mayRead: mayRead);
        if (found is null || !mayRead)
            return (found, problem);
        var takeHome = TakeHome.Of(found.Check);
        found._takeHome = takeHome.Found;
        return takeHome.Found is null ? (null, Problem.OfFaults(takeHome.Faults)) : (found, null);
    }

    /// <summary>The answer, less what the caller's key may not learn.</summary>
    public PriceCheckAnswer Answer(Caller caller, bool workings)
    {
        var (mayCheck, mayRead) = (caller.May(Scope.Check), caller.May(Scope.Read));
        var (money, year) = (Currency.Of(_channel.Document.Currency), _floor.Floor.UnitCost.Year);
        return new PriceCheckAnswer
        {
            Verdict = Verdict,
            CarriesItsShare = Verdict != Verdict.BelowFloor,
            FloorPrice = mayCheck ? Rounding.WithDecimals(Prices.FloorPrice, money.Decimals) : null,
            TargetPrice = mayCheck ? Rounding.WithDecimals(Prices.TargetPrice, money.Decimals) : null,
            Price = mayCheck ? Rounding.WithDecimals(_price, money.Decimals) : null,
            Currency = mayCheck ? money.Code : null,
            NetProceeds = mayRead ? year.Currency.Round(Check.Sale.Net) : null,
            AboveFloor = mayRead ? year.Currency.Round(Check.AboveFloor) : null,
            EarnedPerBenchHour = mayRead ? year.Currency.Round(Check.EarnedPerBenchHour) : null,
            PerBenchHour = mayRead ? year.Currency.RoundUp(year.PerBenchHour) : null,
            TakeHomePerHourAtThisPrice = _takeHome is { } takeHome ? year.Currency.Round(takeHome.PerHour) : null,
            Basis = mayRead ? Basis : Basis with { ListedPrice = null }, // it names another channel
            Assumed = mayRead ? AssumptionAnswer.Of(Assumptions) : null,
            Warnings = WarningAnswer.Of(mayRead ? AllWarnings : NotAllowed),
            Workings = mayRead ? WorkingAnswer.Of(workings, () => AllWorkings) : null,
        };
    }

    private static Problem Unknown(Catalogue catalogue, PriceCheckRequest request, string? at, Stored<Design>? design, Stored<Channel>? channel, bool mayRead)
    {
        var unknown = new List<InputError>();
        if (channel is null)
            unknown.Add(InputError.AtField("channel", at, InputCodes.UnknownChannel, $"There is no channel \"{request.Channel}\"; case counts."));
        if (design is null)
            unknown.Add(InputError.AtField("sku", at, InputCodes.UnknownDesign, mayRead && catalogue.KeyInOtherCase(request.Sku) is { } close
                ? $"There is no design \"{request.Sku}\", but there is \"{close}\"; case counts."
                : $"There is no design \"{request.Sku}\"; case counts."));
        return Problem.UnknownReference(unknown);
    }

    /// <summary>Why there is no floor, for a caller who may not learn what the materials are called.</summary>
    private static Problem NoFloor(IReadOnlyList<Fault> faults, string? at) => faults.Any(fault => fault.Code == FaultCodes.UnknownMaterial)
        ? Problem.UnknownReference([InputError.AtField("sku", at, FaultCodes.UnknownMaterial, "The design uses a material that its profile's price list does not have.")])
        : Problem.OfFaults(faults);
}
