using System.Globalization;
using PriceFloor.Api.Pictures;
using Xunit;

namespace PriceFloor.Api.Tests.Pictures;

/// <summary>
/// Contrast as WCAG 2.2 defines it: words at least 4.5 to 1 (1.4.3), lines that matter at least 3 to 1 (1.4.11), on light and on dark.
/// </summary>
public sealed class InkTests
{
    [Fact]
    public void Words_can_be_read_on_the_paper_and_on_every_fill()
    {
        foreach (var scheme in new Func<Palette, string>[] { ink => ink.Light, ink => ink.Dark })
        {
            Assert.All(Palette.ForWords, ink => AtLeast(4.5, scheme(ink), scheme(Palette.Paper), ink.Name));
            Assert.All(Palette.ForFills, ink => AtLeast(4.5, scheme(Palette.Text), scheme(ink), ink.Name));
        }
    }

    [Fact]
    public void The_measure_is_the_published_one()
    {
        Assert.Equal(21, Contrast("#ffffff", "#000000"), 2); // black on white, by the definition of the ratio
        Assert.Equal(4.48, Contrast("#777777", "#ffffff"), 2); // the grey that just fails
    }

    [Fact]
    public void No_two_fills_of_a_bar_differ_by_colour_alone()
    {
        var hatches = Enum.GetValues<Hatch>().Where(hatch => hatch != Hatch.None).Select(Hatches.Tile).ToList();
        Assert.Equal(hatches.Distinct(), hatches);
        Assert.DoesNotContain("", hatches);
    }

    private static void AtLeast(double ratio, string one, string other, string name) =>
        Assert.True(Contrast(one, other) >= ratio, $"{name}: {one} on {other} is {Contrast(one, other):0.00} to 1");

    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        double Channel(int at) =>
            int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0 is var s && s <= 0.04045 ? s / 12.92
                : Math.Pow((s + 0.055) / 1.055, 2.4);
        return 0.2126 * Channel(1) + 0.7152 * Channel(3) + 0.0722 * Channel(5);
    }
}
