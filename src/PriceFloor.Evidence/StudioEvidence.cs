using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Orders;
using PriceFloor.Evidence.Shelves;

namespace PriceFloor.Evidence;

/// <summary>All findings of a log.</summary>
public sealed class StudioEvidence
{
    private StudioEvidence(EvidenceChoices choices) => Choices = choices;

    public EvidenceChoices Choices { get; }

    /// <summary>Designs with a line, by sku.</summary>
    public required IReadOnlyList<DesignEvidence> Designs { get; init; }

    /// <summary>Channels with an order, by key.</summary>
    public required IReadOnlyList<ChannelEvidence> Channels { get; init; }

    /// <summary>Null where no profile is asked about.</summary>
    public required ProfileEvidence? Profile { get; init; }

    /// <summary>Bench entries that were not counted as made, because movements say what was made that day.</summary>
    public required IReadOnlyList<BenchEntry> MadeTwice { get; init; }

    public DateOnly? Newest { get; init; }

    /// <summary>The largest of the designs that together bring 70 % of the contribution.</summary>
    public IReadOnlyList<DesignEvidence> Carriers
    {
        get
        {
            var all = Designs.Where(design => Contribution(design) > 0).OrderByDescending(Contribution).ThenBy(design => design.Known.Sku,
                StringComparer.Ordinal)
                .ToList();
            var (least, sum, count) = (0.7m * all.Sum(Contribution), 0m, 0);
            while (count < all.Count && sum < least)
                sum += Contribution(all[count++]);
            return all[..count];
        }
    }

    /// <summary>Contribution of a design as found; 0 where it sold nothing.</summary>
    public static decimal Contribution(DesignEvidence design) => design is { Take: { } take, AsFound.Found: { } piece } ? take.Contribution(piece)
        : 0;

    /// <summary>Its share of all designs' contribution; null where they bring nothing.</summary>
    public decimal? ShareOfContribution(DesignEvidence design) => Designs.Sum(Contribution) is > 0 and var all ? Contribution(design) / all : null;

    /// <summary>Its share of the bench hours of what was sold; null where nothing was.</summary>
    public decimal? ShareOfHours(DesignEvidence design) => Designs.Sum(Hours) is > 0 and var all ? Hours(design) / all : null;

    /// <summary>The findings of lines.</summary>
    /// <param name="movements">The movements.</param>
    /// <param name="bench">The bench entries.</param>
    /// <param name="sources">What is known of their sources.</param>
    /// <param name="profile">The profile that is asked about; null: none.</param>
    /// <param name="known">The documents.</param>
    /// <param name="choices">What is asked.</param>
    public static StudioEvidence Of(IReadOnlyList<Movement> movements, IReadOnlyList<BenchEntry> bench, IReadOnlyList<LogSource> sources,
        CostProfile? profile, KnownStudio known, EvidenceChoices choices)
    {
        var lines = new LogLines(movements, bench, sources, choices);
        var orders = OrderBook.Of(lines.Movements, known.Channel);
        var designs = known.Designs.OrderBy(design => design.Sku, StringComparer.Ordinal)
            .Select(design => DesignEvidence.Of(design, lines.Of(design, orders, known.Channel), choices))
            .Where(design => design.Log.Movements.Count + design.Log.Bench.Count > 0).ToList();
        var channels = orders.Orders.GroupBy(order => order.Channel).OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => ChannelOf(group.Key, [.. group], known, choices) with { LeftOut = LeftOut(lines, group.Key, known) }).ToList();
        return new StudioEvidence(choices)
        {
            Designs = designs,
            Channels = channels,
            Profile = profile is null ? null
                : ProfileEvidence.Of(profile, ShelfTimes.Of(designs.Select(design => design.Shelf)), lines.WholeDays, choices),
            MadeTwice = lines.MadeTwice,
            Newest = lines.Newest,
        };
    }

    /// <summary>What became of the pieces of one design, without anything else that its lines say.</summary>
    /// <param name="sku">Its key.</param>
    /// <param name="design">The design.</param>
    /// <param name="movements">Its movements.</param>
    /// <param name="bench">Its bench entries.</param>
    /// <param name="sources">What is known of their sources.</param>
    /// <param name="choices">What is asked.</param>
    public static ShelfHistory ShelfOf(string sku, Design design, IReadOnlyList<Movement> movements, IReadOnlyList<BenchEntry> bench,
        IReadOnlyList<LogSource> sources, EvidenceChoices choices) =>
        ShelfHistory.Of(new LogLines(movements, bench, sources, choices).MovementsOf(sku, design).Lines, choices.To);

    private static decimal Hours(DesignEvidence design) => design is { Take: { } take, AsFound.Found: { } piece } ? take.Hours(piece) : 0;

    private static ChannelEvidence ChannelOf(string key, IReadOnlyList<SoldOrder> orders, KnownStudio known, EvidenceChoices choices)
    {
        var stored = known.Channel(key)!;
        var found = ChannelFindings.Of(stored, orders, line => line.Listed ?? known.Listed(line.Sku, key, line.On), choices);
        return new ChannelEvidence(key, stored, [.. found.Select(one => one.Finding)], Found<Channel>.Draft(stored, found));
    }

    private static int LeftOut(LogLines lines, string key, KnownStudio known) => lines.Movements.Count(line =>
        line.What == MovementKind.Sold && line.Channel == key && line.Currency is { } money && money != known.Channel(key)!.Currency);
}
