using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Pricing;

namespace PriceFloor.Api.FloorPrices;

/// <summary>A profile and a design, stored or inline, put together to a floor; the prices listed for the design beside it.</summary>
public sealed class FloorOfDesign
{
    private readonly Records _records;
    private readonly Stored<CostProfile> _profile;
    private readonly Stored<Design> _design;
    private readonly IReadOnlyDictionary<string, Stored<ListedPrice>> _listed;
    private readonly string? _wholesaleBasis;

    private FloorOfDesign(Records records, Stored<CostProfile> profile, Stored<Design> design, FloorPrice floor, IReadOnlyDictionary<string, Stored<ListedPrice>> listed, string? wholesaleBasis)
    {
        (_records, _profile, _design, _listed, _wholesaleBasis) = (records, profile, design, listed, wholesaleBasis);
        Floor = floor;
    }

    public FloorPrice Floor { get; }

    private StudioYear Year => Floor.Piece.Year;

    /// <summary>The floor, or the problem that stands in its way.</summary>
    public static (FloorOfDesign? Found, Problem? Problem) Of(Records records, Stored<CostProfile> profile, Stored<Design> design)
    {
        var year = StudioYear.Of(profile.Document, records.YearStart);
        if (year.Found is null)
            return (null, Problem.OfFaults(year.Faults));
        var piece = Piece.Of(design.Document, year.Value);
        if (piece.Found is null)
            return (null, Problem.OfFaults(piece.Faults));

        var listed = design.Revision is null ? new Dictionary<string, Stored<ListedPrice>>() : records.ListedPrices(design.Key);
        var wholesale = HighestWholesale(records, listed, year.Value.Currency);
        var floor = FloorPrice.Of(piece.Value, wholesale?.BeforeTax);
        if (floor.Found is null)
            return (null, Problem.OfFaults(floor.Faults));
        return (new FloorOfDesign(records, profile, design, floor.Value, listed, wholesale is { } high && high.BeforeTax > floor.Value.Wholesale ? high.Basis : null), null);
    }

    /// <summary>The floor on one channel.</summary>
    public Outcome<ChannelPrices> On(Channel channel)
    {
        var terms = SellingTerms.Of(channel);
        return terms.Found is null ? terms.Faults.ToList() : ChannelPrices.Of(Floor, terms.Value);
    }

    public BasisAnswer BasisWith(Stored<Channel> channel) => new() { Profile = _profile.Basis, Design = _design.Basis, Channel = channel.Basis, ListedPrice = _wholesaleBasis };

    public IEnumerable<Assumption> Assumptions => Assumed.In(_profile.Document).Concat(Assumed.In(Floor.Piece));

    public IEnumerable<Warning> WarningsOfTheFloor => Warnings.In(Year, _records.Today).Concat(Warnings.In(Floor.Piece));

    public IEnumerable<Working> WorkingsOfTheFloor => Workings.Of(Year).Concat(Workings.Of(Floor.Piece)).Concat(Workings.Of(Floor));

    public FloorPriceAnswer Answer(IReadOnlyList<Stored<Channel>> channels, bool workings)
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
            Warnings = WarningAnswer.Of(WarningsOfTheFloor.Concat(channels.Index().SelectMany(channel => Warnings.In(channel.Item.Document, Year, $"/channels/{channel.Index}")))),
            Workings = WorkingAnswer.Of(workings, () => WorkingsOfTheFloor),
        };
    }

    private ChannelPriceAnswer Row(Stored<Channel> channel)
    {
        var money = Currency.Of(channel.Document.Currency);
        var prices = On(channel.Document);
        var listed = channel.Revision is null ? null : _listed.GetValueOrDefault(channel.Key)?.Document.Price;
        return new ChannelPriceAnswer
        {
            Channel = channel.Key,
            Currency = money.Code,
            FloorPrice = Price(prices.Found?.FloorPrice, money),
            TargetPrice = Price(prices.Found?.TargetPrice, money),
            ListedPrice = Price(listed, money),
            Verdict = listed is { } price ? prices.Found?.Check(price).Found?.Verdict : null,
            Reason = prices.Found is null ? prices.Faults[0].Code : null,
        };
    }

    private static decimal? Price(decimal? price, Currency money) => price is { } exact ? Rounding.WithDecimals(exact, money.Decimals) : null;

    /// <summary>The highest price before tax listed on a wholesale channel of the profile's currency.</summary>
    private static (decimal BeforeTax, string Basis)? HighestWholesale(Records records, IReadOnlyDictionary<string, Stored<ListedPrice>> listed, Currency currency) => listed
        .Select(price => (Price: price.Value, Channel: records.Channel(price.Key)?.Document))
        .Where(price => price.Channel is { Sells: Sells.Wholesale } && price.Channel.Currency == currency.Code)
        .Select(price => ((decimal, string)?)(Sale.BeforeTaxOf(price.Price.Document.Price, price.Channel!), price.Price.Basis))
        .MaxBy(price => price!.Value.Item1);
}
