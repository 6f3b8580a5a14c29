using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.PriceChecks.Batches;

/// <summary>Sheets as they really arrive, each with the answer that it must get.</summary>
public sealed class NastySheetTests(NastySheetTests.Shop shop) : IClassFixture<NastySheetTests.Shop>
{
    private const string Answers = ",verdict,floorPrice,targetPrice,problem,shortBy";
    private const string Floor = ",below-floor,61.74,120.00,,3.65";

    public static TheoryData<string, string, string> Sheets => new()
    {
        { "line feeds", "sku,channel,price\nRB-014,web,58\n", $"sku,channel,price{Answers}\nRB-014,web,58{Floor}\n" },
        { "carriage returns and line feeds", "sku,channel,price\r\nRB-014,web,58\r\n", $"sku,channel,price{Answers}\r\nRB-014,web,58{Floor}\r\n" },
        { "carriage returns alone", "sku,channel,price\rRB-014,web,58\r", $"sku,channel,price{Answers}\rRB-014,web,58{Floor}\r" },
        { "no end of the last line", "sku,channel,price\nRB-014,web,58", $"sku,channel,price{Answers}\nRB-014,web,58{Floor}" },
        { "empty lines", "sku,channel,price\n\nRB-014,web,58\n\n", $"sku,channel,price{Answers}\n\nRB-014,web,58{Floor}\n\n" },
        { "everything quoted", "\"sku\",\"channel\",\"price\"\n\"RB-014\",\"web\",\"58\"\n",
            $"\"sku\",\"channel\",\"price\"{Answers}\n\"RB-014\",\"web\",\"58\"{Floor}\n" },
        { "a break and quotes in a cell", "sku,channel,price,note\nRB-014,web,58,\"a\n\"\"b\"\", c\"\n",
            $"sku,channel,price,note{Answers}\nRB-014,web,58,\"a\n\"\"b\"\", c\"{Floor}\n" },
        { "columns in another order", "price,x,channel,sku\n58,,web,RB-014\n", $"price,x,channel,sku{Answers}\n58,,web,RB-014{Floor}\n" },
        { "a short row", "sku,channel,price\nRB-014,web\nRB-014,web,58\n", $"sku,channel,price{Answers}\nRB-014,web,,,,,*\nRB-014,web,58{Floor}\n" },
        { "a long row", "sku,channel,price\nRB-014,web,58,1\nRB-014,web,58\n",
            $"sku,channel,price{Answers}\n\"RB-014,web,58,1\",,,,,,*\nRB-014,web,58{Floor}\n" },
        { "a quote that never ends", "sku,channel,price\n\"RB-014,web,58\nRB-014,web,58\n",
            $"sku,channel,price{Answers}\n\"\"\"RB-014,web,58\",,,,,,*\nRB-014,web,58{Floor}\n" },
        { "a NUL", "sku,channel,price\nRB\0014,web,58\n", $"sku,channel,price{Answers}\nRB\0014,web,58,,,,*\n" },
        { "a price for eyes", "sku,channel,price\nRB-014,web,$58.00\n", $"sku,channel,price{Answers}\nRB-014,web,$58.00,,,,*\n" },
        { "a decimal comma in the wrong dialect", "sku,channel,price\nRB-014,web,\"1,5\"\n",
            $"sku,channel,price{Answers}\nRB-014,web,\"1,5\",,,,*\n" },
        { "a price of nothing", "sku,channel,price\nRB-014,web,0\nRB-014,web,-5\nRB-014,web,\n",
            $"sku,channel,price{Answers}\nRB-014,web,0,,,,*\nRB-014,web,-5,,,,*\nRB-014,web,,,,,*\n" },
        { "too many decimals", "sku,channel,price\nRB-014,web,58.001\nRB-014,web,58.000\n",
            $"sku,channel,price{Answers}\nRB-014,web,58.001,,,,*\nRB-014,web,58.000{Floor}\n" },
        { "a formula", "sku,channel,price\n=RB,web,58\n", $"sku,channel,price{Answers}\n=RB,web,58,,,,*\n" },
        { "its own answer", $"sku,channel,price{Answers}\nRB-014,web,58,meets-target,1.00,2.00,old,0\n",
            $"sku,channel,price{Answers}\nRB-014,web,58{Floor}\n" },
    };

    [Theory]
    [MemberData(nameof(Sheets))]
    public async Task A_sheet_gets_its_answer(string what, string sheet, string expected)
    {
        var answer = await BatchTests.Post(await shop.Studio, "text/csv", sheet);
        Assert.True(answer.Status == 200, $"{what}: {answer.Text}");
        // A star stands for a problem's text, which names line and column.
        var pattern = "^" + System.Text.RegularExpressions.Regex.Escape(expected)
            .Replace("\\*", "\"?Line \\d+, column \\d+: [^\\r\\n]+", StringComparison.Ordinal) + "$";
        Assert.Matches(pattern, answer.Text);
    }

    [Fact]
    public async Task A_thousand_columns_and_a_huge_cell_pass_through_untouched()
    {
        var others = string.Join(',', Enumerable.Range(0, 997).Select(i => $"c{i}"));
        var cells = string.Join(',', Enumerable.Repeat("x", 996)) + ",\"" + new string('y', 30_000) + "\"";
        var answer = await BatchTests.Post(await shop.Studio, "text/csv", $"sku,{others},channel,price\nRB-014,{cells},web,58\n");
        Assert.Equal($"sku,{others},channel,price{Answers}\nRB-014,{cells},web,58{Floor}\n", answer.Text);
    }

    [Fact]
    public async Task A_row_too_long_to_be_kept_is_reported_and_the_next_is_read()
    {
        var answer = await BatchTests.Post(await shop.Studio, "text/csv", $"sku,channel,price\n{new string('z', 200_000)},web,58\nRB-014,web,58\n");
        Assert.Matches("^sku,channel,price,verdict,floorPrice,targetPrice,problem,shortBy\n,,,,,,\"?Line 2, column 1: [^\n]+\n"
            + "RB-014,web,58,below-floor,61.74,120.00,,3.65\n$", answer.Text);
    }

    [Fact]
    public async Task Bytes_that_are_not_UTF_8_are_reported_in_their_row_and_a_byte_order_mark_is_kept()
    {
        byte[] sheet = [0xef, 0xbb, 0xbf, .. "sku,channel,price\nRB-014,web,58,"u8[..^1], (byte)'\n', 0xff, .. ",web,58\nRB-014,web,58\n"u8];
        using var content = new ByteArrayContent(sheet);
        content.Headers.TryAddWithoutValidation("Content-Type", "text/csv");
        using var response = await (await shop.Studio)
            .Client.PostAsync(new Uri("/v1/price-checks/batch", UriKind.Relative), content, Studio.Cancellation);
        var bytes = await response.Content.ReadAsByteArrayAsync(Studio.Cancellation);
        Assert.Equal([0xef, 0xbb, 0xbf], bytes[..3]);
        var lines = Encoding.UTF8.GetString(bytes[3..]).Split('\n');
        Assert.Equal(($"RB-014,web,58{Floor}", $"RB-014,web,58{Floor}"), (lines[1], lines[3]));
        Assert.Contains("Line 3, column 1: ", lines[2], StringComparison.Ordinal);
    }

    public sealed class Shop : IAsyncDisposable
    {
        private readonly Lazy<Task<Studio>> _studio = new(BatchTests.AShop);

        public Task<Studio> Studio => _studio.Value;

        public async ValueTask DisposeAsync() => await (await Studio).DisposeAsync();
    }
}
