using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using PriceFloor.Api.Http;
using Xunit;

namespace PriceFloor.Api.Tests.Http;

/// <summary>A list that is written on all processors is to the byte what it is when it is written from the first to the last.</summary>
public sealed class LongListTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(1000)]
    [InlineData(1001)]
    [InlineData(4321)]
    public void It_is_the_same_text_however_long_it_is(int count)
    {
        var lines = Enumerable.Range(0, count).Select(i => new Line($"D-{i} \"é\"", i % 7 == 0 ? null : i / 100m)).ToList();
        Assert.Equal(JsonSerializer.Serialize(new Plain(1, lines, 2), WireJson.Options),
            JsonSerializer.Serialize(new Long(1, lines, 2), WireJson.Options));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(1000)]
    [InlineData(1001)]
    [InlineData(4321)]
    public void It_is_the_same_text_when_it_is_sent_in_pieces(int count)
    {
        var lines = Enumerable.Range(0, count).Select(i => new Line($"D-{i} \"é\"", i % 7 == 0 ? null : i / 100m)).ToList();
        var pieces = new LongAnswer<Long>(new Long(1, lines, 2)).Pieces().SelectMany(piece => piece.ToArray()).ToArray();
        Assert.Equal(JsonSerializer.Serialize(new Plain(1, lines, 2), WireJson.Options), Encoding.UTF8.GetString(pieces));
    }

    [Fact]
    public void What_an_answer_leaves_out_is_left_out_in_pieces_too()
    {
        var pieces = new LongAnswer<Sparse>(new Sparse(null, null)).Pieces().SelectMany(piece => piece.ToArray()).ToArray();
        Assert.Equal("""{"kept":null}""", Encoding.UTF8.GetString(pieces));
    }

    private sealed record Sparse([property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Left, string? Kept);

    private sealed record Line(string Sku, decimal? Price);

    private sealed record Plain(int Before, IReadOnlyList<Line> List, int After);

    private sealed record Long(int Before, [property: JsonConverter(typeof(LongList<Line>))] IReadOnlyList<Line> List, int After);
}
