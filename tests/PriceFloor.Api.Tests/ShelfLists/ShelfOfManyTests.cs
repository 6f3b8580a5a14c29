using System.Globalization;
using System.Text;
using PriceFloor.Api.Tests.Evidence.Logged;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.ShelfLists;

/// <summary>A shelf reads the lines of many designs in one go; each design alone reads its own. They say the same.</summary>
public sealed class ShelfOfManyTests
{
    private const int Designs = 12;
    private const string Days = "?profile=main&to=2027-12-31";

    [Fact]
    public async Task Lines_that_are_read_together_say_what_they_say_alone()
    {
        await using var together = await Logged();
        await using var alone = await Logged();
        foreach (var sale in new[] { "", "900,2027-10-01,D03,shop,1,31.00,order-0\n901,2027-10-01,D04,shop,2,20.00,order-0\n" })
        {
            await Append(together, sale);
            await Append(alone, sale);
            var shelf = (await together.Get("/v1/shelf" + Days)).Json.GetProperty("items").EnumerateArray()
                .ToDictionary(line => line.GetProperty("sku").GetString()!);
            Assert.Equal(Designs, shelf.Count);
            foreach (var (sku, line) in shelf)
            {
                var take = (await alone.Get($"/v1/designs/{sku}/evidence?to=2027-12-31")).Json.GetProperty("take");
                Assert.Equal((take.GetProperty("pieces").GetRawText(), take.GetProperty("net").GetRawText()),
                    (line.GetProperty("sold").GetRawText(), line.GetProperty("take").GetRawText()));
            }
        }
    }

    /// <summary>
    /// Of designs that were asked for one by one what was found is kept, with what was ever listed for each. A shelf that reads all of them looks
    /// only for prices that were ever listed.
    /// </summary>
    [Fact]
    public async Task A_shelf_of_designs_that_were_asked_for_one_by_one_says_the_same()
    {
        await using var together = await Listed();
        await using var alone = await Listed();
        for (var design = 0; design < Designs; design++)
            await alone.Get($"/v1/designs/D{design:D2}/evidence{Days.Replace("profile=main&", "", StringComparison.Ordinal)}");
        var (shelf, other) = (await together.Get("/v1/shelf" + Days), await alone.Get("/v1/shelf" + Days));
        Assert.Equal(other.Json.GetProperty("items").GetRawText(), shelf.Json.GetProperty("items").GetRawText());
    }

    private static async Task<Studio> Listed()
    {
        var studio = await Logged();
        foreach (var (sku, price) in new[] { ("D03", "25.00"), ("D03", "31.00"), ("D04", "44.00"), ("D05", "19.00") })
            await studio.Has($"/v1/designs/{sku}/prices/shop", $$"""{"price":{{price}},"currency":"USD"}""");
        await studio.Delete("/v1/designs/D04/prices/shop");
        await studio.Has("/v1/designs/D06", """{"profile":"main","making":{"minutesPerPiece":25}}""");
        return studio;
    }

    private static Task Append(Studio studio, string lines) => studio.Sheet("source=book", SentLog.Heading + lines);

    /// <summary>Orders of one to three designs, whose shipping and fees are shared by all their lines.</summary>
    private static async Task<Studio> Logged()
    {
        var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.Has("/v1/channels/shop",
            """
            {"sells":"retail","currency":"USD","shipping":{"cost":6.00,"charged":4.00},
             "fees":[{"name":"card","rate":0.03,"fixed":0.25,"of":"paid"}]}
            """);
        for (var design = 0; design < Designs; design++)
            await studio.Has($"/v1/designs/D{design:D2}", """{"profile":"main","making":{"minutesPerPiece":20}}""");
        var lines = new StringBuilder(SentLog.Heading);
        for (var line = 0; line < 400; line++)
        {
            var (day, design, pieces) = (new DateOnly(2027, 1, 1).AddDays(line * 5 % 300), line * 7 % Designs, 1 + (line % 3));
            lines.Append(CultureInfo.InvariantCulture,
                $"{line},{day:yyyy-MM-dd},D{design:D2},shop,{pieces},{20 + (line % 11)}.00,order-{line / pieces}\n");
        }

        await studio.Sheet("source=book", lines.ToString());
        return studio;
    }
}
