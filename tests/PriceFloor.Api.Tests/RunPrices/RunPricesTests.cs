using PriceFloor.Api.Tests.OrderChecks;
using Xunit;

namespace PriceFloor.Api.Tests.RunPrices;

/// <summary>The worked ladder of the river drop pendant for the web shop, through HTTP.</summary>
public sealed class RunPricesTests(WorkedOrders worked) : IClassFixture<WorkedOrders>
{
    private const string Path = "/v1/designs/RB-014/run-prices?channel=web";

    /// <summary>Worked example of the model. 24 pieces enter the kiln of 24 as 24.49: two loads. 48 do as 48.98: three. 23 and 47 save one.</summary>
    [Fact]
    public async Task The_ladder_is_as_worked()
    {
        var answer = await worked.Studio.Get($"{Path}&quantities=1,2,6,12,24,48,100");
        string[] shown = ["quantity", "floor", "floorTotal", "perPiece", "earned", "quantityJustBelow"];
        Assert.Equal(
        [
            "1 84.60 89.65 89.65 0 null", "2 66.59 140.50 70.25 0.216 null", "6 54.59 343.91 57.32 0.36 null", "12 51.58 649.03 54.09 0.396 null",
            "24 51.00 1281.94 53.42 0.404 23", "48 50.25 2525.09 52.61 0.413 47", "100 49.82 5214.79 52.15 0.418 null",
        ], answer.Json.GetProperty("runs").EnumerateArray().Select(run =>
            string.Join(' ', shown.Select(name => run.GetProperty(name).GetRawText()))));
        var hours = answer.Json.GetProperty("runs").EnumerateArray()
            .Select(run => Math.Round(run.GetProperty("benchHours").GetDecimal() / run.GetProperty("quantity").GetDecimal(), 4));
        Assert.Equal([1.3420m, 1.0503m, 0.8559m, 0.8073m, 0.7969m, 0.7847m, 0.7778m], hours, (one, other) => Math.Abs(one - other) <= 0.0001m);
        // 24 * 58.00 = 1,392.00, of which 1,281.94 is 92.09 %: 7.9 % may be taken off; one alone falls short.
        Assert.Equal(("58.00", "0.079"), (answer.Json.GetProperty("runs")[4].GetProperty("listedPrice").GetRawText(),
            answer.Json.GetProperty("runs")[4].GetProperty("mostOff").GetRawText()));
        Assert.Equal("null", answer.Json.GetProperty("runs")[0].GetProperty("mostOff").GetRawText());
        Assert.Equal("""{"profile":"main@1","design":"RB-014@1","channel":"web@1"}""", answer.Json.GetProperty("basis").GetRawText());
    }

    [Fact]
    public async Task The_discount_that_is_earned_is_earned_and_a_point_more_is_not()
    {
        var answer = await worked.Studio.Get($"{Path}&quantities=1,2,3,5,8,13,21,34,55,89,144,233");
        var runs = answer.Json.GetProperty("runs").EnumerateArray().ToList();
        var one = runs[0].GetProperty("floorTotal").GetDecimal();
        Assert.All(runs.Skip(1), run =>
        {
            var (n, total, earned) = (run.GetProperty("quantity").GetDecimal(), run.GetProperty("floorTotal").GetDecimal(),
                run.GetProperty("earned").GetDecimal());
            Assert.True(n * one * (1 - earned) >= total && n * one * (1 - earned - 0.001m) < total, run.GetRawText());
        });
    }

    [Fact]
    public async Task To_be_sure_of_them_more_are_started_and_paid_for()
    {
        var (usual, sure) = (await Run("quantities=12"), await Run("quantities=12&sure=0.95"));
        Assert.Equal(sure.GetProperty("starts").GetDecimal(), sure.GetProperty("startsToBeSure").GetDecimal());
        Assert.True(usual.GetProperty("startsToBeSure").GetDecimal() > usual.GetProperty("starts").GetDecimal());
        Assert.True(sure.GetProperty("floorTotal").GetDecimal() > usual.GetProperty("floorTotal").GetDecimal());

        async Task<System.Text.Json.JsonElement> Run(string query) => (await worked.Studio.Get($"{Path}&{query}")).Json.GetProperty("runs")[0];
    }

    [Fact]
    public async Task Without_a_listed_price_nothing_is_said_of_one()
    {
        var run = (await worked.Studio.Get("/v1/designs/RB-014/run-prices?channel=market")).Json.GetProperty("runs")[0];
        Assert.False(run.TryGetProperty("listedPrice", out _) || run.TryGetProperty("mostOff", out _));
    }

    [Fact]
    public async Task Its_workings_reach_the_floor_total_and_not_a_cent_less()
    {
        var answer = await worked.Studio.Get($"{Path}&quantities=2,24&workings=true");
        var values = answer.Json.GetProperty("workings").EnumerateArray()
            .ToDictionary(line => line.GetProperty("symbol").GetString()!, line => line.GetProperty("value").GetDecimal());
        Assert.Equal(140.50m, values["run1AtFloorTotalOrderTotal"]);
        Assert.True(values["run2AtFloorTotalOrderNet"] >= values["run2OrderFloor"] && values["run2OneUnitLowerOrderNet"] < values["run2OrderFloor"]);
    }

    [Theory]
    [InlineData("", "channel required")]
    [InlineData("?channel=web&quantities=0", "quantities not-a-list")]
    [InlineData("?channel=web&quantities=1,,2", "quantities not-a-list")]
    [InlineData("?channel=web&quantities=1.5", "quantities not-a-list")]
    [InlineData("?channel=web&quantities=10001", "quantities not-a-list")]
    [InlineData("?channel=web&quantities=1,2,3,4,5,6,7,8,9,10,11,12,13", "quantities out-of-range")]
    [InlineData("?channel=web&sure=0.4", "sure out-of-range")]
    [InlineData("?channel=web&sure=1", "sure out-of-range")]
    public async Task What_is_wrong_with_the_question_is_named(string query, string fault)
    {
        var problem = (await worked.Studio.Get("/v1/designs/RB-014/run-prices" + query)).IsProblem(422, "invalid-input");
        Assert.Equal([fault], problem.Pointers.Zip(problem.Codes, (parameter, code) => $"{parameter} {code}"));
    }

    [Fact]
    public async Task Unknown_names_and_other_currencies_have_their_problems()
    {
        (await worked.Studio.Get("/v1/designs/no/run-prices?channel=web")).IsProblem(404, "not-found");
        (await worked.Studio.Get("/v1/designs/RB-014/run-prices?channel=WEB")).IsProblem(422, "unknown-reference");
        await worked.Studio.Has("/v1/channels/euro", """{"sells":"retail","currency":"EUR"}""");
        (await worked.Studio.Get("/v1/designs/RB-014/run-prices?channel=euro")).IsProblem(422, "currency-mismatch");
    }
}
