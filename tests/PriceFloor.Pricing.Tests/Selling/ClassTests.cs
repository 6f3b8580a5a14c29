using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

/// <summary>The worked examples of classes and bench hire: a seat is a design, an evening at the bench too.</summary>
public sealed class ClassTests
{
    /// <summary>60 + 180 + 45 = 285 min, 4.75 h at 55.988764 = 265.9466 over the heads, and 14.00 a head.</summary>
    [Theory]
    [InlineData(2, "1", "146.98")]
    [InlineData(3, "1", "102.65")]
    [InlineData(4, "1", "80.49")]
    [InlineData(5, "1", "67.19")]
    [InlineData(6, "1", "58.33")]
    [InlineData(8, "1", "47.25")]
    [InlineData(6, "0.8", "72.91")]
    public void A_seat_must_bring_in_its_part_of_the_evening(int heads, string taken, string floor) =>
        Assert.Equal(Of(floor), Rounding.Up(Seat(heads, Of(taken)).Floor, 2));

    [Theory]
    [InlineData(2, 155)]
    [InlineData(3, 109)]
    [InlineData(4, 86)]
    [InlineData(5, 73)]
    [InlineData(6, 63)]
    [InlineData(8, 52)]
    public void On_the_web_a_seat_sells_for(int heads, int price) =>
        Assert.Equal(price, WorkedStudio.Terms("web").FloorPrice(Seat(heads, 1).Floor).Value.Price);

    /// <summary>The least heads at a fee: n * (net - 14.00) must reach 265.9466. At 73.00 four bring too little, and five enough.</summary>
    [Fact]
    public void The_least_heads_at_a_fee_are_those_whose_seat_it_carries()
    {
        var net = Sale.Of(73, WorkedStudio.Web).Net;
        var least = (int)Rounding.Up(265.9466287979m / (net - 14), 0);
        Assert.Equal(5, least);
        Assert.True(net.Reaches(Seat(least, 1).Floor) && !net.Reaches(Seat(least - 1, 1).Floor));
    }

    [Fact]
    public void An_evening_at_the_bench_pays_for_supervision_and_gas()
    {
        // 20 min at 55.988764 an hour = 18.6629, and 2.5 h of gas at 3.60 = 9.00.
        var evening = new Design
        {
            Name = "Bench for an evening",
            Profile = "main",
            Making = new Making { MinutesPerPiece = 20 },
            Materials = [new MaterialLine { Material = "torch-gas", Quantity = 2.5m }],
            SoldShare = 1,
        };
        Assert.Equal(27.67m, Rounding.Up(UnitCost.Of(evening, WorkedStudio.Year).Value.Floor, 2));
    }

    [Theory]
    [InlineData("Evening class, a seat", true)]
    [InlineData("Beginners' CLASSES", true)]
    [InlineData("Workshop: a bead in an afternoon", true)]
    [InlineData("First-class pendant", false)]
    [InlineData("Glass bowl", false)]
    [InlineData(null, false)]
    public void A_class_beside_income_from_classes_is_warned_of(string? name, bool isWarned)
    {
        // The profile has other income of "Beginners' classes" as its first line.
        var warnings = Warnings.In(UnitCost.Of(Seat(6, 1).Design with { Name = name }, WorkedStudio.Year).Value);
        Assert.Equal(isWarned ? ["/profile/otherIncome/0"] : [],
            warnings.Where(one => one.Code == WarningCodes.ClassCountedTwice).Select(one => one.Pointer));
    }

    [Fact]
    public void Without_that_income_nothing_is_counted_twice()
    {
        var year = StudioYear.Of(WorkedStudio.Year.Profile with { OtherIncome = [] }, new DateOnly(2026, 1, 1)).Value;
        Assert.DoesNotContain(Warnings.In(UnitCost.Of(Seat(6, 1).Design, year).Value), one => one.Code == WarningCodes.ClassCountedTwice);
    }

    private static UnitCost Seat(int heads, decimal taken) => UnitCost.Of(new Design
    {
        Name = "Evening class, a seat",
        Profile = "main",
        Making = new Making
        {
            Steps =
            [
                new Step { Name = "prepare", HandsOnMinutes = 60, BatchSize = heads },
                new Step { Name = "lead", HandsOnMinutes = 180, BatchSize = heads, MayBeHurried = false },
                new Step { Name = "clear up", HandsOnMinutes = 45, BatchSize = heads },
            ],
        },
        Materials = [new MaterialLine { Name = "glass and gas", Amount = 14 }],
        SoldShare = taken,
    }, WorkedStudio.Year).Value;

    private static decimal Of(string number) => decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture);
}
