using System.Globalization;
using PriceFloor.Evidence.Prices;

namespace PriceFloor.Api.StockLists;

/// <summary>How what the ways out bring came about. What a curve gives stands as a number.</summary>
internal static class StockWorkings
{
    public static IEnumerable<Working> Of(StandingStock stock, SlowPieces slow, SlowStock ways, StockQuery asked)
    {
        yield return Given("slowPieces", "pieces that are slow", slow.Pieces);
        foreach (var line in ways.Ways.Where(way => way.Worth is not null).SelectMany(way => Of(way, stock, asked)))
            yield return line;
    }

    private static IEnumerable<Working> Of(WayOut way, StandingStock stock, StockQuery asked)
    {
        if (way is { Way: Way.Hold, Net: { } net, Chance: { } chance })
        {
            yield return Given("netAsked", "what reaches the studio at the price that is asked", net);
            yield return Given("soldInAYear", "chance that a piece is sold at it within a year", chance);
            yield return new("hold", "what waiting brings a piece", "netAsked * soldInAYear", way.Worth!.Value);
        }
        else if (way is { Way: Way.MarkDown, Net: { } marked, Chance: { } share })
        {
            yield return Given("netMarked", "what reaches the studio at the lower price", marked);
            yield return Given("soldInTime", "chance that a piece is sold at it in time", share);
            yield return new("markDown", "what marking down brings a piece", "netMarked * soldInTime", way.Worth!.Value);
            if (way.MayDisplace is not { } displaced)
                yield break;
            yield return Given("fullSaleLeaves", "what a sale at the full price leaves after materials", way.FullSaleLeaves!.Value);
            yield return new("mayDisplace", "full-price sales that it may cost", "slowPieces * netMarked / fullSaleLeaves", displaced);
        }
        else if (way.Way == Way.Rework)
        {
            yield return Given("materials", "materials of a piece", stock.Materials);
            yield return Given("perBenchHour", "what a bench hour must earn", stock.Piece.Year.PerBenchHour);
            yield return new("rework", "what taking a piece apart brings",
                string.Create(CultureInfo.InvariantCulture, $"materials * {asked.MaterialsKept} - {asked.ReworkMinutes} * perBenchHour / 60"),
                way.Worth!.Value);
        }
    }

    private static Working Given(string symbol, string label, decimal value) =>
        new(symbol, label, value.ToString(CultureInfo.InvariantCulture), value);
}
