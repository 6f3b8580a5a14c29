using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.WholeShelf;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>
/// All designs of a profile beside each other, from their stored lines. Of each design is kept what was found, without its lines, so a sale costs one
/// design's lines again and not all.
/// </summary>
public sealed class LoggedShelves : IDisposable
{
    private const int MostQuestions = 2;

    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly KeptDesigns<GoodLots> _lots = new(MostQuestions);
    private readonly KeptDesigns<ShelvedDesign> _designs = new(MostQuestions);
    private KeptShelf? _kept;

    /// <summary>What the designs of a profile say of good shares.</summary>
    internal async ValueTask<GoodPriors> Good(LoggedQuestion question, Stored<CostProfile> profile)
    {
        var (lots, days) = (new List<GoodLots>(), (question.Log.Choices.From, question.Log.Choices.To));
        foreach (var floor in question.FloorsOf(profile))
        {
            var stamp = question.StampOf(floor.Design.Key);
            if (_lots.Find(days, stamp, question.Catalogue, floor, "") is not { } found)
            {
                found = await question.LotsOf(floor.Design);
                if (stamp is { } same)
                    _lots.Keep(days, new RestsOn(same, floor, [], ""), found);
            }

            lots.Add(found);
        }

        return GoodPriors.Of(lots);
    }

    /// <summary>The shelf of a profile. One at a time: who comes second finds what the first has found.</summary>
    internal async ValueTask<StudioShelf> OfAsync(LoggedQuestion question, Stored<CostProfile> profile, GoodPriors good)
    {
        await _turn.WaitAsync();
        try
        {
            var (designs, terms) = (await DesignsOf(question, profile, good), new ShelfTerms(question.Catalogue, profile));
            if (_kept is { } kept && kept.IsOf(designs, terms, question.Log.Choices))
                return kept.Shelf;
            var shelf = StudioShelf.Of(designs, terms.FloorPrice, terms.Hours, question.Log.Choices);
            if (question.SeesAll)
                _kept = new KeptShelf(designs, terms, question.Log.Choices, shelf);
            return shelf;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Keeps what was just found of a design, and lets its lines go.</summary>
    internal async ValueTask Keep(LoggedQuestion question, Stored<CostProfile> profile, GoodPriors good,
        (DesignFloor Floor, DesignEvidence Evidence, IReadOnlyList<NamedChannel> Channels, StoredHistory History) found)
    {
        if (question.StampOf(found.Floor.Design.Key) is not { } stamp)
            return;
        var offering = await OfferingChannels.Of(question, profile);
        _designs.Keep(KeyOf(question, good, offering), new RestsOn(stamp, found.Floor, offering.Named(found.Channels), question.Log.SaidOfSources),
            Shelved(question, found.Evidence, found.History, offering));
    }

    public void Dispose() => _turn.Dispose();

    private static object KeyOf(LoggedQuestion question, GoodPriors good, OfferingChannels offering) =>
        (question.Log.Choices, good.ToString(), offering.SaidOfEvents);

    private static ShelvedDesign Shelved(LoggedQuestion question, DesignEvidence evidence, StoredHistory history, OfferingChannels offering) =>
        ShelvedDesign.Of(evidence, OfferedDesign.Of(evidence, offering.Channels,
            channel => LoggedQuestion.Steps(history, evidence.Known.Sku, channel, question.Log.Choices.To), offering.Events));

    private async ValueTask<List<ShelvedDesign>> DesignsOf(LoggedQuestion question, Stored<CostProfile> profile, GoodPriors good)
    {
        var offering = await OfferingChannels.Of(question, profile);
        var (key, sources) = (KeyOf(question, good, offering), question.Log.SaidOfSources);
        var (designs, missing) = (new Dictionary<string, ShelvedDesign>(), new Dictionary<string, Stored<Design>>());
        foreach (var design in question.DesignsOf(profile))
            if (question.Catalogue.Floor(profile, design).Found is { } floor
                && _designs.Find(key, question.StampOf(design.Key), question.Catalogue, floor, sources) is { } found)
                designs.Add(design.Key, found);
            else
                missing.Add(design.Key, design);
        if (missing.Count > StoredLog.Few)
            await question.LookForListed();
        await question.Log.ForEach(missing.Keys, async sku => designs.Add(sku, await Found(missing[sku])));
        return [.. designs.Keys.Order(StringComparer.Ordinal).Select(sku => designs[sku])];

        async ValueTask<ShelvedDesign> Found(Stored<Design> design)
        {
            if (question.Catalogue.Floor(profile, design).Found is not { } floor)
                return await Offered(question, design, offering); // its findings have no floor, but it was for sale
            var stamp = question.StampOf(design.Key);
            var (found, channels) = await LoggedShelves.Found(question, floor, good, offering);
            if (stamp is { } same)
                _designs.Keep(key, new RestsOn(same, floor, offering.Named(channels), sources), found);
            return found;
        }
    }

    private static async ValueTask<(ShelvedDesign Design, IReadOnlyList<NamedChannel> Channels)> Found(LoggedQuestion question, DesignFloor floor,
        GoodPriors good, OfferingChannels offering)
    {
        var (studio, channels, history) = await question.EvidenceOf(floor, good);
        return (studio.Designs.SingleOrDefault() is { } evidence ? Shelved(question, evidence, history, offering)
            : await Offered(question, floor.Design, offering), channels);
    }

    /// <summary>A design that has no findings was perhaps listed, and nobody bought it: that says something of the others too.</summary>
    private static async ValueTask<ShelvedDesign> Offered(LoggedQuestion question, Stored<Design> design, OfferingChannels offering)
    {
        var (shelf, movements) = await question.ShelfOf(design);
        var history = await question.HistoryOf(design.Key, [.. question.Catalogue.ListedPrices(design.Key).Keys]);
        return new ShelvedDesign(null, OfferedDesign.Of(design.Key, shelf, movements, null, offering.Channels,
            channel => LoggedQuestion.Steps(history, design.Key, channel, shelf.To), offering.Events));
    }

    /// <summary>A shelf, for as long as its designs are the same.</summary>
    private sealed record KeptShelf(List<ShelvedDesign> Designs, ShelfTerms Terms, EvidenceChoices Choices, StudioShelf Shelf)
    {
        public bool IsOf(List<ShelvedDesign> designs, ShelfTerms terms, EvidenceChoices choices) =>
            choices == Choices && terms.Hours == Terms.Hours && designs.SequenceEqual(Designs);
    }
}
