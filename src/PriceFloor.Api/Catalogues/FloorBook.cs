using System.Collections.Concurrent;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Catalogues;

/// <summary>
/// Results computed from the documents of one catalogue: years, selling terms and floors, each once. An entry names the documents that it rests on
/// and is valid only for the very same objects, so nothing in it is ever out of date.
/// </summary>
public sealed class FloorBook
{
    /// <summary>Keeps this many floors of one design: for its own profile and a few that it was tried in.</summary>
    private const int MostProfiles = 4;

    private readonly ConcurrentDictionary<string, Entry<CostProfile, StudioYear>> _years;
    private readonly ConcurrentDictionary<string, Entry<Channel, SellingTerms>> _terms;
    private readonly ConcurrentDictionary<string, DesignFloor[]> _floors;
    private readonly FloorBook? _beside;

    public FloorBook() : this([], [], [], null) { }

    private FloorBook(ConcurrentDictionary<string, Entry<CostProfile, StudioYear>> years,
        ConcurrentDictionary<string, Entry<Channel, SellingTerms>> terms, ConcurrentDictionary<string, DesignFloor[]> floors,
        FloorBook? beside) => (_years, _terms, _floors, _beside) = (years, terms, floors, beside);

    /// <summary>The book of the catalogue that follows this one. What rests on unchanged documents is handed on.</summary>
    public FloorBook Next(IEnumerable<Revision> written)
    {
        foreach (var gone in written.Where(revision => revision.IsDeletion))
            Remove(gone.Kind, gone.Key);
        return new FloorBook(_years, _terms, _floors, _beside);
    }

    /// <summary>
    /// A book for other documents, or for those of one request: it finds what is in this one, and keeps its own additions to itself.
    /// </summary>
    public FloorBook Apart() => new(new(1, 3), new(1, 3), new(1, 3), this);

    public Outcome<StudioYear> Year(Stored<CostProfile> profile, DateOnly yearStart)
    {
        if (Find(static book => book._years, profile.Key, profile) is { } known)
            return known;
        var found = StudioYear.Of(profile.Document, yearStart);
        _years[profile.Key] = new(profile, found);
        return found;
    }

    public Outcome<SellingTerms> Terms(Stored<Channel> channel)
    {
        if (channel.Revision is null)
            return SellingTerms.Of(channel.Document);
        if (Find(static book => book._terms, channel.Key, channel) is { } known)
            return known;
        var found = SellingTerms.Of(channel.Document);
        _terms[channel.Key] = new(channel, found);
        return found;
    }

    public Outcome<DesignFloor> Floor(Catalogue catalogue, Stored<CostProfile> profile, Stored<Design> design)
    {
        var listed = design.Revision is null ? IDocuments.NothingListed : catalogue.ListedPrices(design.Key);
        var channels = listed.Count == 0 ? null : catalogue.Channels; // only listed prices can set the target
        for (var book = this; book is not null; book = book._beside)
            if (book._floors.TryGetValue(design.Key, out var known))
                foreach (var one in known)
                    if (one.RestsOn(profile, design, listed, channels))
                        return one;
        var found = DesignFloor.Of(this, catalogue, profile, design, listed, channels);
        if (found.Found is { } floor)
            Keep(floor);
        return found;
    }

    /// <summary>Keeps a floor beside the design's floors in other profiles, in place of an earlier one in its own.</summary>
    private void Keep(DesignFloor floor) => _floors.AddOrUpdate(floor.Design.Key, [floor], (_, known) =>
        [.. known.Where(other => other.Profile.Key != floor.Profile.Key).TakeLast(MostProfiles - 1), floor]);

    private Outcome<TFound>? Find<T, TFound>(Func<FloorBook, ConcurrentDictionary<string, Entry<T, TFound>>> of, string key, Stored<T> document)
        where T : class where TFound : class
    {
        for (var book = this; book is not null; book = book._beside)
            if (of(book).TryGetValue(key, out var known) && ReferenceEquals(known.Document, document))
                return known.Found;
        return null;
    }

    private void Remove(string kind, string key)
    {
        switch (kind)
        {
            case Kinds.Profile:
                _years.TryRemove(key, out _);
                break;
            case Kinds.Channel:
                _terms.TryRemove(key, out _);
                break;
            case Kinds.Design:
                _floors.TryRemove(key, out _);
                break;
        }
    }

    private sealed record Entry<T, TFound>(Stored<T> Document, Outcome<TFound> Found) where T : class where TFound : class;
}
