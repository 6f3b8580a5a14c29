using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Orders;
using PriceFloor.Evidence.Shelves;

namespace PriceFloor.Evidence;

/// <summary>Finished pieces that lie ready, in the studio and elsewhere.</summary>
public static class ReadyPieces
{
    /// <summary>Pieces that lie ready at the end of a day, for those designs of which the log says what was made or counted.</summary>
    /// <param name="movements">All movements of the designs.</param>
    /// <param name="bench">All bench entries of the designs.</param>
    /// <param name="sources">What is known of their sources.</param>
    /// <param name="designs">The designs.</param>
    /// <param name="to">The day.</param>
    public static IReadOnlyDictionary<string, int> Of(IReadOnlyList<Movement> movements, IReadOnlyList<BenchEntry> bench,
        IReadOnlyList<LogSource> sources, IEnumerable<KnownDesign> designs, DateOnly to)
    {
        var lines = new LogLines(movements, bench, sources, new EvidenceChoices { To = to });
        var noOrders = OrderBook.Of([], _ => null);
        return designs.Select(design => (design.Sku, lines.Of(design, noOrders).Movements))
            .Where(design => design.Movements.Any(line => line.What is MovementKind.Made or MovementKind.Counted))
            .ToDictionary(design => design.Sku, design => ShelfHistory.Of(design.Movements, to).OnHand, StringComparer.Ordinal);
    }
}
