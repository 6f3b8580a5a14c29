using System.Globalization;
using System.Text;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Pictures;
using PriceFloor.Api.PriceLists;
using Xunit;

namespace PriceFloor.Api.Tests.Pictures;

public sealed class DrawingTests
{
    [Theory]
    [InlineData("23.5", "50")]
    [InlineData("1", "1")]
    [InlineData("0.3", "0.5")]
    [InlineData("0.011", "0.02")]
    [InlineData("200000000001", "500000000000")]
    public void Axes_step_by_one_two_or_five_and_a_power_of_ten(string least, string step) =>
        Assert.Equal(Number(step), Scale.NiceStep(Number(least)));

    [Fact]
    public void Ticks_lie_within_the_scale()
    {
        Assert.Equal([0, 20, 40], new Scale(0, 55, 0, 100).Ticks(5)); // 55 / 5 = 11: steps of 20
        Assert.Equal([60, 80, 100], new Scale(55, 110, 0, 100).Ticks(5));
        Assert.Equal(116, new Scale(0, 200, 0, 400).At(58));
        Assert.Equal(25, new Scale(7, 7, 25, 50).At(7)); // a scale of nothing still has a place
    }

    [Fact]
    public void Words_are_escaped_and_what_no_XML_can_hold_is_replaced()
    {
        Assert.Equal("<text a=\"&lt;&quot;&amp;\">&lt;/text&gt;&lt;script&gt; \uFFFD\U0001F40B</text>\n",
            new Svg().Words("text", "</text><script> \uFFFE\U0001F40B", ("a", "<\"&")).ToString());
    }

    [Fact]
    public void A_culture_with_decimal_commas_changes_no_number()
    {
        var (before, points) = (CultureInfo.CurrentCulture, Drawn());
        try
        {
            var commas = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            (commas.NumberFormat.NumberDecimalSeparator, commas.NumberFormat.NumberGroupSeparator) = (",", ".");
            CultureInfo.CurrentCulture = commas;
            Assert.Equal("1,5", 1.5m.ToString(CultureInfo.CurrentCulture)); // it really is such a culture
            Assert.Equal("""<rect x="1.5" y="-0.33" width="2"/>""" + "\n",
                new Svg().Shape("rect", ("x", 1.50m), ("y", -1m / 3), ("width", 2)).ToString());
            Assert.Equal(points, Drawn());
            Assert.Equal(("1,234.50", "1,235", "1,234.500", "0.5"),
                (DisplayText.Money(1234.5m, "USD"), DisplayText.Money(1235, "JPY"), DisplayText.Money(1234.5m, "KWD"), DisplayText.Number(0.50m)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("main@2", "main")]
    [InlineData("RB-014/web@12: deleted", "RB-014/web: deleted")]
    [InlineData("A@2/web@3", "A@2/web")] // a SKU may hold such a sign itself
    public void A_document_is_named_without_its_revision(string basis, string words) => Assert.Equal(words, DisplayText.Document(basis));

    [Fact]
    public void A_message_on_paper_has_words_for_fields() => Assert.Equal("Give bench share, or every floor of RB-014 is too low.",
        DisplayText.Message("Give benchShare, or every floor of RB-014 is too low."));

    [Fact]
    public void Long_names_are_cut_before_they_run_into_their_neighbour()
    {
        Assert.Equal("River drop", TextMetrics.Into(100, "River drop", 14));
        Assert.EndsWith("…", TextMetrics.Into(100, new string('W', 200), 14), StringComparison.Ordinal);
        Assert.True(TextMetrics.Width(TextMetrics.Into(100, new string('W', 200), 14), 14) <= 100);
        // never through a letter of several parts
        Assert.Equal("\U0001F469\u200D\U0001F52C…",
            TextMetrics.Into(30, "\U0001F469\u200D\U0001F52C\U0001F469\u200D\U0001F52C\U0001F469\u200D\U0001F52C", 14));
    }

    /// <summary>A ladder and a page.</summary>
    private static string Drawn()
    {
        var item = new PriceListItemAnswer
        {
            Sku = "A",
            Name = "Drop",
            Channel = "web",
            Currency = "USD",
            FloorPrice = 1062.17m,
            TargetPrice = 2120.50m,
            ListedPrice = 1058.25m,
            Verdict = Verdict.BelowFloor,
            Basis = "A@1",
        };
        var list = new PriceListAnswer { Next = null, Items = [item], Basis = new PriceListBasisAnswer(["main@1"], ["web@1"]), Warnings = [] };
        return Encoding.UTF8.GetString(PriceLadderPicture.Of(list, "Own shop", "USD"))
            + Encoding.UTF8.GetString(PricePage.Of(list, new Dictionary<string, string?>(), new DateOnly(2027, 1, 2)));
    }

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
