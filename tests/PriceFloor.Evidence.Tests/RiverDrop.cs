using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Statistics;
using PriceFloor.Evidence.Tests.Statistics;

namespace PriceFloor.Evidence.Tests;

/// <summary>
/// The studio of the worked example: 45.00 for each of 2,000 bench hours, one design (torch 30, anneal 8 that must not be hurried, good 0.95, 6.00 of
/// glass at the start), one web shop. Day 0 is 2027-01-01.
/// </summary>
internal static class RiverDrop
{
    public const string Sku = "RB-014", Web = "web";

    public static readonly DateOnly FirstDay = new(2027, 1, 1), LastDay = FirstDay.AddDays(365);

    public static readonly CostProfile Profile = new()
    {
        Currency = "USD",
        YearStart = FirstDay,
        Calendar = new() { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Household = [new() { Name = "Living", Amount = 90_000, Per = Per.Year }],
    };

    public static readonly Design Design = new()
    {
        Name = "River drop pendant",
        Profile = "main",
        Making = new()
        {
            Steps =
            [
                new() { Name = "torch", HandsOnMinutes = 30 },
                new() { Name = "anneal", HandsOnMinutes = 8, MayBeHurried = false, GoodShare = 0.95m },
            ],
        },
        Materials = [new() { Name = "Glass", Amount = 6.00m }],
        SoldShare = 1,
    };

    public static readonly Channel Channel = new()
    {
        Sells = Sells.Retail,
        Currency = "USD",
        Fees = [new() { Name = "card", Rate = 0.029m, Fixed = 0.30m, Of = FeeBase.Paid }],
        Shipping = new() { Charged = 5.00m, Cost = 6.20m },
        CostPerPiece = 0.80m,
    };

    public static IReadOnlyList<BenchEntry> Bench =>
    [
        .. WorkedExample.Minutes.Select((minutes, load) => new BenchEntry
        {
            Source = "bench-book",
            On = FirstDay.AddDays(30 * load),
            Sku = Sku,
            Started = 12,
            Good = WorkedExample.Good[load],
            Minutes = minutes,
            Position = load + 1,
        }),
    ];

    /// <summary>Made with numbers of their own, so that each is as old as it is; sold at 52.00, which was also asked.</summary>
    public static IReadOnlyList<Movement> Movements => [.. Made.Concat(Gone).Select((line, index) => line with { Position = index + 1 })];

    public static StudioEvidence Found(IReadOnlyList<Movement>? movements = null, IReadOnlyList<BenchEntry>? bench = null, Design? design = null,
        decimal level = 0.9m) =>
        StudioEvidence.Of(movements ?? Movements, bench ?? Bench, [], Profile, Studio(design ?? Design), new EvidenceChoices
        {
            To = LastDay,
            Level = level
        });

    public static UnitCost Piece(Design design) => UnitCost.Of(design, StudioYear.Of(Profile, FirstDay).Value).Value;

    private static IEnumerable<Movement> Made => WorkedExample.Fates().Select((fate, piece) => Line(MovementKind.Made, 30 * fate.Load, piece));

    private static IEnumerable<Movement> Gone => WorkedExample.Fates().Select((fate, piece) => (fate, piece))
        .Where(one => one.fate.Time.End != ShelfEnd.OnShelf)
        .Select(one => one.fate.Time.End == ShelfEnd.Sold
            ? Line(MovementKind.Sold, 30 * one.fate.Load + one.fate.Time.Days, one.piece) with { Channel = Web, Paid = 52.00m, Listed = 52.00m }
            : Line(MovementKind.Given, 30 * one.fate.Load + one.fate.Time.Days, one.piece));

    private static Movement Line(MovementKind what, int day, int piece) => new()
    {
        Source = "book",
        On = FirstDay.AddDays(day),
        What = what,
        Sku = Sku,
        Pieces = 1,
        Piece = FormattableString.Invariant($"{piece + 1}/126"),
        Position = 0,
    };

    private static KnownStudio Studio(Design design) =>
        new([new KnownDesign(Sku, Piece(design))], key => key == Web ? Channel : null, (_, _, _) => null);
}
