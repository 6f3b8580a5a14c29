using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

public sealed class WorkingsTests
{
    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void Every_line_can_be_redone_from_the_lines_above_it(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        CanBeRedone(studio.Profile(), studio.Design(), studio.Channel(), 41.37m);
    }

    [Fact]
    public void The_documented_studio_can_be_redone_line_by_line() =>
        CanBeRedone(ExampleStudio.Profile, ExampleStudio.Pendant, ExampleStudio.WebShop, 58);

    [Fact]
    public void The_workings_read_like_a_sum()
    {
        var year = StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = 540, Per = Per.Month }, new Expense { Amount = 150, Per = Per.Time, Times = 8 }],
        }, default).Value;
        var line = Workings.Of(year).First();
        Assert.Equal(("allocatedExpenses", "540 * 12 + 150 * 8", 7680m), (line.Symbol, line.Formula, line.Value));
    }

    private static void CanBeRedone(CostProfile profile, Design design, Channel channel, decimal price)
    {
        var year = StudioYear.Of(profile, default).Value;
        var piece = Piece.Of(design, year).Value;
        var floor = FloorPrice.Of(piece, null).Value;
        var check = ChannelPrices.Of(floor, SellingTerms.Of(channel).Value).Value.Check(price).Value;

        var known = new Dictionary<string, decimal>();
        foreach (var line in Workings.Of(year).Concat(Workings.Of(piece)).Concat(Workings.Of(floor)).Concat(Workings.Of(check.Sale, channel)).Concat(Workings.Of(check)))
        {
            var redone = Formula.Value(line.Formula, known);
            Assert.True(decimal.Abs(redone - line.Value) <= 0.000000000001m, $"{line.Symbol} = {line.Formula}: {redone}, but it says {line.Value}");
            known.Add(line.Symbol, line.Value); // a symbol stands for one thing
        }

        Assert.Equal(piece.Floor, known["floor"]);
        Assert.Equal(check.Sale.Net, known["net"]);
        Assert.Equal(check.EarnedPerBenchHour, known["earnedPerBenchHour"]);
        Assert.Equal(year.RequiredRevenue, known["requiredRevenue"]);
    }
}
