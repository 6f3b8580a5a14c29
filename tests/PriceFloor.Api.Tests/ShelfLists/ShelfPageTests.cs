using System.Xml.Linq;
using PriceFloor.Api.Tests.Evidence.Logged;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.ShelfLists;

/// <summary>The shelf as a picture and as a page to print.</summary>
public sealed class ShelfPageTests
{
    private const string Days = "?profile=main&to=2027-04-01";

    [Fact]
    public async Task The_picture_has_two_bars_for_each_design_as_long_as_its_shares()
    {
        await using var studio = await Three();
        var answer = await studio.Get("/v1/shelf.svg" + Days);
        Assert.Equal("image/svg+xml", answer.ContentType);
        var picture = XDocument.Parse(answer.Text).Root!;
        var space = picture.Name.Namespace;
        var rows = picture.Elements(space + "g").ToList();
        // 300, 100, 100 of 500 contributed, 6, 2, 2 of 10 hours.
        Assert.Equal(
            ["Cup <b> & (A): 60 % of what is left, 60 % of the bench hours", "B: 20 % of what is left, 20 % of the bench hours",
                "C: 20 % of what is left, 20 % of the bench hours"],
            rows.Select(row => row.Element(space + "title")!.Value));
        decimal[] Bars(XElement row) => [.. row.Elements(space + "rect")
            .Where(bar => bar.Attribute("class")?.Value.StartsWith("f-", StringComparison.Ordinal) == true)
            .Select(bar => (decimal)bar.Attribute("width")!)];
        Assert.Equal(2, Bars(rows[0]).Length);
        Assert.InRange(Bars(rows[0])[0] - 3 * Bars(rows[1])[0], -0.05m, 0.05m);
        Assert.Equal("2 designs bring 70 % of what sales leave after materials.", picture.Elements(space + "text").ElementAt(1).Value);
        Assert.Contains("60 % of what is left", picture.Element(space + "desc")!.Value, StringComparison.Ordinal);
        Assert.Contains("prefers-color-scheme:dark", answer.Text, StringComparison.Ordinal);
        Assert.Equal(304, (await studio.Get("/v1/shelf.svg" + Days, null, ("If-None-Match", answer["ETag"]!))).Status);
    }

    [Fact]
    public async Task Of_many_designs_the_largest_have_rows_and_the_others_one_together()
    {
        await using var studio = await Three();
        for (var design = 0; design < 15; design++)
        {
            await studio.Has($"/v1/designs/D{design:D2}", """{"profile":"main","making":{"minutesPerPiece":60}}""");
            await studio.Sheet("source=more", SentLog.Heading + $"{design},2027-03-01,D{design:D2},shop,1,10.00,\n");
        }

        var picture = XDocument.Parse((await studio.Get("/v1/shelf.svg" + Days)).Text).Root!;
        var rows = picture.Elements(picture.Name.Namespace + "g").Select(row => row.Elements().First().Value).ToList();
        Assert.Equal(13, rows.Count);
        // Eighteen sold: twelve have their own. Six of 10.00 in 650.00, six hours of 25.
        Assert.Equal("6 others: 9.2 % of what is left, 24 % of the bench hours", rows[^1]);
    }

    [Fact]
    public async Task The_page_says_why_before_what_it_suggests()
    {
        await using var studio = await RiverDropLog.Logged();
        var page = await studio.Get($"/v1/shelf.html?profile=main&to={RiverDropLog.LastDay}", null, ("Accept", "*/*"));
        Assert.Equal("text/html", page.ContentType);
        const string Because = "an hour earned 37.31 (36.90 to 37.72) of the 45.00 that it must, by the minutes of the bench log";
        const string Might = "change the design: people want it, but it takes more than it brings";
        Assert.InRange(page.Text.IndexOf(Because, StringComparison.Ordinal), 1, page.Text.IndexOf(Might, StringComparison.Ordinal));
        foreach (var words in new[] { "<svg", "You might", "River drop pendant (RB-014)", "4,324.23", "3,602.92", "you decide", "up to 2028-01-01" })
            Assert.Contains(words, page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page.Text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("prefers-color-scheme:dark", page.Text, StringComparison.Ordinal); // printed on white
    }

    [Fact]
    public async Task Names_are_words_in_it_and_an_empty_shelf_has_a_page_too()
    {
        await using var studio = await Three();
        var page = (await studio.Get("/v1/shelf.html" + Days)).Text;
        Assert.Contains("Cup &lt;b&gt; &amp; (A)", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b> &", page, StringComparison.Ordinal);
        Assert.Contains("there were few orders, or few days on offer, so far", page, StringComparison.Ordinal);
        Assert.Contains("wait and keep writing down", page, StringComparison.Ordinal);
        await studio.Has("/v1/profiles/none", RiverDropLog.Profile);
        Assert.Contains("Nothing was sold within these days.", (await studio.Get("/v1/shelf.html?profile=none")).Text, StringComparison.Ordinal);
        (await studio.Get("/v1/shelf.svg?profile=nobody")).IsProblem(422, "unknown-reference");
    }

    private static async Task<Studio> Three()
    {
        var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.Has("/v1/channels/shop", """{"sells":"retail","currency":"USD"}""");
        foreach (var (sku, name, minutes) in new[] { ("A", "\"name\":\"Cup <b> &\",", 60), ("B", "", 60), ("C", "", 30) })
            await studio.Has($"/v1/designs/{sku}", $$$"""{{{{name}}}"profile":"main","making":{"minutesPerPiece":{{{minutes}}}}}""");
        await studio.Sheet("source=book",
            SentLog.Heading + "1,2027-03-01,A,shop,6,50.00,\n2,2027-03-01,B,shop,2,50.00,\n3,2027-03-01,C,shop,4,25.00,\n");
        return studio;
    }
}
