using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.ShelfLists;

/// <summary>Of each design its share of the contribution beside its share of the bench hours: what takes more than it brings stands out.</summary>
public static class ShelfPicture
{
    private const int MostRows = 12;
    private const decimal BarHeight = 14, RowHeight = 62, LabelWidth = 56;

    /// <param name="shelf">The shelf.</param>
    /// <param name="isPrinted">On white paper, whatever the reader's screen prefers.</param>
    public static byte[] Of(ShelfAnswer shelf, bool isPrinted = false)
    {
        var rows = RowsOf(shelf);
        var picture = new Picture("What the designs bring and take", Description(rows));
        var y = picture.Paragraph(Picture.Margin, 52, Summary(shelf, rows), Picture.Inner, Picture.Small, Palette.Quiet) + 9;
        if (rows.Count == 0)
            return picture.Render(y, isPrinted);
        picture.Box(Picture.Margin, y - 12, 16, BarHeight, Palette.Green, Hatch.None, Palette.Text);
        picture.Words(Picture.Margin + 24, y, "share of what is left", Picture.Small);
        picture.Box(Picture.Margin + 212, y - 12, 16, BarHeight, Palette.Amber, Hatch.Rising, Palette.Text);
        picture.Words(Picture.Margin + 236, y, "share of the bench hours", Picture.Small);
        var most = rows.Max(row => decimal.Max(row.Brings, row.Takes));
        var scale = new Scale(0, decimal.Max(most, 0.01m), Picture.Margin, Picture.Right - LabelWidth);
        y += 30;
        foreach (var row in rows)
        {
            picture.Group(Words(row), () =>
            {
                picture.Words(Picture.Margin, y, row.Name, bold: true, fit: Picture.Inner);
                Bar(picture, scale, y + 7, row.Brings, Palette.Green, Hatch.None);
                Bar(picture, scale, y + 7 + BarHeight + 4, row.Takes, Palette.Amber, Hatch.Rising);
            });
            y += RowHeight;
        }

        return picture.Render(y - 8, isPrinted);
    }

    private static void Bar(Picture picture, Scale scale, decimal top, decimal share, Palette fill, Hatch hatch)
    {
        var end = scale.At(decimal.Max(0, share));
        picture.Box(Picture.Margin, top, end - Picture.Margin, BarHeight, fill, hatch, Palette.Text);
        picture.Words(end + 6, top + BarHeight - 2.5m, Percent(share), Picture.Small, share < 0 ? Palette.Floor : Palette.Text);
    }

    /// <summary>The designs that sold, largest contribution first; those past the twelfth together.</summary>
    private static List<Row> RowsOf(ShelfAnswer shelf)
    {
        var all = shelf.Items.Where(item => item.ShareOfHours is not null && item.Sold != 0)
            .OrderByDescending(item => item.ShareOfContribution ?? 0).ThenBy(item => item.Sku, StringComparer.Ordinal)
            .Select(item => new Row(DisplayText.Named(item.Name, item.Sku), item.ShareOfContribution ?? 0, item.ShareOfHours!.Value)).ToList();
        if (all.Count <= MostRows + 1)
            return all;
        var rest = all.Skip(MostRows).ToList();
        return [.. all.Take(MostRows), new Row($"{rest.Count} others", rest.Sum(row => row.Brings), rest.Sum(row => row.Takes))];
    }

    private static string Summary(ShelfAnswer shelf, List<Row> rows) => rows.Count == 0 ? "Nothing was sold within these days."
        : shelf.Carriers.Count == 0 ? "No design brings more than its materials."
        : shelf.Carriers.Count == 1 ? "One design brings 70 % or more of what sales leave after materials."
        : FormattableString.Invariant($"{shelf.Carriers.Count} designs bring 70 % of what sales leave after materials.");

    private static string Description(List<Row> rows) => rows.Count == 0 ? "Nothing was sold."
        : string.Join(' ', rows.Select(row => Words(row) + "."));

    private static string Words(Row row) => $"{row.Name}: {Percent(row.Brings)} of what is left, {Percent(row.Takes)} of the bench hours";

    private static string Percent(decimal share) => $"{DisplayText.Number(Rounding.Trim(Rounding.Nearest(share * 100, 1)))} %";

    private sealed record Row(string Name, decimal Brings, decimal Takes);
}
