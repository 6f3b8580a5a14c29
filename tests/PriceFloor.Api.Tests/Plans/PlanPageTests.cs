using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Plans;

/// <summary>The page of a plan to print: whoever adds its columns up finds no gap.</summary>
public sealed partial class PlanPageTests
{
    [Fact]
    public async Task What_comes_in_less_what_goes_out_is_how_cash_changes_sales_tax_included()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/web", """{"sells":"retail","currency":"USD","salesTax":{"rate":0.1}}""");
        await studio.Has("/v1/plans/p", Sample.Plan[..^1] + ",\"salesTaxPaid\":[3,6,9,12],\"opening\":{\"cash\":5000,\"salesTaxHeld\":120}}");
        var page = (await studio.Get("/v1/plans/p/months.html")).Text;
        var rows = Row().Matches(page).Take(12)
            .Select(row => Cell().Matches(row.Value).Select(cell => Of(cell.Groups["figure"].Value)).ToList()).ToList();
        Assert.Equal((12, 6), (rows.Count, rows[0].Count)); // cash, free, in, out, taxes, set aside
        var cash = 5000m;
        foreach (var row in rows)
        {
            Assert.InRange(row[0] - cash - (row[2] - row[3] - row[4]), -0.02m, 0.02m); // each is rounded by itself
            cash = row[0];
        }

        Assert.True(rows[2][4] > 120); // in month 3 what was held at the end of month 2 is paid on
        Assert.DoesNotContain(">30<", page, StringComparison.Ordinal); // hours have one decimal each
        Assert.Matches(@">[0-9]+[.][0-9]<", page);
    }

    [Fact]
    public async Task What_two_lines_on_one_channel_share_is_said_once()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/CUP", """{"profile":"main","making":{"piecesPerDay":8}}""");
        await studio.Has("/v1/plans/p", """
            {"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":10},{"sku":"CUP","channel":"web","price":40,"units":10}]}
            """);
        var answer = (await studio.Get("/v1/plans/p/months")).Json;
        var warnings = answer.GetProperty("warnings").EnumerateArray().Select(one => one.GetRawText()).ToList();
        Assert.Equal(warnings.Distinct(), warnings);
        var message = Assert.Single(warnings, one => one.Contains("bills-month-assumed", StringComparison.Ordinal));
        Assert.Contains("a line of the profile is due; assumed lists it, and it moves the low point", message, StringComparison.Ordinal);
    }

    private static decimal Of(string figure) => decimal.Parse(figure, NumberStyles.Number, CultureInfo.InvariantCulture);

    [GeneratedRegex("<tr><th scope=\"row\">.*?</tr>", RegexOptions.None, 5000)]
    private static partial Regex Row();

    [GeneratedRegex("<td class=\"money\">(?<figure>[^<]+)</td>", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Cell();
}
