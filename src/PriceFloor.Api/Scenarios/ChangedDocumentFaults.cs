using FluentValidation;
using PriceFloor.Api.Channels;
using PriceFloor.Api.Designs;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Plans;
using PriceFloor.Api.Profiles;
using PriceFloor.Api.Quotes;
using PriceFloor.Storage;

namespace PriceFloor.Api.Scenarios;

/// <summary>
/// Checks changed documents as if they had been sent, but for digits and decimals: those count only in what was sent. Each fault is reported at the
/// last change that touched its place.
/// </summary>
internal sealed class ChangedDocumentFaults
{
    private static readonly CostProfileValidator s_profiles = new();
    private static readonly DesignValidator s_designs = new();
    private static readonly ChannelValidator s_channels = new();
    private static readonly NoRules<ListedPrice> s_prices = new();
    private static readonly PlanValidator s_plans = new();
    private static readonly QuoteValidator s_quotes = new();

    private readonly ChangeScript _script;
    private readonly ChangeScope _scope;
    private readonly CostProfile _profile;

    private ChangedDocumentFaults(ChangeScript script, ChangeScope scope)
    {
        (_script, _scope) = (script, scope);
        _profile = script.Likely.Find<CostProfile>(Kinds.Profile, scope.Profile.Key) ?? scope.Profile.Document;
    }

    /// <summary>Every fault of the documents after a script, with pointers into the list of changes.</summary>
    public static IEnumerable<Fault> Of(ChangeScript script, ChangeScope scope) => new ChangedDocumentFaults(script, scope).All();

    private IEnumerable<Fault> All()
    {
        var year = new Lazy<StudioYear?>(() => StudioYear.Of(_profile, _scope.Catalogue.YearStart).Found);
        return _script.Likely.All.OrderBy(document => document.Key.Kind, StringComparer.Ordinal)
            .ThenBy(document => document.Key.Key, StringComparer.Ordinal).AsParallel().AsOrdered()
            .SelectMany(document => In(document.Key, document.Value, year).Select(fault => Placed(document.Key, fault)).OfType<Fault>()).ToList();
    }

    private IEnumerable<Fault> In(DocumentName name, object document, Lazy<StudioYear?> year)
    {
        var faults = document switch
        {
            CostProfile profile => FieldsAndRules(profile, s_profiles),
            Design design => FieldsAndRules(design, s_designs),
            Channel channel => FieldsAndRules(channel, s_channels),
            ListedPrice price => FieldsAndRules(price, s_prices),
            Plan plan => FieldsAndRules(plan, s_plans),
            Quote quote => FieldsAndRules(quote, s_quotes),
            _ => throw new ArgumentException($"No {name.Kind} can be changed.", nameof(document)),
        };
        return faults.Count > 0 ? faults : BetweenDocuments(name, document, year);
    }

    private static List<Fault> FieldsAndRules<T>(T document, IValidator<T> validator) where T : class
    {
        var fields = RecordReader.Check(document, anyDecimals: true);
        return [.. fields.Concat(Rules.Faults(validator, document, fields))
            .Select(error => new Fault(error.Pointer![1..], error.Code, error.Detail))];
    }

    /// <summary>What the store would ask of a document that was sent.</summary>
    private IEnumerable<Fault> BetweenDocuments(DocumentName name, object document, Lazy<StudioYear?> year) => document switch
    {
        Design design when year.Value is { } known => UnitCost.Of(design, known).Faults,
        CostProfile profile => OfProfile(profile),
        Channel channel when _scope.Catalogue.Channel(name.Key)?.Sound is { } stored && stored.Currency != channel.Currency =>
            [new Fault("/currency", FaultCodes.CurrencyMismatch, "A channel keeps its currency; nothing is ever converted.")],
        ListedPrice price => OfPrice(ListedPriceKey.Of(name.Key).Channel, price),
        Plan plan => OfPlan(plan),
        _ => [],
    };

    private IEnumerable<Fault> OfProfile(CostProfile profile)
    {
        if (profile.Currency != _scope.Profile.Document.Currency)
            yield return new Fault("/currency", FaultCodes.CurrencyMismatch, "A profile keeps its currency; nothing is ever converted.");
        var gone = _scope.Profile.Document.Materials.Select(line => line.Material)
            .Except(profile.Materials.Select(line => line.Material)).ToHashSet();
        if (gone.Count == 0)
            yield break;
        foreach (var design in _scope.Designs)
            foreach (var line in (_script.Likely.Find<Design>(Kinds.Design, design.Key) ?? design.Document).Materials)
                if (line.Material is { } material && gone.Remove(material))
                    yield return new Fault("/materials", FaultCodes.UnknownMaterial,
                        $"The design \"{design.Key}\" still uses the material \"{material}\"; keep it in the list, or change the design too.");
    }

    /// <summary>The names in a plan, and the lines of the profile that it dates.</summary>
    private IEnumerable<Fault> OfPlan(Plan plan) => PlanNames.Resolved(_scope.Catalogue, plan).Faults
        .Select(fault => new Fault(fault.Pointer.TrimStart('#'), fault.Code, fault.Detail))
        .Concat(DueLine.Of(_profile, plan.PaidIn).Faults)
        .Concat(plan.Lines.Index()
            .Where(line => _scope.Catalogue.Channel(line.Item.Channel)?.Sound is { } channel && channel.Currency != _profile.Currency)
            .Select(line => new Fault(FormattableString.Invariant($"/lines/{line.Index}/channel"), FaultCodes.CurrencyMismatch,
                "The channel sells in another currency than the profile; nothing is ever converted.")));

    private IEnumerable<Fault> OfPrice(string channelKey, ListedPrice price)
    {
        if (_scope.Catalogue.Channel(channelKey)?.Sound is not { } channel)
            yield break;
        var currency = Currency.Of(channel.Currency);
        if (price.Currency is { } code && code != currency.Code)
            yield return new Fault("/currency", FaultCodes.CurrencyMismatch, $"The channel sells in {currency.Code}; nothing is ever converted.");
        if (ChannelRules.TooFine(price.Price, "price", currency) is { } detail)
            yield return new Fault("/price", FaultCodes.TooManyDecimals, detail);
    }

    /// <summary>The fault at the last change that touched its place; null if it is about decimals that nobody sent.</summary>
    private Fault? Placed(DocumentName name, Fault fault)
    {
        var steps = _script.Steps.SelectMany(step => step.Targets.Where(target => target.Document == name)
            .Select(target => (step.Index, target.Operation))).Reverse().ToList();
        var place = steps.FirstOrDefault(step => step.Operation.Pointers.Any(at => AreOnOneWay(at, fault.Pointer)), steps[0]);
        return fault.Code == FaultCodes.TooManyDecimals && !place.Operation.IsSent ? null : new Fault(
            FormattableString.Invariant($"/changes/{place.Index}"), fault.Code, $"{name.Kind}:{name.Key}{fault.Pointer}: {fault.Detail}");
    }

    private static bool AreOnOneWay(string one, string other) =>
        one == other || other.StartsWith(one + "/", StringComparison.Ordinal) || one.StartsWith(other + "/", StringComparison.Ordinal);
}
