using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Shelves;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Tests.Demand;

/// <summary>
/// The shelf of the worked example: the river drop pendant as found, 33 weeks at 46.00 and 20 at 52.00, and eight designs beside it. They are listed,
/// and nobody wrote down what was made.
/// </summary>
internal static class NineDesigns
{
    public const string Sku = RiverDrop.Sku, Web = RiverDrop.Web;

    public static readonly DateOnly FirstDay = new(2027, 1, 1), LastDay = FirstDay.AddDays(53 * 7 - 1);

    private static readonly int[] s_orders = [93, 41, 18, 6, 55, 12, 29, 3, 70], s_weeks = [53, 50, 52, 40, 48, 30, 52, 20, 52];

    /// <summary>The draft of the findings: floor 56.31, M = 8.0145, t = 1.07306 hours.</summary>
    public static Design AsFound { get; } = RiverDrop.Found().Designs[0].Draft;

    public static UnitCost Piece { get; } = RiverDrop.Piece(AsFound);

    public static SellingTerms Terms { get; } = SellingTerms.Of(RiverDrop.Channel).Value;

    public static ChannelPrices Prices { get; } = ChannelPrices.Of(FloorPrice.Of(Piece, null).Value, Terms).Value;

    /// <summary>Four changes of price that the shelf has seen: 46 to 52, 30 to 34, 80 to 90, 24 to 22.</summary>
    public static Sensitivity FourChanges { get; } = Sensitivity.Of(
        [
            [Run(46, 33, 62), Run(52, 20, 31)],
            [Run(30, 26, 22), Run(34, 26, 15)],
            [Run(80, 40, 12), Run(90, 30, 9)],
            [Run(24, 20, 14), Run(22, 12, 12)],
        ],
        0.9m);

    public static StudioDemand Demand { get; } = Of(Movements, Steps);

    public static DesignDemand RiverDropPendant => Demand.On(Sku, Web)!;

    /// <summary>No order is older than a year, so nothing is known of seasons.</summary>
    public static IReadOnlyList<Movement> Movements =>
    [
        .. s_orders.SelectMany((orders, design) => Enumerable.Range(0, orders).Select(order => Sold(design,
            // 62 of the first design's 93 before day 231, 31 after; none in the first ten days.
            design > 0 ? 371 - s_weeks[design] * 7 + 10 + order % (s_weeks[design] * 7 - 10) : order < 62 ? 10 + order * 3 : 231 + (order - 62) * 4)))
            .Select((line, position) => line with { Position = position + 1 }),
    ];

    public static PricedSales Run(decimal price, int weeks, int orders) => new(price, new Sales(orders, weeks));

    public static IReadOnlyList<PriceStep> Steps(string sku) => sku == Sku
        ? [new(FirstDay, 46), new(FirstDay.AddDays(33 * 7), 52)]
        : [new(LastDay.AddDays(1 - 7 * s_weeks[int.Parse(sku, System.Globalization.CultureInfo.InvariantCulture)]), 30)];

    public static StudioEvidence Evidence(IReadOnlyList<Movement> movements, DateOnly? to = null, Channel? channel = null) => StudioEvidence.Of(
        movements, [], [], null,
        new KnownStudio([.. movements.Select(line => line.Sku).Distinct().Select(sku => new KnownDesign(sku, Piece))],
            key => key == Web ? channel ?? RiverDrop.Channel : null, (_, _, _) => null),
        new EvidenceChoices { To = to ?? LastDay });

    public static StudioDemand Of(IReadOnlyList<Movement> movements, Func<string, IReadOnlyList<PriceStep>> steps, DateOnly? to = null,
        Channel? channel = null)
    {
        var events = StallEvents.Of(movements.Where(line => line.What == MovementKind.Sold));
        return StudioDemand.Of(Evidence(movements, to, channel).Designs.SelectMany(design => OfferedDesign.Of(design,
            [new(Web, channel ?? RiverDrop.Channel)], _ => steps(design.Known.Sku), _ => events)), to ?? LastDay, 0.9m);
    }

    public static Movement Sold(int design, int day) => new()
    {
        Source = "book",
        On = FirstDay.AddDays(day),
        What = MovementKind.Sold,
        Sku = design == 0 ? Sku : FormattableString.Invariant($"{design}"),
        Channel = Web,
        Pieces = 1,
        Paid = 30,
        Position = 0,
    };

    public static Movement Made(int day, int pieces) => new()
    {
        Source = "book",
        On = FirstDay.AddDays(day),
        What = MovementKind.Made,
        Sku = Sku,
        Pieces = pieces,
        Position = 0,
    };
}
