using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>
/// What is asked of every draw: the year, a design's floor and price on a channel, a plan, and a quote or line to take or leave. It is the same code
/// as in every answer, given the draw's documents.
/// </summary>
internal sealed class SurenessQuestion
{
    private readonly ChangeScope _scope;
    private readonly ChangeScript _script;
    private readonly CostProfile _likelyProfile;
    private readonly Outcome<StudioYear> _likelyYear;
    private readonly SellingTerms? _terms;
    private readonly decimal? _net;

    private SurenessQuestion(ChangeScope scope, ChangeScript script, Stored<Design>? design, Stored<Channel>? channel, SurenessRequest request)
    {
        (_scope, _script, Design, Channel, Price, Line) = (scope, script, design, channel, request.Price, (int?)request.Line);
        _likelyProfile = ProfileIn(script.Likely);
        _likelyYear = StudioYear.Of(_likelyProfile, scope.Catalogue.YearStart);
        if (channel is null || IsRanged(Kinds.Channel, channel.Key))
            return;
        _terms = SellingTerms.Of(ChannelIn(script.Likely)).Found;
        _net = Price is { } asked ? Sale.Of(asked, ChannelIn(script.Likely)).Net : null;
    }

    public Stored<Design>? Design { get; }

    public Stored<Channel>? Channel { get; }

    public decimal? Price { get; }

    /// <summary>The line of the plan that is a decision; null if none is.</summary>
    public int? Line { get; }

    public DrawnPlan? Plan { get; private set; }

    public DrawnQuote? Quote { get; private set; }

    /// <summary>Whether there is something to take or leave.</summary>
    public bool IsDecision => Quote is not null || Line is not null;

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
            return new SurenessQuestion(scope, script, design, channel, request).WithLikely();
        }
        catch (OverflowException)
        {
            return Fault.TooLarge;
        }
    }

    /// <summary>The figures of documents; null if they have no answer.</summary>
    /// <exception cref="OverflowException">A figure is too large.</exception>
    public DrawnFigures? Of(ChangedDocuments documents) => YearIn(documents) is not { } year || PieceIn(documents, year) is not { } figures ? null
        : Plan is null && Quote is null ? figures : WithPlan(figures, documents, year);

    /// <summary>The floor alone, in documents; null if they have no answer.</summary>
    public decimal? FloorIn(ChangedDocuments documents) => YearIn(documents) is { } year ? UnitCost.Of(DesignIn(documents), year).Found?.Floor : null;

    /// <summary>The smallest allowed price for a floor on the channel; null where the channel is itself drawn, or no price is enough.</summary>
    public decimal? PriceFor(decimal channelFloor) => _terms?.FloorPrice(channelFloor).Found?.Price;

    /// <summary>Whether the channel is the same in every draw, so that one price follows from one floor.</summary>
    public bool HasFixedChannel => _terms is not null;

    private StudioYear? YearIn(ChangedDocuments documents)
    {
        var profile = ProfileIn(documents);
        return (ReferenceEquals(profile, _likelyProfile) ? _likelyYear : StudioYear.Of(profile, _scope.Catalogue.YearStart, _likelyYear.Found)).Found;
    }

    private DrawnFigures? PieceIn(ChangedDocuments documents, StudioYear year)
    {
        if (Design is null)
            return new DrawnFigures(year.PerBenchHour, 0, 0, null, false);
        if (UnitCost.Of(DesignIn(documents), year).Found is not { } cost)
            return null;
        return Channel is null ? new DrawnFigures(year.PerBenchHour, cost.Floor, 0, null, false) : OnChannel(documents, year, cost);
    }

    private DrawnFigures? WithPlan(DrawnFigures figures, ChangedDocuments documents, StudioYear year)
    {
        var plan = Plan?.Of(documents, year, Line);
        if (Plan is not null && plan is null)
            return null;
        var gain = Quote is { } quote ? quote.GainIn(documents, year) : plan?.Gain;
        return IsDecision && gain is null ? null : figures with { Plan = plan, Gain = gain };
    }

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
        var plan = _scope.Plan is null ? null : DrawnPlan.Of(_scope, _script.Likely, Year);
        var quote = _scope.Quote is null ? null : DrawnQuote.Of(_scope, _script.Likely);
        if ((plan?.Faults ?? []).Concat(quote?.Faults ?? []).ToList() is { Count: > 0 } faults)
            return faults;
        (Plan, Quote) = (plan?.Value, quote?.Value);
        if (Line >= Plan?.Lines)
            return RequestFault.Invalid(Place.Body.Error("line", FaultCodes.OutOfRange,
                FormattableString.Invariant($"The plan has {Plan.Lines} lines, and the first has the index 0.")));
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
