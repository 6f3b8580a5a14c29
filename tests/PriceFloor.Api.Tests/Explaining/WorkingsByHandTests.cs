using System.Text;
using System.Text.Json;
using PriceFloor.Api.Tests.Quotes;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Api.Tests.Explaining;

/// <summary>
/// Redoes every answer as its reader would: each formula from the values shown above it, and then the answer's own figures from those.
/// </summary>
public sealed class WorkingsByHandTests
{
    private const string Plan =
        """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":80,"units":600},{"sku":"RB-014","channel":"gallery","price":150,"units":123}],"hoursKeptBack":40""";
    private static readonly string[] s_progress =
    [
        "planned:planned:2", "brought:brought:2", "ahead:ahead:2", "pace:pace:4", "forecast:forecast:2", "stillToBring:stillToBring:up2",
        "stockExpected:stockExpected:2", "restPlanned:restPlanned:2", "factor:factor:up4", "hoursLeft:hoursLeft:4", "weeksLeft:weeksLeft:4",
        "perBenchHourLeft:perBenchHourLeft:up2", "perWeekLeft:perWeekLeft:up2", "months/0/toBring:toBring8:2", "months/0/perWeek:perWeek8:up2",
        "months/4/perWeek:perWeek12:up2", "ways/missing:missing:up2", "ways/sellMore:sellMore:4",
    ];

    private const string Surplus = ""","surplus":{"amount":1500,"tax":"after"}}""";

