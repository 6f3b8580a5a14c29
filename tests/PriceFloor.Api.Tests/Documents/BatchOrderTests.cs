using System.Globalization;
using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>Whoever sent many lines goes through them and through the faults side by side: both are in one order.</summary>
public sealed class BatchOrderTests
{
    private const int Lines = 12; // more than nine: as texts, 10 comes before 2

    [Theory]
    [InlineData("/v1/designs/batch", "key", """{"key":"D-{0}","profile":"main","making":{"piecesPerDay":-{0}}}""")]
    [InlineData("/v1/listed-prices/batch", "sku", """{"sku":"RB-014","channel":"web","price":-{0}}""")]
    public async Task Faults_of_an_array_come_in_the_order_of_its_elements(string path, string _, string line)
    {
        await using var studio = await AShop();
        foreach (var between in new[] { ",", ",\n" })
        {
            var refused = (await studio.Post(path, $"[{string.Join(between, Of(line))}]")).IsProblem(422, "invalid-input");
            Assert.Equal(Enumerable.Range(0, Lines), refused.Pointers
                .Select(pointer => int.Parse(pointer.Split('/')[1], CultureInfo.InvariantCulture)));
        }
    }

    [Theory]
    [InlineData("POST", "/v1/designs/batch", "application/x-ndjson", "", """{"key":"D-{0}","profile":"main","making":{"piecesPerDay":-{0}}}""")]
    [InlineData("POST", "/v1/listed-prices/batch", "application/x-ndjson", "", """{"sku":"RB-014","channel":"web","price":-{0}}""")]
    [InlineData("POST", "/v1/designs/batch", "text/csv", "sku,profile,piecesPerDay", "D-{0},main,-{0}")]
    [InlineData("POST", "/v1/listed-prices/batch", "text/csv", "sku,channel,price", "RB-014,web,-{0}")]
    [InlineData("POST", "/v1/listed-prices/batch", "text/csv", "sku,channel,price", "N-{0},web,{0}")]
    [InlineData("PUT", "/v1/sheets/expenses", "text/csv", "profile,name,amount,per", "main,Rent,-{0},month")]
    [InlineData("PUT", "/v1/sheets/fees", "text/csv", "channel,name,rate", "web,card,-{0}")]
    [InlineData("PUT", "/v1/sheets/fees", "text/csv", "channel,name,rate", "shop-{0},card,0.{0}")]
    [InlineData("PUT", "/v1/sheets/channels", "text/csv", "channel,sells,currency", "c-{0},{0},USD")]
    public async Task Faults_of_lines_come_in_their_order(string method, string path, string type, string header, string line)
    {
        await using var studio = await AShop();
        var first = header.Length > 0 ? 2 : 1;
        var sent = string.Join('\n', header.Length > 0 ? Of(line).Prepend(header) : Of(line)) + "\n";
        var refused = await studio.SendBytes(method, path, Encoding.UTF8.GetBytes(sent), type);
        Assert.Equal(422, refused.Status);
        Assert.Equal(Enumerable.Range(first, Lines), refused.Json.GetProperty("errors").EnumerateArray()
            .Select(error => error.GetProperty("line").GetInt32()));
    }

    [Fact]
    public async Task Lines_that_are_refused_alike_are_all_told()
    {
        await using var studio = await AShop();
        var sent = "sku,channel,price\n" + string.Concat(Enumerable.Repeat("RB-014,web,$5\n", Lines));
        var refused = await studio.SendBytes("POST", "/v1/listed-prices/batch", Encoding.UTF8.GetBytes(sent), "text/csv");
        Assert.Equal(Enumerable.Range(2, Lines), refused.IsProblem(422, "invalid-input").Json.GetProperty("errors").EnumerateArray()
            .Select(error => error.GetProperty("line").GetInt32()));
    }

    [Fact]
    public async Task Faults_of_a_row_come_in_the_order_of_its_cells()
    {
        await using var studio = await AShop();
        var refused = await studio.SendBytes("PUT", "/v1/sheets/channels",
            "currency,channel,sells\nUS,c-1,never\nusd,c-2,retail\n"u8.ToArray(), "text/csv");
        Assert.Equal(["2 currency", "2 sells", "3 currency"], refused.IsProblem(422, "invalid-input").Json.GetProperty("errors").EnumerateArray()
            .Select(error => $"{error.GetProperty("line").GetInt32()} {error.GetProperty("parameter").GetString()}"));
    }

    [Theory]
    [InlineData("application/x-ndjson", "", """{"sku":"N-{0}","channel":"web","price":{0}}""")]
    [InlineData("application/json", "", """{"sku":"N-{0}","channel":"web","price":{0}}""")]
    [InlineData("text/csv", "sku,channel,price", "N-{0},web,{0}")]
    public async Task Checks_come_in_the_order_of_their_lines(string type, string header, string line)
    {
        await using var studio = await AShop();
        var isArray = type == "application/json";
        var text = string.Join(isArray ? "," : "\n", header.Length > 0 ? Of(line).Prepend(header) : Of(line));
        var answer = await studio.SendBytes("POST", "/v1/price-checks/batch", Encoding.UTF8.GetBytes(isArray ? $"[{text}]" : text + "\n"), type);
        Assert.Equal(200, answer.Status);
        var end = header.Length > 0 ? ',' : '"';
        var at = Enumerable.Range(1, Lines).Select(number => answer.Text.IndexOf($"N-{number}{end}", StringComparison.Ordinal))
            .ToList();
        Assert.DoesNotContain(-1, at);
        Assert.Equal(at.Order(), at);
    }

    private static IEnumerable<string> Of(string line) =>
        Enumerable.Range(1, Lines).Select(number => line.Replace("{0}", number.ToString(CultureInfo.InvariantCulture),
            StringComparison.Ordinal));

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        return studio;
    }
}
