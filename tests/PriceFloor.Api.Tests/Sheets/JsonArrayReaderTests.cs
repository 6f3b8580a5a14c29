using System.IO.Pipelines;
using System.Text;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

public sealed class JsonArrayReaderTests
{
    [Theory]
    [InlineData("[]")]
    [InlineData(" [ \n ] \r\n")]
    [InlineData("\uFEFF[{\"a\":1}]", "0 1:2 {\"a\":1}")]
    [InlineData("[{\"a\":[1,{}]},\n  {\"b\":\"]\"} ,3]", "0 1:2 {\"a\":[1,{}]}", "1 2:3 {\"b\":\"]\"}", "2 2:14 3")]
    [InlineData("[\"a\",true,null,-1.50,[[]],{}]", "0 1:2 \"a\"", "1 1:6 true", "2 1:11 null", "3 1:16 -1.50", "4 1:22 [[]]", "5 1:27 {}")]
    [InlineData("[\"\u00e9\",\"\\\"\"]", "0 1:2 \"\u00e9\"", "1 1:7 \"\\\"\"")]
    public async Task Each_element_is_read_with_its_place(string body, params string[] items) => Assert.Equal(items, await Read(body));

    [Theory]
    [InlineData("", "empty # 1:1")]
    [InlineData(" \n ", "empty # 2:2")]
    [InlineData("{\"a\":1}", "not-an-array # 1:1")]
    [InlineData("\n 12", "not-an-array # 2:2")]
    [InlineData("sku,price\nA,1\n", "not-an-array # 1:1")]
    [InlineData("[1", "0 1:2 1", "malformed # 1:3")]
    [InlineData("[", "malformed #/0 1:2")]
    [InlineData("[1,\n", "0 1:2 1", "malformed #/1 2:1")]
    [InlineData("[1,]", "0 1:2 1", "malformed #/1 1:4")]
    [InlineData("[,1]", "malformed #/0 1:2")]
    [InlineData("[1 2]", "0 1:2 1", "malformed # 1:4")]
    [InlineData("[1}", "0 1:2 1", "malformed # 1:3")]
    [InlineData("[1,\n {\"a\":1,\n  \"b\":tru}]", "0 1:2 1", "malformed #/1 3:10")]
    [InlineData("[1, {\"a\" 1}]", "0 1:2 1", "malformed #/1 1:10")]
    [InlineData("[1, // two\n 2]", "0 1:2 1", "malformed #/1 1:5")]
    [InlineData("[1] 2", "0 1:2 1", "malformed # 1:5")]
    [InlineData("[1]\n[2]", "0 1:2 1", "malformed # 2:1")]
    [InlineData("[truex]", "0 1:2 true", "malformed # 1:6")]
    public async Task What_breaks_the_array_ends_the_reading_at_its_place(string body, params string[] told) => Assert.Equal(told, await Read(body));

    [Fact]
    public async Task So_many_elements_and_no_more()
    {
        Assert.Equal(["0 1:2 1", "1 1:4 2", "2 1:6 3"], await Read("[1,2,3]", mostItems: 3));
        Assert.Equal(["0 1:2 1", "1 1:4 2", "2 1:6 3", "too-many #/3 1:8"], await Read("[1,2,3,4]", mostItems: 3));
    }

    [Theory]
    [InlineData("[\"12345678\",1]", "0 1:2 \"12345678\"", "1 1:13 1")]
    [InlineData("[1,\"123456789\",1]", "0 1:2 1", "too-long #/1 1:4")]
    [InlineData("[1,\"12345678901234567890123456789012345678901234567890\",1]", "0 1:2 1", "too-long #/1 1:4")]
    [InlineData("[1,            2            ]", "0 1:2 1", "1 1:16 2")]
    [InlineData("[{\"a\":1,            \"b\":x}]", "too-long #/0 1:2")]
    public async Task An_element_longer_than_the_limit_ends_the_reading(string body, params string[] told) =>
        Assert.Equal(told, await Read(body, mostItemBytes: 10));

    [Fact]
    public async Task An_array_as_deep_as_a_body_may_be_and_no_deeper()
    {
        Assert.DoesNotContain("malformed", string.Concat(await Read($"[{new string('[', 32)}{new string(']', 32)}]")), StringComparison.Ordinal);
        Assert.Equal(["malformed #/0 1:34"], await Read($"[{new string('[', 33)}{new string(']', 33)}]"));
    }

    private static async Task<List<string>> Read(string body, int mostItems = JsonArrayReader.MostItems,
        int mostItemBytes = JsonArrayReader.MostItemBytes)
    {
        List<string>? first = null;
        foreach (var pipe in Dripping.EveryWay(Encoding.UTF8.GetBytes(body)))
        {
            var items = await Once(pipe, mostItems, mostItemBytes);
            Assert.Equal(first ??= items, items);
        }

        return first!;
    }

    private static async Task<List<string>> Once(PipeReader pipe, int mostItems, int mostItemBytes)
    {
        using var reader = new JsonArrayReader(pipe, mostItems, mostItemBytes);
        var told = new List<string>();
        while (await reader.WaitAsync(TestContext.Current.CancellationToken))
            while (reader.TryNext(out var item))
                told.Add($"{item.Index} {item.Line}:{item.Column} {Encoding.UTF8.GetString(item.Bytes)}");
        if (reader.Fault is { } fault)
            told.Add($"{fault.Code} {fault.Pointer} {fault.Line}:{fault.Column}");
        return told;
    }
}
