using System.Globalization;
using Xunit;

namespace PriceFloor.Api.Tests.Workbooks;

/// <summary>A wrong cell is the fault of whoever sends it, in whichever sheet and column.</summary>
public sealed class WrongCellTests
{
    [Theory]
    [InlineData("x y")]
    [InlineData("")]
    [InlineData("-4")]
    [InlineData("a/b/c")]
    public async Task A_wrong_cell_in_any_column_of_any_sheet_is_no_fault_of_the_service(string wrong)
    {
        await using var studio = await AStudio();
        var (tried, refused) = (0, 0);
        foreach (var (name, rows) in Book.Read((await studio.Workbook()).File).Where(sheet => sheet.Key != "read me" && sheet.Value.Count > 1))
            for (var column = 0; column < rows[0].Length; column++)
            {
                var row = rows[1].Select((cell, at) => at == column ? wrong : Written(cell));
                var answer = await studio.Send(Book.Of((name, [string.Join('|', rows[0]), string.Join('|', row)])));
                Assert.True(answer.Status is 200 or 409 or 422, $"{name}, {rows[0][column]}: {answer.Status} {answer.Text}");
                (tried, refused) = (tried + 1, refused + (answer.Status == 422 ? 1 : 0));
            }

        Assert.True(tried > 100, $"{tried} cells were tried.");
        Assert.True(refused > tried / 8, $"{refused} of {tried} were refused.");
    }

    [Fact]
    public async Task Two_faulty_prices_of_one_design_are_two_faults_and_no_duplicate()
    {
        await using var studio = await AStudio();
        var refused = (await studio.Send(Book.Of(("prices", ["sku|channel|price", "RB-014|web|abc", "RB-014|fair|-4"]))))
            .IsProblem(422, "invalid-input");
        Assert.Equal(["prices C2", "prices C3"], refused.Json.GetProperty("errors").EnumerateArray()
            .Select(one => $"{one.GetProperty("sheet").GetString()} {one.GetProperty("cell").GetString()}"));
    }

    [Theory]
    [InlineData("RB-014|none|12|", "B2")]
    [InlineData("RB-014|web|12|none", "D2")]
    [InlineData("none|web|12|", "A2")]
    public async Task What_a_price_names_that_is_not_there_is_said_at_its_cell(string row, string cell)
    {
        await using var studio = await AStudio();
        var refused = (await studio.Send(Book.Of(("prices", ["sku|channel|price|alias", row])))).IsProblem(422, "invalid-input");
        Assert.Equal(cell, refused.Json.GetProperty("errors")[0].GetProperty("cell").GetString());
    }

    [Fact]
    public async Task Reading_rules_get_a_key_that_an_address_can_have()
    {
        await using var studio = await AStudio();
        var refused = await studio.Send(Book.Of(("reading-rules", ["rules|textHas|costKind", "my rules!|rent|rent"])));
        Assert.Contains("A key is 1 to 64", refused.IsProblem(422, "invalid-input").Text, StringComparison.Ordinal);
    }

    private static string Written(object? cell) => cell is DateTime day ? day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        : Convert.ToString(cell, CultureInfo.InvariantCulture) ?? "";

    private static async Task<Studio> AStudio()
    {
        var studio = await WorkedStudio.Create();
        await studio.Has("/v1/plans/2027", Plans.WorkedPlan.Steady.ToJsonString());
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":58.00}""");
        return studio;
    }
}