    public static TheoryData<string, string?, string[]> Answers => new()
    {
        // the question, its body, figures of the answer as field:symbol:decimals
        {
            "/v1/profiles/main/requirement", null,
            ["requiredRevenue:requiredRevenue:up2", "benchMustEarn:benchMustEarn:up2", "perBenchHour:perBenchHour:up2", "perDay:perDay:up2",
                "perWeek:perWeek:up2"]
        },
        {
            "/v1/designs/RB-014/floor-price", null,
            ["floor:floor:up2", "wholesale:wholesale:2", "retail:retail:2", "benchHours:benchHours:4", "materials:materials:2",
                "piecesPerYear:piecesPerYear:down0", "channels/1/floorPrice:channel2FloorPrice:2", "channels/1/targetPrice:channel2TargetPrice:2",
                "channels/0/floorPrice:channel1FloorPrice:2"]
        },
        {
            "/v1/price-checks?sku=RB-014&channel=web&price=58", null,
            ["floorPrice:floorPrice:2", "targetPrice:targetPrice:2", "netProceeds:net:2", "aboveFloor:aboveFloor:2",
                "earnedPerBenchHour:earnedPerBenchHour:2", "takeHomePerHourAtThisPrice:takeHomePerHourAtThisPrice:2"]
        },
        {
            "/v1/order-checks",
            """{"channel":"web","items":[{"sku":"RB-014","pieces":2,"price":58}],"gifts":[{"sku":"RB-014","pieces":1}],"offer":{"discountShare":0.1}}""",
            ["total:orderTotal:2", "netProceeds:orderNet:2", "floors:orderFloors:2", "aboveFloor:orderAboveFloor:2",
                "leastTotal:atLeastTotalOrderTotal:2"]
        },
        {
            "/v1/order-checks", """{"channel":"gallery","leastOrder":true,"offer":{"amountOff":90}}""",
            ["leastOrder/threshold:threshold:2", "leastOrder/threshold:design1LeastOrderOrderTotal:2"]
        },
        {
            "/v1/quote-figures",
            """{"profile":"main","channel":"web","lines":[{"quantity":24,"design":"RB-014","learning":{"rate":0.9},"trialPieces":1}],"price":2000,"rush":0.15}""",
            ["floor:orderFloor:up2", "floorTotal:atFloorTotalOrderTotal:2", "rushTotal:rushTotal:2", "netProceeds:atPriceOrderNet:2",
                "aboveFloor:atPriceAboveFloor:2", "earnedPerBenchHour:atPriceEarnedPerBenchHour:2", "outOfPocket:outOfPocket:2",
                "leastDeposit:outOfPocket:up2", "benchHours:orderHours:4", "quotesRun:quotesRun:6"]
        },
        {
            "/v1/quote-figures", """{"profile":"main","channel":"web","lines":[{"quantity":24,"design":"RB-014","learning":{"madeBefore":6}}]}""",
            ["floor:orderFloor:up2", "floorTotal:atFloorTotalOrderTotal:2", "benchHours:orderHours:4"]
        },
        {
            "/v1/designs/RB-014/run-prices?channel=web&quantities=1,24", null,
            ["runs/0/benchHours:run1Line1RunHours:4", "runs/1/starts:run2Line1RunStarts:4", "runs/1/benchHours:run2Line1RunHours:4",
                "runs/1/floorTotal:run2AtFloorTotalOrderTotal:2", "runs/1/floor:run2FloorOfAPiece:up2", "runs/1/perPiece:run2PerPiece:up2",
                "runs/1/earned:run2Earned:3"]
        },
        { "/v1/designs/RB-014/price-parts?channel=web", null, ["channels/0/paid:paidAPiece:2"] },
        {
            "/v1/designs/RB-014/break-even?channel=web&price=58&planned=1000", null,
            ["contribution:contribution:2", "units:units:0", "revenue:revenue:2", "benchHours:unitsHours:4", "capacity:capacity:0",
                "shareOfYear:shareOfYear:6", "marginOfSafety:marginOfSafety:6", "operatingLeverage:operatingLeverage:6"]
        },
        {
            "/v1/break-even",
            """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":80,"ratio":3},{"sku":"RB-014","channel":"gallery","price":150,"ratio":1.5}]"""
            + Surplus,
            ["benchMustEarn:benchMustEarnWithSurplus:up2", "contributionPerMixUnit:contributionPerMixUnit:2", "mixUnits:mixUnits:6",
                "lines/0/units:units1:0", "lines/1/units:units2:0", "revenue:revenue:2", "benchHours:unitsHours:4", "shareOfYear:shareOfYear:6"]
        },
        { "/v1/designs/RB-014/remedies?channel=web&price=30", null,
            ["remedies/2/after:enoughMinutes:down2", "remedies/7/after:moreTaxableIncome:up2"] },
        { "/v1/design-budgets", """{"profile":"main","channel":"web","price":58,"materials":6}""", ["minutes:minutes:down2"] },
        {
            "/v1/year-plans", Plan + Surplus,
            ["benchMustEarn:benchMustEarnWithSurplus:up2", "contribution:contribution:2", "surplusBeforeTax:surplusBeforeTax:down2",
                "surplusAfterTax:surplusAfterTax:down2", "revenue:revenue:2", "proceeds:proceeds:2",
                "benchHours:planHours:4", "limits/0/available:hoursAvailable:4", "limits/1/used:loads1:4", "materialSpend/planned:planMaterials:2",
                "lines/1/contributionPerBenchHour:perBenchHour2:2"]
        },
        {
            "/v1/plan-months", """{"plan":{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":80,"units":600}],"opening":{"cash":3000}}}""",
            ["months/0/cash:cash1:2", "months/11/free:free12:2", "months/4/madeHours:madeHours5:4", "openingNeeded:openingNeeded:up2",
                "tax:planTax:2", "profit:planProfit:2", "reconciled/change:change:2", "stockAtMost:stockAtMost:up4"]
        },
        {
            "/v1/plans/p/progress", """{"through":"2027-08-15","sold":[{"sku":"RB-014","channel":"web","units":40},{"sku":"RB-014","channel":"gallery","units":7,"net":61.5}]}""",
            s_progress
        },
        { "/v1/plans/p/progress?through=2027-08-15", null, s_progress },
        {
            "/v1/year-plans/best",
            """{"profile":"main","goal":"maximum-surplus","lines":[{"sku":"RB-014","channel":"web","price":80,"maximum":500},{"sku":"RB-014","channel":"gallery","price":150,"maximum":200}]}""",
            ["contribution:contribution:2", "limits/0/worthOfOneMore:worthOfOneMore1:2"]
        },
    };

