using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Api.LogLines;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Api.Evidence;

/// <summary>The lines of a request with the stored documents that they name.</summary>
public sealed class EvidenceLines
{
    private readonly SettledLines<Movement> _movements;
    private readonly SettledLines<BenchEntry> _bench;
    private readonly Dictionary<string, DesignFloor> _designs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Stored<Channel>> _channels = new(StringComparer.Ordinal);
    private readonly DateOnly _today;
    private readonly Stored<CostProfile>? _profile;

    private EvidenceLines(Catalogue catalogue, (SettledLines<Movement>, SettledLines<BenchEntry>) lines, Stored<CostProfile>? against)
    {
        ((_movements, _bench), _today) = (lines, catalogue.Today);
        foreach (var key in _movements.Used.Select(line => line.Entry.Channel).OfType<string>().Distinct())
            _channels[key] = catalogue.Channel(key)!;
        Faults = [.. Skus.SelectMany(sku => Know(catalogue, sku, against))];
        _profile = against ?? (_designs.Values.Select(floor => floor.Profile.Key).Distinct().Count() == 1 ? _designs.Values.First().Profile : null);
    }

    /// <summary>Designs with a bench entry, whose way of making matters.</summary>
    public IEnumerable<string> DesignsOfBench => _bench.Used.Select(line => line.Entry.Sku).OfType<string>().Distinct();

    /// <summary>Designs and channels sold without the price that was asked.</summary>
    public IEnumerable<(string Sku, string Channel)> PricesToLookUp => _movements.Used.Select(line => line.Entry)
        .Where(line => line is { What: MovementKind.Sold, Listed: null, Channel: not null }).Select(line => (line.Sku, line.Channel!)).Distinct();

    private List<Fault> Faults { get; }

    private IEnumerable<string> Skus => _movements.Used.Select(line => line.Entry.Sku).Concat(DesignsOfBench).Distinct();

    /// <summary>The lines of a request, or why there can be no answer: a profile that is not there, a design that has no floor.</summary>
    public static Outcome<EvidenceLines> Of(Catalogue catalogue, EvidenceSheets sheets, EvidenceQuery query)
    {
        var against = query.Against is { } key ? catalogue.Profile(key) : null;
        if (query.Against is not null && against is null)
            return RequestFault.Unknown(new InputError
            {
                Parameter = "against",
                Code = InputCodes.UnknownProfile,
                Detail = $"There is no profile \"{query.Against}\"; case counts.",
            });
        var lines = new EvidenceLines(catalogue, sheets.Settled(query, new KnownNames(DesignNamed, ChannelNamed)), against);
        return lines.Faults.Count > 0 ? lines.Faults : lines;

        string? DesignNamed(string name) =>
            catalogue.DesignNamed(name) is { Sound: { } design } stored && (against is null || design.Profile == against.Key) ? stored.Key : null;

        KnownChannel? ChannelNamed(string name) =>
            catalogue.Channel(name) is { Sound: { } channel } stored ? new KnownChannel(stored.Key, Currency.Of(channel.Currency)) : null;
    }

    public EvidenceAnswer Answer(EvidenceQuery query, StoredHistory history)
    {
        var choices = query.Asked.Choices(_today);
        var known = new KnownStudio(
            [.. _designs.Select(design => new KnownDesign(design.Key, design.Value.Floor.UnitCost, history.MadeSoSince(design.Key)))],
            key => _channels.GetValueOrDefault(key)?.Document, history.Listed);
        var studio = StudioEvidence.Of([.. _movements.Used.Select(line => line.Entry)], [.. _bench.Used.Select(line => line.Entry)],
            [query.BenchSource],
            _profile?.Document, known, choices);
        return new EvidenceAnswer
        {
            Designs = [.. studio.Designs.Select(design => DesignEvidenceAnswer.Of(design, studio, query.Workings))],
            Channels = [.. studio.Channels.Select(ChannelEvidenceAnswer.Of)],
            Profile = studio.Profile is { } profile ? ProfileEvidenceAnswer.Of(_profile!.Key, profile) : null,
            Carriers = studio.Carriers,
            Unplaced = [.. Unplaced()],
            Refused = [.. Refused(EvidenceQuery.MovementsPart, _movements.Refused), .. Refused(EvidenceQuery.BenchPart, _bench.Refused)],
            Accounted = EvidenceAccountedAnswer.Of(_movements, _bench),
            Basis = Basis(),
            Warnings = WarningAnswer.Of(EvidenceWarnings.In(studio)),
        };
    }

    private IEnumerable<Fault> Know(Catalogue catalogue, string sku, Stored<CostProfile>? against)
    {
        var design = catalogue.Design(sku)!;
        var profile = against ?? catalogue.Profile(design.Document.Profile)!;
        var floor = catalogue.Floor(profile, design);
        if (floor.Found is null)
            return FloorAnswers.FaultsOf(floor.Faults, profile, design, Place.Query);
        _designs[sku] = floor.Value;
        return [];
    }

    private IEnumerable<UnplacedNameAnswer> Unplaced() => _movements.Unplaced.Concat(_bench.Unplaced).GroupBy(one => one.Name)
        .Select(same => new UnplacedNameAnswer(same.Key, same.Sum(one => one.Count.Lines), LineCountAnswer.Exactly(same.Sum(one => one.Count.Money))))
        .OrderByDescending(one => decimal.Abs(one.Money)).ThenByDescending(one => one.Lines).ThenBy(one => one.Name, StringComparer.Ordinal);

    private static IEnumerable<RefusedLineAnswer> Refused(string sheet, IEnumerable<RefusedLogLine> lines) =>
        lines.Select(line => new RefusedLineAnswer(sheet, line.Line, line.Code));

    private Dictionary<string, string> Basis()
    {
        var basis = new Dictionary<string, string>();
        if (_profile is { } profile)
            basis["profile"] = profile.Basis;
        if (_designs.Count > 0)
            basis["designs"] = string.Join(' ', _designs.OrderBy(design => design.Key, StringComparer.Ordinal)
                .Select(design => design.Value.Design.Basis));
        if (_channels.Count > 0)
            basis["channels"] = string.Join(' ', _channels.OrderBy(channel => channel.Key, StringComparer.Ordinal)
                .Select(channel => channel.Value.Basis));
        return basis;
    }
}
