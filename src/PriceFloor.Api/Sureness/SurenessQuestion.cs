using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>
/// What is asked of every draw: the year, and a design's floor and price on a channel. It is the same code as in every answer, given the draw's
/// documents.
/// </summary>
internal sealed class SurenessQuestion
{
    private readonly ChangeScope _scope;
    private readonly ChangeScript _script;
    private readonly CostProfile _likelyProfile;
    private readonly Outcome<StudioYear> _likelyYear;
    private readonly SellingTerms? _terms;
    private readonly decimal? _net;

    private SurenessQuestion(ChangeScope scope, ChangeScript script, Stored<Design>? design, Stored<Channel>? channel, decimal? price)
    {
        (_scope, _script, Design, Channel, Price) = (scope, script, design, channel, price);
        _likelyProfile = ProfileIn(script.Likely);
        _likelyYear = StudioYear.Of(_likelyProfile, scope.Catalogue.YearStart);
        if (channel is null || IsRanged(Kinds.Channel, channel.Key))
            return;
        _terms = SellingTerms.Of(ChannelIn(script.Likely)).Found;
        _net = price is { } asked ? Sale.Of(asked, ChannelIn(script.Likely)).Net : null;
    }

    public Stored<Design>? Design { get; }

    public Stored<Channel>? Channel { get; }

    public decimal? Price { get; }

    /// <summary>The year with every range at its likely value.</summary>
    public StudioYear Year => _likelyYear.Value;

    /// <summary>The likely figures.</summary>
    public DrawnFigures Likely { get; private set; }

    /// <summary>The question about documents that exist, with an answer at the likely values.</summary>
    public static Outcome<SurenessQuestion> Of(SurenessRequest request, ChangeScope scope, ChangeScript script)
    {
        var unknown = new List<Fault>();
        var design = request.Sku is { } sku ? scope.Catalogue.DesignNamed(sku) : null;
        if (request.Sku is not null && design?.Document.Profile != scope.Profile.Key)
            unknown.Add(RequestFault.Unknown(Place.Body.Error("sku", InputCodes.UnknownDesign,
                $"There is no design \"{request.Sku}\" of the profile \"{scope.Profile.Key}\"; case counts.")));
        var channel = request.Channel is { } key ? scope.Catalogue.Channel(key) : null;
        if (request.Channel is not null && channel is null)
            unknown.Add(RequestFault.Unknown(Place.Body.Error("channel", InputCodes.UnknownChannel,
                $"There is no channel \"{request.Channel}\"; case counts.")));
        if (unknown.Count > 0)
            return unknown;
        if (channel is not null && channel.Document.Currency != scope.Profile.Document.Currency)
            return RequestFault.Of(ProblemTypes.CurrencyMismatch, "The channel sells in another currency; nothing is ever converted.");
        try
        {
            return new SurenessQuestion(scope, script, design, channel, request.Price).WithLikely();
        }
        catch (OverflowException)
        {
            return Fault.TooLarge;
        }
    }

    /// <summary>The figures of documents; null if they have no answer.</summary>
    /// <exception cref="OverflowException">A figure is too large.</exception>
    public DrawnFigures? Of(ChangedDocuments documents)
    {
        var profile = ProfileIn(documents);
        var year = ReferenceEquals(profile, _likelyProfile) ? _likelyYear : StudioYear.Of(profile, _scope.Catalogue.YearStart);
        if (year.Found is not { } found)
            return null;
        if (Design is null)
            return new DrawnFigures(found.PerBenchHour, 0, 0, null, false);
        if (UnitCost.Of(DesignIn(documents), found).Found is not { } cost)
            return null;
        return Channel is null ? new DrawnFigures(found.PerBenchHour, cost.Floor, 0, null, false) : OnChannel(documents, found, cost);
    }

    /// <summary>The smallest allowed price for a floor on the channel; null where the channel is itself drawn, or no price is enough.</summary>
    public decimal? PriceFor(decimal channelFloor) => _terms?.FloorPrice(channelFloor).Found?.Price;

    /// <summary>Whether the channel is the same in every draw, so that one price follows from one floor.</summary>
    public bool HasFixedChannel => _terms is not null;

    private DrawnFigures? OnChannel(ChangedDocuments documents, StudioYear year, UnitCost cost)
    {
        if (_terms is { } same)
        {
            var least = new ChannelFloor(cost, same.Channel).Floor;
            return new DrawnFigures(year.PerBenchHour, cost.Floor, least, null, _net?.Reaches(least) == true);
        }

        var channel = ChannelIn(documents);
        var floor = new ChannelFloor(cost, channel).Floor;
        return SellingTerms.Of(channel).Found?.FloorPrice(floor).Found is { } found
            ? new DrawnFigures(year.PerBenchHour, cost.Floor, floor, found.Price, Price is { } price && Sale.Of(price, channel).Net.Reaches(floor))
            : null;
    }

    private Outcome<SurenessQuestion> WithLikely()
    {
        if (_likelyYear.Found is null)
            return _likelyYear.Faults.ToList();
        if (Design is not null && UnitCost.Of(DesignIn(_script.Likely), Year) is { Found: null } refused)
            return refused.Faults.ToList();
        if (Channel is not null && SellingTerms.Of(ChannelIn(_script.Likely)) is { Found: null } taking)
            return taking.Faults.ToList();
        if (Of(_script.Likely) is not { } likely)
            return new Fault("", FaultCodes.NoPrice, "No price up to 10^12 would be enough on this channel.");
        Likely = likely;
        return this;
    }

    private bool IsRanged(string kind, string key) => _script.Steps.Any(step =>
        step.Range is not null && step.Targets.Any(target => target.Document.Kind == kind && target.Document.Key == key));

    private CostProfile ProfileIn(ChangedDocuments documents) =>
        documents.Find<CostProfile>(Kinds.Profile, _scope.Profile.Key) ?? _scope.Profile.Document;

    private Design DesignIn(ChangedDocuments documents) => documents.Find<Design>(Kinds.Design, Design!.Key) ?? Design.Document;

    private Channel ChannelIn(ChangedDocuments documents) => documents.Find<Channel>(Kinds.Channel, Channel!.Key) ?? Channel.Document;
}

/// <summary>The figures of one draw, unrounded.</summary>
/// <param name="PerBenchHour">What a carrying hour must bring.</param>
/// <param name="Floor">F; 0 if no design is asked about.</param>
/// <param name="ChannelFloor">F_c; 0 if no channel is asked about.</param>
/// <param name="FloorPrice">The floor price where the channel is drawn too; else it follows from F_c.</param>
/// <param name="Holds">Whether the price in question carries its share.</param>
internal readonly record struct DrawnFigures(decimal PerBenchHour, decimal Floor, decimal ChannelFloor, decimal? FloorPrice, bool Holds);
