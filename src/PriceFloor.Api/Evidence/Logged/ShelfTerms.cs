using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>What a shelf is measured with: floor prices, and the hours of its profile's year.</summary>
internal sealed class ShelfTerms
{
    private readonly Dictionary<Channel, SellingTerms?> _terms = new(ReferenceEqualityComparer.Instance);

    public ShelfTerms(Catalogue catalogue, Stored<CostProfile> profile)
    {
        var plans = catalogue.Plans.Where(plan => plan.Sound?.Profile == profile.Key).Take(2).ToList();
        var keptBack = plans.Count == 1 ? plans[0].Document.HoursKeptBack : 0;
        Hours = catalogue.Year(profile).Found is { } year ? year.BenchHours - keptBack : 0;
    }

    /// <summary>Bench hours of the year, less those that the profile's plan keeps back, where there is one plan.</summary>
    public decimal Hours { get; }

    /// <summary>The floor price of a piece on a channel; null where there is none.</summary>
    public decimal? FloorPrice(UnitCost piece, Channel channel)
    {
        if (!_terms.TryGetValue(channel, out var terms))
            _terms[channel] = terms = SellingTerms.Of(channel).Found;
        return terms?.FloorPrice(new ChannelFloor(piece, channel).Floor).Found?.Price;
    }
}
