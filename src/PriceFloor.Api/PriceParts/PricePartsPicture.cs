using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.PriceParts;

/// <summary>
/// Where each unit of a price goes, a bar for each channel, all on one scale. Each part has a pattern, its place in the order, and the letter of its
/// place in its bar. If a price is short, the bar goes on beyond what the buyer pays: that much the household goes without.
/// </summary>
public static class PricePartsPicture
{
    private const decimal BarHeight = 30, Gap = 32;

    private static readonly (PricePart Part, string Words, Palette Palette, Hatch Hatch)[] s_parts =
    [
        (PricePart.UsualDiscount, "usual discount", Palette.Ash, Hatch.Falling),
        (PricePart.SalesTax, "sales tax", Palette.Grey, Hatch.None),
        (PricePart.ShopShare, "shop or gallery", Palette.Sky, Hatch.Rising),
        (PricePart.Fees, "fees", Palette.Blue, Hatch.None),
        (PricePart.Shipping, "shipping", Palette.Teal, Hatch.Level),
        (PricePart.PackingAndStall, "packing, stall", Palette.Mint, Hatch.Upright),
        (PricePart.Returns, "returns", Palette.Rose, Hatch.Falling),
        (PricePart.Losses, "lost on the channel", Palette.Plum, Hatch.Rising),
        (PricePart.Development, "one-off cost", Palette.Peach, Hatch.Squares),
        (PricePart.Materials, "materials", Palette.Amber, Hatch.Dots),
        (PricePart.Expenses, "hours: expenses", Palette.Straw, Hatch.Ticks),
        (PricePart.Tax, "hours: tax", Palette.Lilac, Hatch.Squares),
        (PricePart.Household, "hours: household", Palette.Green, Hatch.None),
        (PricePart.AboveFloor, "above the floor", Palette.Sea, Hatch.Rings),
    ];

    public static byte[] Of(string sku, PricePartsAnswer answer)
    {
        var picture = new Picture("Where each part of the price goes", Description(sku, answer));
        var top = picture.Paragraph(Picture.Margin, 52, DisplayText.Named(answer.Name, sku), Picture.Inner);
        picture.Words(Picture.Margin, top, $"{answer.Currency} a piece; what the buyer pays, tax and shipping included", Picture.Small,
            Palette.Quiet);
        var most = answer.Channels.Max(channel => (decimal?)Needed(channel)) ?? 1;
        var scale = new Scale(0, decimal.Max(most, 0.000001m), Picture.Margin, Picture.Right);
        var y = top + 2;
        foreach (var channel in answer.Channels)
        {
            y += Gap;
            picture.Group(Sentence(channel), () => y = channel.Reason is null ? Bar(picture, channel, scale, y) : WithoutPrice(picture, channel, y));
        }

        if (answer.Channels.Count == 0)
            picture.Words(Picture.Margin, y += Gap, "No channel is stored.", ink: Palette.Quiet);
        return picture.Render(y + Picture.Margin);
    }

    /// <summary>The length of the bar: what is paid, and what is missing.</summary>
    private static decimal Needed(ChannelPartsAnswer channel) => channel.Parts.Where(part => part.Amount > 0).Sum(part => part.Amount);

    private static decimal Bar(Picture picture, ChannelPartsAnswer channel, Scale scale, decimal y)
    {
        var verdict = DisplayText.Verdict(channel.Verdict);
        picture.Words(Picture.Right, y, verdict, anchor: "end");
        var room = Picture.Inner - TextMetrics.Width(verdict, Picture.Normal) - 12;
        var top = picture.Paragraph(Picture.Margin, y, Head(channel), room, bold: true) - 9;
        var at = StackedBar.Draw(picture, scale, top, BarHeight, PartsOf(channel));
        if (Short(channel) is > 0 and var missing)
            Missing(picture, scale.At(decimal.Max(0, at - missing)), scale.At(at), top);
        return StackedBar.List(picture, top + BarHeight + 22, channel.Currency, PartsOf(channel));
    }

    /// <summary>Beyond the money the bar is struck out.</summary>
    private static void Missing(Picture picture, decimal from, decimal to, decimal top)
    {
        picture.Box(from, top, to - from, BarHeight, hatch: Hatch.Crossed, outline: Palette.Floor, dash: Dash.Dashed);
        picture.Line(from, top - 5, from, top + BarHeight + 5, Palette.Floor, thick: 3);
    }

    private static List<StackedPart> PartsOf(ChannelPartsAnswer channel) =>
        [.. s_parts.Select(part => (Is: part, Amount: Amount(channel, part.Part))).Where(part => part.Amount != 0).Select((part, place) =>
            new StackedPart((char)('a' + place), part.Amount < 0 ? "short of the floor" : part.Is.Words, part.Amount, part.Is.Palette,
                part.Is.Hatch))];

    private static decimal WithoutPrice(Picture picture, ChannelPartsAnswer channel, decimal y)
    {
        var below = picture.Paragraph(Picture.Margin, y, DisplayText.Named(channel.Name, channel.Channel), Picture.Inner, bold: true) + 2;
        picture.Words(Picture.Margin, below, DisplayText.Reason(channel.Reason!), Picture.Small, Palette.Quiet);
        return below;
    }

    private static decimal Short(ChannelPartsAnswer channel) => decimal.Max(0, -Amount(channel, PricePart.AboveFloor));

    private static decimal Amount(ChannelPartsAnswer channel, PricePart part) => channel.Parts.FirstOrDefault(one => one.Part == part)?.Amount ?? 0;

    private static string Head(ChannelPartsAnswer channel) => $"{DisplayText.Money(channel.Price!.Value, channel.Currency)} "
        + $"{channel.PriceIs switch { PriceIs.Listed => "listed", PriceIs.FloorPrice => "floor price", _ => "asked" }}, "
        + $"{channel.Name ?? channel.Channel}";

    private static string Sentence(ChannelPartsAnswer channel) => channel.Reason is { } reason
        ? $"{DisplayText.Named(channel.Name, channel.Channel)}: {DisplayText.Reason(reason)}."
        : $"{DisplayText.Named(channel.Name, channel.Channel)}, {Head(channel).Split(',')[0]}, {DisplayText.Verdict(channel.Verdict)}: "
            + $"the buyer pays {DisplayText.Money(channel.Paid!.Value, channel.Currency)}, of it "
            + string.Join(", ", s_parts.Where(part => Amount(channel, part.Part) != 0)
                .Select(part => Amount(channel, part.Part) is < 0 and var below && part.Part == PricePart.AboveFloor
                    ? $"short of the floor {DisplayText.Money(-below, channel.Currency)}"
                    : $"{part.Words} {DisplayText.Money(Amount(channel, part.Part), channel.Currency)}")) + ".";

    private static string Description(string sku, PricePartsAnswer answer) =>
        $"{DisplayText.Named(answer.Name, sku)}, floor {DisplayText.Money(answer.Floor, answer.Currency)} {answer.Currency}. "
        + $"{string.Join(' ', answer.Channels.Select(Sentence))}";
}
