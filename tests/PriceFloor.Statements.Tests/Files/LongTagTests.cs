using System.Text;
using PriceFloor.Statements.Files;
using Xunit;

namespace PriceFloor.Statements.Tests.Files;

/// <summary>A parser's time grows with the square of the number of attributes in a tag: such a tag is refused before it is parsed.</summary>
public sealed class LongTagTests
{
    [Theory]
    [InlineData("\"")]
    [InlineData("'")]
    public void A_tag_without_end_of_attributes_is_refused_at_once(string quote)
    {
        var tag = new StringBuilder("<?xml version=\"1.0\"?>\n<OFX ");
        for (var i = 0; tag.Length < 7_000_000; i++)
            tag.Append(System.Globalization.CultureInfo.InvariantCulture, $"a{i}={quote}>{quote} "); // a > in quotes does not end a tag
        tag.Append("></OFX>");
        var read = Reading.Of(Encoding.UTF8.GetBytes(tag.ToString()));
        Assert.Contains("line 2", Assert.Single(read.Faults).Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Long_comments_and_character_data_are_no_tags()
    {
        var text = $"<?xml version=\"1.0\"?><!-- {new string('c', 100_000)} > --><OFX><X><![CDATA[{new string('d', 100_000)}]]></X></OFX>";
        Assert.DoesNotContain(Reading.Of(Encoding.UTF8.GetBytes(text)).Faults,
            fault => fault.Detail.Contains("tag of more", StringComparison.Ordinal));
    }

    [Fact]
    public void Reading_ends_inside_a_file_when_it_is_called_off()
    {
        using var over = new CancellationTokenSource();
        over.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            StatementReader.Read(Encoding.UTF8.GetBytes("<?xml version=\"1.0\"?><OFX><X>1</X></OFX>"), "a", new SheetReading(), over.Token));
    }
}
