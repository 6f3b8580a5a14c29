using Xunit;

namespace PriceFloor.Pricing.Tests.Costing;

/// <summary>How many pieces the year allows: the least over its hours and its loads. 2,000 h, 60,000 to bring in, 30.00 an hour.</summary>
public sealed class YearlyPiecesTests
{
    private static readonly CostProfile s_year = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 60000, Per = Per.Year }],
    };

    /// <summary>Loads of 12 pieces, the pieces that they and the hours allow, and what each would have to bring in.</summary>
    public static TheoryData<int, int, decimal?> Kilns => new()
    {
        { 100, 1000, null }, // 1,200 pieces; 2 h each leave time for 1,000
        { 84, 1000, null }, // 1,008
        { 50, 600, 100m }, // 600 pieces have to carry 60,000
        { 7, 84, 714.29m }, // 60,000 / 84 = 714.2857
        { 0, 0, null }, // no piece at all: no floor helps
    };

    [Theory]
    [MemberData(nameof(Kilns))]
    public void The_kiln_may_be_full_before_the_hours_are(int loads, int pieces, decimal? floorWithin)
    {
        var piece = Of(s_year with { Limits = [new ResourceLimit { Name = "kiln", LoadsPerYear = loads }] });
        Assert.Equal((pieces, 1000m), (Rounding.Down(piece.PiecesPerYear, 0), piece.YearlyPieces.InTheHours));
        Assert.Equal(floorWithin,
            piece.YearlyPieces.FloorWithinLimit is { } within ? Rounding.Up(within, 2) : null);
        Assert.Equal(pieces < 1000 ? "kiln" : null, piece.YearlyPieces.LimitBeforeHours?.Name);
        Assert.Equal(pieces < 1000 ? ["limit-before-hours /profile/limits/0"] : [],
            Warnings.In(piece).Select(warning => $"{warning.Code} {warning.Pointer}")
                .Where(text => text.StartsWith("limit", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_tightest_of_several_limits_counts_and_none_that_the_piece_does_not_take()
    {
        var limits = new[]
        {
            new ResourceLimit { Name = "lathe", LoadsPerYear = 1 }, // not taken
            new ResourceLimit { Name = "kiln", LoadsPerYear = 50 }, // 600 pieces
            new ResourceLimit { Name = "saw", LoadsPerYear = 400 }, // 400 pieces
        };
        var piece = Of(s_year with { Limits = limits });
        Assert.Equal((400m, "saw", 150m), (piece.PiecesPerYear, piece.YearlyPieces.LimitBeforeHours!.Name, piece.YearlyPieces.FloorWithinLimit));
        Assert.Contains(Warnings.In(piece), warning => warning.Pointer == "/profile/limits/2");
    }

    [Fact]
    public void Materials_and_seconds_count_in_the_floor_within_a_limit()
    {
        // 600 pieces: 100.00 each, and 8.00 of materials.
        var year = StudioYear.Of(s_year with { Limits = [new ResourceLimit { Name = "kiln", LoadsPerYear = 50 }] }, default).Value;
        var within = UnitCost.Of(Design with { Materials = [new MaterialLine { Amount = 8 }] }, year).Value.YearlyPieces.FloorWithinLimit;
        Assert.Equal(108m, Rounding.Up(within!.Value, 2));
    }

    [Fact]
    public void Fewer_hours_in_normal_use_make_fewer_pieces() =>
        Assert.Equal(750m, Of(s_year with { Calendar = s_year.Calendar with { NormalUse = 0.75m } }).PiecesPerYear);

    private static Design Design { get; } = new()
    {
        Profile = "main",
        Making = new Making
        {
            Steps = [new Step { HandsOnMinutes = 120, Uses = "saw" }, new Step { HandsOnMinutes = 0, BatchSize = 12, Uses = "kiln" }],
        },
    };

    private static UnitCost Of(CostProfile profile) => UnitCost.Of(Design, StudioYear.Of(profile, default).Value).Value;
}
