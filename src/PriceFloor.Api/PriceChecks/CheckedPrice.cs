using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceChecks;

/// <summary>One price checked against the stored documents, and what a caller may learn about it.</summary>
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

    /// <summary>The proceeds of the sale. A caller who may not read gets only the verdict, which is found without them.</summary>
    public PriceCheck Check =>
        _check ?? throw new InvalidOperationException("The proceeds of the sale were not calculated for a caller who may not read.");

    public ChannelPrices Prices { get; }

    public DesignFloor Floor => _floor;

    public Stored<Channel> Channel => _channel;

    /// <summary>The listed price that clears pieces at no more than this one, as far as its document says; null if there is none.</summary>
    public Stored<ListedPrice>? Clears { get; private init; }

    public BasisAnswer Basis => _floor.Basis() with { Channel = _channel.Basis };

    public IEnumerable<Assumption> Assumptions => _floor.Assumptions.Concat(Assumed.In(_channel.Document, "/channel"));

    public IEnumerable<Warning> AllWarnings => _floor.WarningsOfTheFloor(_catalogue.Today).Concat(WarningsOfTheSale);

    /// <summary>The warnings about only the channel and the price.</summary>
    public IEnumerable<Warning> WarningsOfTheSale => WarningsOfTheChannel.Concat(WarningsOfThePrice);

    /// <summary>The same for every price of the channel in this year.</summary>
    public IEnumerable<Warning> WarningsOfTheChannel => Warnings.In(_channel.Document, _floor.Floor.UnitCost.Year, "/channel",
        _catalogue.Channels.Select(channel => channel.Document));

    public IEnumerable<Warning> WarningsOfThePrice => Warnings.In(_price, Prices.Terms.Grid);

    public IEnumerable<Working> AllWorkings =>
        _floor.WorkingsOfTheFloor.Concat(Workings.Of(Prices)).Concat(Workings.Of(Check.Sale)).Concat(Workings.Of(Check));

    /// <summary>The price, or why it cannot be checked.</summary>
    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="request">The price in question.</param>
    /// <param name="place">Where the request is.</param>
    /// <param name="otherProfile">Another profile than the design's own.</param>
    /// <param name="mayRead">Whether the caller may learn the proceeds of the sale, and what other designs there are.</param>
    /// <param name="anyDecimals">Whether the price may have any decimals, as the results of a multiplication do.</param>
    public static Outcome<CheckedPrice> Of(Catalogue catalogue, PriceCheckRequest request, Place place,
        Stored<CostProfile>? otherProfile = null, bool mayRead = true, bool anyDecimals = false)
    {
        var (design, channel) = (place.IsQuery ? catalogue.Design(request.Sku) : catalogue.DesignNamed(request.Sku),
            catalogue.Channel(request.Channel));
        if (design is null || channel is null)
            return Unknown(catalogue, request, place, design, channel, mayRead);

        var currency = Currency.Of(channel.Document.Currency);
        if (request.Currency is { } code && code != currency.Code)
            return RequestFault.Of(ProblemTypes.CurrencyMismatch,
                $"The channel \"{channel.Key}\" sells in {currency.Code}, the price is in {code}; nothing is ever converted.");
        if (!anyDecimals && ChannelRules.TooFine(request.Price, "price", currency) is { } detail)
            return RequestFault.Invalid(place.Error("price", FaultCodes.TooManyDecimals, detail));
        if ((otherProfile ?? catalogue.Profile(design.Document.Profile)) is not { } profile)
            return RequestFault.Unknown(place.Error("sku", InputCodes.UnknownProfile,
                mayRead
                    ? $"The design's profile \"{design.Document.Profile}\" did not exist at that time."
                    : "The design's profile did not exist at that time."));

        var outcome = catalogue.Floor(profile, design);
        if (outcome.Found is not { } floor)
            return mayRead ? FloorAnswers.FaultsOf(outcome.Faults, profile, design, place.Whole) : NoFloor(outcome.Faults, place);
        var prices = floor.On(channel);
        if (prices.Found is null)
            return prices.Faults.ToList();
        var check = mayRead ? prices.Value.Check(request.Price) : null;
        return check is { Found: null }
            ? check.Faults.ToList()
            : new CheckedPrice(floor, channel, prices.Value, request.Price, check?.Value, catalogue)
            {
                Clears = otherProfile is null && catalogue.ListedUnder(request.Sku, design, channel.Key) is { Sound: { } listed } stored
                    && ClearingPrices.MayClear(listed, catalogue.Today) && request.Price >= listed.Price ? stored : null,
            };
    }

    /// <summary>The same for a single answer, with what the price would leave the household: only a reader learns that.</summary>
    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="request">The price in question.</param>
    /// <param name="place">Where the request is.</param>
    /// <param name="mayRead">Whether the caller may learn the proceeds of the sale, and what other designs there are.</param>
    public static Outcome<CheckedPrice> ForAnswer(Catalogue catalogue, PriceCheckRequest request, Place place, bool mayRead)
    {
        var outcome = Of(catalogue, request, place, mayRead: mayRead);
        if (outcome.Found is not { } found || !mayRead)
            return outcome;
        var takeHome = TakeHome.Of(found.Check);
        found._takeHome = takeHome.Found;
        return takeHome.Found is null ? takeHome.Faults.ToList() : found;
    }

    /// <summary>The answer, without what the caller's key may not learn.</summary>
    /// <param name="caller">Who asks.</param>
    /// <param name="workings">Whether the workings are asked for.</param>
    /// <param name="isClearing">Whether pieces are sold off at the price, by the log too.</param>
    public PriceCheckAnswer Answer(Caller caller, bool workings, bool isClearing = false)
    {
        var (mayCheck, mayRead) = (caller.May(Scope.Check), caller.May(Scope.Read));
        var (money, year) = (Currency.Of(_channel.Document.Currency), _floor.Floor.UnitCost.Year);
        return new PriceCheckAnswer
        {
            Verdict = Verdict,
            CarriesItsShare = Verdict != Verdict.BelowFloor,
            Clearing = isClearing ? true : null,
            FloorPrice = mayCheck ? Rounding.WithDecimals(Prices.FloorPrice, money.Decimals) : null,
            TargetPrice = mayCheck ? Rounding.WithDecimals(Prices.TargetPrice, money.Decimals) : null,
            Price = mayCheck ? Rounding.WithDecimals(_price, money.Decimals) : null,
            Currency = mayCheck ? money.Code : null,
            NetProceeds = mayRead ? year.Currency.Round(Check.Sale.Net) : null,
            AboveFloor = mayRead ? year.Currency.Round(Check.AboveFloor) : null,
            MostOff = mayRead && Check.DiscountRoom is { } room ? Rounding.Trim(room.Share) : null,
            EarnedPerBenchHour = mayRead ? year.Currency.Round(Check.EarnedPerBenchHour) : null,
            PerBenchHour = mayRead ? year.Currency.RoundUp(year.PerBenchHour) : null,
            TakeHomePerHourAtThisPrice = _takeHome is { } takeHome ? year.Currency.Round(takeHome.PerHour) : null,
            Basis = mayRead ? Basis : Basis with { ListedPrice = null }, // it names another channel
            Assumed = mayRead ? AssumptionAnswer.Of(Assumptions) : null,
            Warnings = WarningAnswer.Of(mayRead ? AllWarnings : WarningsOfThePrice),
            Workings = mayRead ? WorkingAnswer.Of(workings, () => AllWorkings) : null,
        };
    }

    private static List<Fault> Unknown(Catalogue catalogue, PriceCheckRequest request, Place place, Stored<Design>? design,
        Stored<Channel>? channel, bool mayRead)
    {
        var unknown = new List<Fault>();
        if (channel is null)
            unknown.Add(
                RequestFault.Unknown(place.Error("channel", InputCodes.UnknownChannel,
                    $"There is no channel \"{request.Channel}\"{(mayRead ? catalogue.HintOfChannel(request.Channel) : "")}; case counts.")));
        if (design is null)
            unknown.Add(RequestFault.Unknown(place.Error("sku", InputCodes.UnknownDesign,
                $"There is no design \"{request.Sku}\"{(mayRead ? catalogue.HintOfDesign(request.Sku) : "")}; case counts.")));
        return unknown;
    }


    /// <summary>Why there is no floor, for a caller who may not learn the names of the materials.</summary>
    private static List<Fault> NoFloor(IReadOnlyList<Fault> faults, Place place) => faults.Any(fault => fault.Code == FaultCodes.UnknownMaterial)
        ? [RequestFault.Unknown(place.Error("sku", FaultCodes.UnknownMaterial,
            "The design uses a material that its profile's price list does not have."))]
        : [.. faults];
}
