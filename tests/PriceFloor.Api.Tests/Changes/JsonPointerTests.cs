using System.Globalization;
using System.Text.Json.Nodes;
using Xunit;

namespace PriceFloor.Api.Tests.Changes;

/// <summary>RFC 6901, section 5: its document, and the value of each of its pointers.</summary>
public sealed class JsonPointerTests
{
    private const string Document = """{"foo":["bar","baz"],"":0,"a/b":1,"c%d":2,"e^f":3,"g|h":4,"i\\j":5,"k\"l":6," ":7,"m~n":8}""";

    [Theory]
    [InlineData("", Document)]
    [InlineData("/foo", """["bar","baz"]""")]
    [InlineData("/foo/0", "\"bar\"")]
    [InlineData("/", "0")]
    [InlineData("/a~1b", "1")]
    [InlineData("/c%d", "2")]
    [InlineData("/e^f", "3")]
    [InlineData("/g|h", "4")]
    [InlineData("/i\\j", "5")]
    [InlineData("/k\"l", "6")]
    [InlineData("/ ", "7")]
    [InlineData("/m~0n", "8")]
    public void A_pointer_leads_where_the_standard_says(string pointer, string value)
    {
        var at = JsonNode.Parse(Document);
        foreach (var token in DocumentPointer.Find(pointer)!.Tokens)
            at = at is JsonArray list ? list[int.Parse(token, CultureInfo.InvariantCulture)] : at![token];
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(value), at));
    }
}
