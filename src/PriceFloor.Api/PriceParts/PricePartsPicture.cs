using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.PriceParts;

/// <summary>
/// Where each unit of a price goes, a bar for each channel, all on one scale. Each part has a letter, a pattern and its place in the order. If a
/// price is short, the bar goes on beyond what the buyer pays: that much the household goes without.
/// </summary>
public static class PricePartsPicture
{
    private const decimal Top = 72, BarHeight = 30, LineHeight = 19, Gap = 32;

    private static readonly (PricePart Part, char Letter, string Words, Palette Palette, Hatch Hatch)[] s_parts =
    [
        (PricePart.UsualDiscount, 'a', "usual discount", Palette.Ash, Hatch.Falling),
        (PricePart.SalesTax, 'b', "sales tax", Palette.Grey, Hatch.None),
        (PricePart.ShopShare, 'c', "shop or gallery", Palette.Sky, Hatch.Rising),
        (PricePart.Fees, 'd', "fees", Palette.Blue, Hatch.None),
        (PricePart.Shipping, 'e', "shipping", Palette.Teal, Hatch.Level),
        (PricePart.PackingAndStall, 'f', "packing, stall", Palette.Mint, Hatch.Upright),
        (PricePart.Returns, 'g', "returns", Palette.Rose, Hatch.Falling),
        (PricePart.Losses, 'h', "lost on the channel", Palette.Plum, Hatch.Rising),
        (PricePart.Development, 'i', "one-off cost", Palette.Peach, Hatch.Squares),
        (PricePart.Materials, 'j', "materials", Palette.Amber, Hatch.Dots),
        (PricePart.Expenses, 'k', "hours: expenses", Palette.Straw, Hatch.Ticks),
        (PricePart.Tax, 'l', "hours: tax", Palette.Lilac, Hatch.Squares),
        (PricePart.Household, 'm', "hours: household", Palette.Green, Hatch.None),
        (PricePart.AboveFloor, 'n', "above the floor", Palette.Sea, Hatch.Rings),
    ];

    public static byte[] Of(string sku, PricePartsAnswer answer)
    {
        var picture = new Picture("Where each part of the price goes", Description(sku, answer));
        picture.Words(Picture.Margin, 52, DisplayText.Named(answer.Name, sku), fit: Picture.Inner);
        picture.Words(Picture.Margin, 70, $"{answer.Currency} a piece; what the buyer pays, tax and shipping included", Picture.Small,
            Palette.Quiet, fit: Picture.Inner);
        var most = answer.Channels.Max(channel => (decimal?)Needed(channel)) ?? 1;
        var scale = new Scale(0, decimal.Max(most, 0.000001m), Picture.Margin, Picture.Right);
        var y = Top;
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
        picture.Words(Picture.Margin, y, Head(channel), Picture.Normal, bold: true,
            fit: Picture.Inner - TextMetrics.Width(verdict, Picture.Normal) - 12);
        var top = y + 9;
        var at = 0m;
        foreach (var (part, letter, _, ink, hatch) in s_parts)
            if (Amount(channel, part) is > 0 and var amount)
            {
                Segment(picture, scale.At(at), scale.At(at + amount), top, letter, ink, hatch);
                at += amount;
            }

        if (Short(channel) is > 0 and var missing)
            Missing(picture, scale.At(decimal.Max(0, at - missing)), scale.At(at), top);
        return List(picture, channel, top + BarHeight + 22);
    }

    private static void Segment(Picture picture, decimal from, decimal to, decimal top, char letter, Palette ink, Hatch hatch)
    {
        picture.Box(from, top, to - from, BarHeight, ink, hatch, Palette.Text);
        if (to - from < 16)
            return;
        picture.Box((from + to) / 2 - 7, top + BarHeight / 2 - 9, 14, 18, ink);
        picture.Words((from + to) / 2, top + BarHeight / 2 + 5, letter.ToString(), anchor: "middle");
    }

    /// <summary>Beyond the money the bar is struck out.</summary>
    private static void Missing(Picture picture, decimal from, decimal to, decimal top)
    {
        picture.Box(from, top, to - from, BarHeight, hatch: Hatch.Crossed, outline: Palette.Floor, dash: Dash.Dashed);
        picture.Line(from, top - 5, from, top + BarHeight + 5, Palette.Floor, thick: 3);
    }

    /// <summary>Every part with its amount, in two columns: read downwards.</summary>
    private static decimal List(Picture picture, ChannelPartsAnswer channel, decimal y)
    {
        var shown = s_parts.Where(part => Amount(channel, part.Part) != 0).ToList();
        var rows = (shown.Count + 1) / 2;
        foreach (var (index, part) in shown.Index())
        {
            var x = index < rows ? Picture.Margin : Picture.Margin + Picture.Inner / 2 + 10;
            var line = y + index % decimal.Max(rows, 1) * LineHeight;
            var amount = Amount(channel, part.Part);
            var isShort = part.Part == PricePart.AboveFloor && amount < 0;
            picture.Box(x, line - 11, 14, 13, isShort ? null : part.Palette, isShort ? Hatch.Crossed : part.Hatch,
                isShort ? Palette.Floor : Palette.Text);
            var (column, money) = (Picture.Inner / 2 - 10, DisplayText.Money(amount, channel.Currency));
            picture.Words(x + 21, line, isShort ? "short of the floor" : $"{part.Letter} {part.Words}", Picture.Small,
                fit: column - 21 - 6 - TextMetrics.Width(money, Picture.Small));
            picture.Words(x + column, line, money, Picture.Small, anchor: "end");
        }

        return y + (rows - 1) * LineHeight;
    }

    private static decimal WithoutPrice(Picture picture, ChannelPartsAnswer channel, decimal y)
    {
        picture.Words(Picture.Margin, y, DisplayText.Named(channel.Name, channel.Channel), bold: true, fit: Picture.Inner);
        picture.Words(Picture.Margin, y + 20, DisplayText.Reason(channel.Reason!), Picture.Small, Palette.Quiet);
        return y + 20;
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
