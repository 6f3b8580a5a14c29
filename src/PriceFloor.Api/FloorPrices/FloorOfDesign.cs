using System.Collections.Frozen;
using System.Runtime.CompilerServices;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.FloorPrices;

/// <summary>
/// A profile and a design, stored or inline, put together to a floor; the prices listed for the design beside it. Computed once for
/// the same revisions and kept beside the design, so that a second question costs nothing; never asked again once any of them changed.
/// </summary>
public sealed class FloorOfDesign
{
    private static readonly ConditionalWeakTable<Stored<CostProfile>, Outcome<StudioYear>> s_years = [];
    private static readonly ConditionalWeakTable<Stored<Channel>, Outcome<SellingTerms>> s_terms = [];
    private static readonly ConditionalWeakTable<Stored<Design>, FloorOfDesign> s_floors = [];
    private static readonly IReadOnlyDictionary<string, Stored<ListedPrice>> s_nothingListed = FrozenDictionary<string, Stored<ListedPrice>>.Empty;

    private readonly Stored<CostProfile> _profile;
    private readonly Stored<Design> _design;
    private readonly IReadOnlyDictionary<string, Stored<ListedPrice>> _listed;
    private readonly IReadOnlyList<Stored<Channel>>? _channels;
    private readonly string? _wholesaleBasis;
    private PricesOn[] _prices = [];

    private FloorOfDesign(Stored<CostProfile> profile, Stored<Design> design, FloorPrice floor, IReadOnlyDictionary<string, Stored<ListedPrice>> listed, IReadOnlyList<Stored<Channel>>? channels, string? wholesaleBasis)
    {
        (_profile, _design, _listed, _channels, _wholesaleBasis) = (profile, design, listed, channels, wholesaleBasis);
        Floor = floor;
    }

    public FloorPrice Floor { get; }

    private StudioYear Year => Floor.Piece.Year;

    /// <summary>The floor, or why there is none.</summary>
    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="profile">Whose year is asked about.</param>
    /// <param name="design">What is made.</param>
    public static Outcome<FloorOfDesign> Of(Catalogue catalogue, Stored<CostProfile> profile, Stored<Design> design)
    {
        var listed = design.Revision is null ? s_nothingListed : catalogue.ListedPrices(design.Key);
        var channels = listed.Count == 0 ? null : catalogue.Channels; // only what is listed can set the target
        return s_floors.TryGetValue(design, out var known) && ReferenceEquals(known._profile, profile) && ReferenceEquals(known._listed, listed) && ReferenceEquals(known._channels, channels)
            ? known
            : Computed(catalogue, profile, design, listed, channels);
    }

    /// <summary>The problem that stands in the way of a floor.</summary>
    /// <param name="faults">Why there is none.</param>
    /// <param name="profile">Whose year was asked about.</param>
    /// <param name="design">What is made.</param>
    /// <param name="at">Where the request names the profile, such as <c>#</c> for a body; null for a query.</param>
    public static Problem ProblemOf(IReadOnlyList<Fault> faults, Stored<CostProfile> profile, Stored<Design> design, string? at) =>
        MaterialsLacking(profile, design, at) ?? Problem.OfFaults(faults);

    private static Outcome<FloorOfDesign> Computed(Catalogue catalogue, Stored<CostProfile> profile, Stored<Design> design, IReadOnlyDictionary<string, Stored<ListedPrice>> listed, IReadOnlyList<Stored<Channel>>? channels)
    {
        var year = s_years.GetValue(profile, stored => StudioYear.Of(stored.Document, catalogue.YearStart));
        if (year.Found is null)
            return year.Faults.ToList();
        var piece = Piece.Of(design.Document, year.Value);
        if (piece.Found is null)
            return piece.Faults.ToList();

        var wholesale = HighestWholesale(catalogue, listed, year.Value.Currency);
        var floor = FloorPrice.Of(piece.Value, wholesale?.BeforeTax);
        if (floor.Found is null)
            return floor.Faults.ToList();
        var found = new FloorOfDesign(profile, design, floor.Value, listed, channels, wholesale is { } high && high.BeforeTax > floor.Value.Wholesale ? high.Basis : null);
        s_floors.AddOrUpdate(design, found);
        return found;
    }

    /// <summary>The floor on one channel, kept until the channel changes.</summary>
    public Outcome<ChannelPrices> On(Stored<Channel> channel)
    {
        foreach (var prices in Volatile.Read(ref _prices))
            if (ReferenceEquals(prices.Channel, channel))
                return prices.Found;
        return ComputedOn(channel);
    }

    private Outcome<ChannelPrices> ComputedOn(Stored<Channel> channel)
    {
        var terms = s_terms.GetValue(channel, one => SellingTerms.Of(one.Document));
        var found = terms.Found is null ? terms.Faults.ToList() : ChannelPrices.Of(Floor, terms.Value);
        // Where two find at once, one of them is not kept, and found again when it is asked for.
        Volatile.Write(ref _prices, [.. Volatile.Read(ref _prices).Where(prices => prices.Channel.Key != channel.Key), new PricesOn(channel, found)]);
        return found;
    }

    /// <summary>The price listed for the design on a channel.</summary>
    public decimal? ListedOn(Stored<Channel> channel) => channel.Revision is null ? null : _listed.GetValueOrDefault(channel.Key)?.Document.Price;

    public BasisAnswer BasisWith(Stored<Channel> channel) => new() { Profile = _profile.Basis, Design = _design.Basis, Channel = channel.Basis, ListedPrice = _wholesaleBasis };

