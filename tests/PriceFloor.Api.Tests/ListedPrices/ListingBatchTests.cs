using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.ListedPrices;

public sealed class ListingBatchTests
{
    private const string Path = "/v1/listed-prices/batch";

    [Fact]
    public async Task A_shops_sheet_is_stored_as_it_is_checked_with_its_own_names()
    {
        await using var studio = await AShop();
        var answer = (await Csv(studio, "Item;Price\nRB-014;58,00\nStud / silver;31,50\n",
            "?skuColumn=Item&priceColumn=Price&channel=web&dialect=semicolon")).Json;
        Assert.Equal(
            """{"items":[{"sku":"RB-014","channel":"web","result":"unchanged","revision":1},{"sku":"ST-001","channel":"web","result":"created","revision":1}],"summary":{"created":1,"changed":0,"unchanged":1}}""",
            answer.GetRawText());
        Assert.Equal("31.50", (await studio.Get("/v1/designs/ST-001/prices/web")).Json.GetProperty("price").GetRawText());
    }

    [Fact]
    public async Task All_or_nothing_in_every_format()
    {
        await using var studio = await AShop();
        var sheet = await Csv(studio, "sku,channel,price\nRB-014,web,70\nNOPE,web,1\nRB-014,nope,1\nRB-014,web,$5\nST-001,web,1.001\n");
        Assert.Equal(["3:sku", "4:channel", "5:price"], Faults(sheet.IsProblem(422, "invalid-input")));
        var fine = await Csv(studio, "sku,channel,price\nRB-014,web,70\nST-001,web,1.001\n");
        Assert.Equal(["3:price"], Faults(fine.IsProblem(422, "invalid-input")));
        var twice = await studio.Post(Path, """[{"sku":"ST-001","channel":"web","price":5},{"sku":"ST-001","channel":"web","price":6}]""");
        Assert.Equal(["duplicate"], twice.IsProblem(422, "invalid-input").Codes);
        (await studio.Post(Path, """[{"sku":"ST-001","channel":"web","price":5,"currency":"EUR"}]""")).IsProblem(422, "currency-mismatch");
        Assert.Equal("\"1\"", (await studio.Get("/v1/designs/RB-014/prices/web"))["ETag"]);
        (await studio.Get("/v1/designs/ST-001/prices/web")).IsProblem(404, "not-found");
        Assert.Equal("1",
            (await studio.SendBytes("POST", Path, Encoding.UTF8.GetBytes("""{"sku":"ST-001","channel":"web","price":5}"""), "application/x-ndjson"))
                .Json.GetProperty("summary").GetProperty("created").GetRawText());
    }

    [Fact]
    public async Task A_key_for_prices_is_enough_and_a_reading_one_is_not()
    {
        await using var studio = await AShop();
        using var prices = await studio.ClientFor("prices");
        using var read = await studio.ClientFor("read");
        Assert.Equal(200, (await studio.Post(Path, "[]", prices)).Status);
        (await studio.Post(Path, "[]", read)).IsProblem(403, "key-not-allowed");
        (await studio.Post(Path + "?asOf=2027-01-01T00:00:00Z", "[]")).IsProblem(400, "unreadable-request");
    }

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/ST-001", """{"profile":"main","making":{"piecesPerDay":8},"aliases":["Stud / silver"]}""");
        return studio;
    }

    private static Task<Answer> Csv(Studio studio, string sheet, string query = "") =>
        studio.SendBytes("POST", Path + query, Encoding.UTF8.GetBytes(sheet), "text/csv");

    private static IEnumerable<string> Faults(Answer problem) => problem.Json.GetProperty("errors").EnumerateArray()
        .Select(error => $"{error.GetProperty("line").GetRawText()}:{error.GetProperty("parameter").GetString()}");
}
