using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>How many pieces of one design came out good, of the whole piece and of each step.</summary>
public sealed class GoodLots
{
    private readonly Dictionary<string, LotShare> _byStep = new(StringComparer.Ordinal);

    private GoodLots()
    {
    }

    /// <summary>The steps of which anything is known; an empty name is the whole piece.</summary>
    internal IEnumerable<KeyValuePair<string, LotShare>> ByStep => _byStep;

    /// <param name="design">The design.</param>
    /// <param name="entries">Its bench entries that count.</param>
    public static GoodLots Of(Design design, IReadOnlyList<BenchEntry> entries)
    {
        var lots = new GoodLots();
        lots.Add("", entries.Where(entry => entry.Step is null));
        foreach (var step in design.Making.Steps ?? [])
            lots.Add(step.Name ?? "", entries.Where(entry => entry.Step is not null && entry.Step == step.Name));
        return lots;
    }

    /// <summary>Each entry with both counts is a lot.</summary>
    internal static LotShare? ShareOf(IEnumerable<BenchEntry> entries) => LotShare.Of([.. entries
        .Where(entry => entry is { Started: not null, Good: not null }).Select(entry => new Lot(entry.Started!.Value, entry.Good!.Value))]);

    private void Add(string step, IEnumerable<BenchEntry> entries)
    {
        if (ShareOf(entries) is { } share)
            _byStep[step] = share;
    }
}