    public IEnumerable<Assumption> Assumptions => Assumed.In(_profile.Document).Concat(Assumed.In(Floor.Piece));

    public IEnumerable<Warning> WarningsOfTheFloor(DateOnly today) => Warnings.In(Year, today).Concat(Warnings.In(Floor.Piece));

    public IEnumerable<Working> WorkingsOfTheFloor => Workings.Of(Year).Concat(Workings.Of(Floor.Piece)).Concat(Workings.Of(Floor));

    /// <summary>The answer on every stored channel. A damaged one is left out and named in a warning.</summary>
    public FloorPriceAnswer AnswerOnAll(Catalogue catalogue, bool workings)
    {
        var answer = Answer([.. catalogue.Channels.Where(channel => channel.Sound is not null)], catalogue.Today, workings);
        return answer with { Warnings = [.. answer.Warnings, .. WarningAnswer.Of(DamagedDocumentException.WarningsOf(catalogue.Channels, "/basis/channels"))] };
    }

    private IEnumerable<Working> WorkingsOn(Stored<Channel> channel, int number) =>
        On(channel).Found is { } prices ? Workings.Prefixed($"channel{number}", $"on channel {number}: ", Workings.Of(prices)) : [];

    public FloorPriceAnswer Answer(IReadOnlyList<Stored<Channel>> channels, DateOnly today, bool workings)
    {
        var (piece, money) = (Floor.Piece, Year.Currency);
        return new FloorPriceAnswer
        {
            Currency = money.Code,
            Floor = money.Least(piece.Floor),
            Wholesale = Floor.Wholesale,
            Retail = Floor.Retail,
            BenchHours = Answers.Hours(piece.BenchHours),
            BenchCost = money.Nearest(piece.BenchCost),
            Materials = money.Nearest(piece.Materials),
            SecondsCredit = money.Nearest(piece.SecondsCredit),
            StartsPerGoodPiece = Answers.Ratio(piece.Time.Starts),
            PiecesPerYear = Rounding.Down(piece.PiecesPerYear, 0),
            Channels = [.. channels.Select(Row)],
            Basis = new BasisAnswer { Profile = _profile.Basis, Design = _design.Basis, Channels = [.. channels.Select(channel => channel.Basis)], ListedPrice = _wholesaleBasis },
            Assumed = AssumptionAnswer.Of(Assumptions.Concat(channels.Index().SelectMany(channel => Assumed.In(channel.Item.Document, $"/channels/{channel.Index}")))),
            Warnings = WarningAnswer.Of(WarningsOfTheFloor(today).Concat(channels.Index().SelectMany(channel => Warnings.In(channel.Item.Document, Year, $"/channels/{channel.Index}", channels.Select(other => other.Document))))),
            Workings = WorkingAnswer.Of(workings, () => WorkingsOfTheFloor.Concat(channels.Index().SelectMany(channel => WorkingsOn(channel.Item, channel.Index + 1)))),
        };
    }

    private ChannelPriceAnswer Row(Stored<Channel> channel)
    {
        var money = Currency.Of(channel.Document.Currency);
        var prices = On(channel);
        var listed = ListedOn(channel);
        return new ChannelPriceAnswer
        {
            Channel = channel.Key,
            Currency = money.Code,
            FloorPrice = Price(prices.Found?.FloorPrice, money),
            TargetPrice = Price(prices.Found?.TargetPrice, money),
            ListedPrice = Price(listed, money),
            Verdict = listed is { } price ? prices.Found?.VerdictOf(price) : null,
            Reason = prices.Found is null ? prices.Faults[0].Code : null,
        };
    }

    /// <summary>A stored design is no part of the request, so that it lacks a material is told where the profile is named.</summary>
    private static Problem? MaterialsLacking(Stored<CostProfile> profile, Stored<Design> design, string? at)
    {
        var known = profile.Document.Materials.Select(line => line.Material).ToHashSet();
        var lacking = design.Revision is null ? [] : design.Document.Materials.Select(line => line.Material).OfType<string>().Where(material => !known.Contains(material)).Distinct().ToList();
        return lacking.Count == 0 ? null : Problem.UnknownReference([.. lacking.Select(material => InputError.AtField("profile", at, FaultCodes.UnknownMaterial,
            $"The price list of {(profile.Revision is null ? "the inline profile" : $"the profile \"{profile.Key}\"")} has no material \"{material}\", which the design \"{design.Key}\" uses; add it there, or try another profile."))]);
    }

    private static decimal? Price(decimal? price, Currency money) => price is { } exact ? Rounding.WithDecimals(exact, money.Decimals) : null;

    /// <summary>The highest price before tax listed on a wholesale channel of the profile's currency.</summary>
    private static (decimal BeforeTax, string Basis)? HighestWholesale(Catalogue catalogue, IReadOnlyDictionary<string, Stored<ListedPrice>> listed, Currency currency) => listed
        .Select(price => (Price: price.Value, Channel: catalogue.Channel(price.Key)?.Document))
        .Where(price => price.Channel is { Sells: Sells.Wholesale } && price.Channel.Currency == currency.Code)
        .Select(price => ((decimal, string)?)(Sale.BeforeTaxOf(price.Price.Document.Price, price.Channel!), price.Price.Basis))
        .MaxBy(price => price!.Value.Item1);

    private readonly record struct PricesOn(Stored<Channel> Channel, Outcome<ChannelPrices> Found);
}