    [Theory]
    [MemberData(nameof(Answers))]
    public async Task The_figures_of_an_answer_follow_from_its_workings(string path, string? body, string[] figures)
    {
        await using var studio = await AShop();
        path += (path.Contains('?', StringComparison.Ordinal) ? "&" : "?") + "workings=true";
        var answer = body is null ? await studio.Get(path) : await studio.Post(path, body);
        Assert.True(answer.Status == 200, answer.Text);
        var known = Redone(answer.Json.GetProperty("workings"));
        foreach (var figure in figures.Select(text => text.Split(':')))
            Assert.True(Rounded(known[figure[1]], figure[2]) == At(answer.Json, figure[0]),
                $"{figure[0]} is {At(answer.Json, figure[0])}, its workings say {known[figure[1]]}");
    }

    /// <summary>
    /// Values have at most 12 decimals, so a line may differ a little from the result of those above it; never in the first nine digits.
    /// </summary>
    private static Dictionary<string, decimal> Redone(JsonElement workings)
    {
        var known = new Dictionary<string, decimal>();
        foreach (var line in workings.EnumerateArray())
        {
            var (symbol, formula, value) = (line.GetProperty("symbol").GetString()!, line.GetProperty("formula").GetString()!,
                line.GetProperty("value"));
            Assert.DoesNotMatch("[.][0-9]{13}", $"{formula} {value.GetRawText()}");
            var redone = Formula.Value(formula, known);
            Assert.True(decimal.Abs(redone - value.GetDecimal()) <= 0.000000001m * decimal.Max(1, decimal.Abs(redone)),
                $"{symbol} = {formula}: {redone}, but it says {value}");
            known.Add(symbol, value.GetDecimal());
        }

        return known;
    }

    private static decimal Rounded(decimal value, string how) => how switch
    {
        ['u', 'p', var decimals] => Rounding.Up(value, decimals - '0'),
        ['d', 'o', 'w', 'n', var decimals] => Rounding.Down(value, decimals - '0'),
        _ => Rounding.Nearest(value, int.Parse(how, System.Globalization.CultureInfo.InvariantCulture)),
    };

    private static decimal At(JsonElement json, string path) =>
        path.Split('/').Aggregate(json, (at, name) => at.ValueKind == JsonValueKind.Array
            ? at[int.Parse(name, System.Globalization.CultureInfo.InvariantCulture)]
            : at.GetProperty(name)).GetDecimal();

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.RichChannel);
        await studio.Has("/v1/channels/gallery",
            """{"sells":"retail","currency":"USD","shopShare":0.45,"salesTax":{"rate":0.2,"included":true},"priceStep":5}""");
        await studio.Has("/v1/designs/RB-014/prices/gallery", """{"price":150}""");
        await studio.Has("/v1/plans/p", """
            {"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":80,"units":600,"season":"gifts"},
             {"sku":"RB-014","channel":"gallery","units":90}],"seasons":{"gifts":[4,5,6,6,8,6,5,5,7,10,19,19]},
             "work":[4,4,4,4,4,4,3,2.5,4,4.5,4.5,3.5],"opening":{"cash":3000,"stock":[{"sku":"RB-014","pieces":6}]}}
            """);
        foreach (var (number, took) in new[] { (1, 3), (2, 4) })
            await studio.HasDone($"Q-{number}", 2.5m, took);
        await studio.SendBytes("POST", "/v1/movements/batch?source=shop", Encoding.UTF8.GetBytes("""
            [{"ref":"1","on":"DAY","sku":"RB-014","channel":"web","pieces":3,"price":77.50,"order":"1"},
             {"ref":"2","on":"DAY","what":"returned","sku":"RB-014","channel":"web","pieces":1,"order":"1"},
             {"ref":"3","on":"DAY","sku":"RB-014","channel":"gallery","pieces":2,"price":150}]
            """.Replace("DAY", "2027-01-03", StringComparison.Ordinal)), "application/json");
        return studio;
    }
}
