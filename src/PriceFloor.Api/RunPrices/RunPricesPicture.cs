using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.RunPrices;

/// <summary>The ladder of a run: a bar for each quantity, as long as what a piece must sell for; a dashed line where a price is listed.</summary>
public static class RunPricesPicture
{
    private const decimal Top = 96, RowHeight = 30, BarHeight = 20;

    public static byte[] Of(RunPricesAnswer answer, string design, string channel)
    {
        var picture = new Picture("What a run must sell for", Description(answer, design, channel));
        picture.Words(Picture.Margin, 52, design, fit: Picture.Inner);
        picture.Words(Picture.Margin, 70, $"{answer.Currency} a piece on {channel}, made to order", Picture.Small, Palette.Quiet, fit: Picture.Inner);
        var listed = answer.Runs[0].ListedPrice;
        var left = Picture.Margin + answer.Runs.Max(run => TextMetrics.Width(Pieces(run), Picture.Small)) + 8;
        var right = Picture.Right - answer.Runs.Max(run => TextMetrics.Width(Words(run, answer.Currency), Picture.Small)) - 8;
        var scale = new Scale(0, decimal.Max(answer.Runs.Max(run => run.PerPiece), listed ?? 0), left, decimal.Max(right, left + 40));
        var y = Top;
        foreach (var run in answer.Runs)
        {
            picture.Group(Sentence(run, answer.Currency), () => Row(picture, run, answer.Currency, scale, left, y));
            y += RowHeight;
        }

        return picture.Render(listed is { } price
            ? Listed(picture, scale.At(price), price, answer.Currency, y)
            : y - RowHeight + BarHeight + Picture.Margin);
    }

    private static void Row(Picture picture, RunPriceAnswer run, string currency, Scale scale, decimal left, decimal y)
    {
        picture.Words(left - 8, y + 15, Pieces(run), Picture.Small, anchor: "end");
        picture.Box(left, y, scale.At(run.PerPiece) - left, BarHeight, Palette.Sky, run.QuantityJustBelow is null ? Hatch.None : Hatch.Rising,
            Palette.Text);
        picture.Words(Picture.Right, y + 15, Words(run, currency), Picture.Small, anchor: "end");
    }

    /// <summary>Where a price is listed, and what the hatched bars are.</summary>
    private static decimal Listed(Picture picture, decimal x, decimal price, string currency, decimal y)
    {
        picture.Line(x, Top - 8, x, y - RowHeight + BarHeight + 8, Palette.Floor, Dash.Dashed, 2);
        var key = y + 14;
        picture.Line(Picture.Margin, key - 5, Picture.Margin + 24, key - 5, Palette.Floor, Dash.Dashed, 2);
        picture.Words(Picture.Margin + 34, key, $"listed at {DisplayText.Money(price, currency)}", Picture.Small, fit: Picture.Inner - 34);
        return key + Picture.Margin;
    }

    private static string Pieces(RunPriceAnswer run) => DisplayText.Number(run.Quantity);

    /// <summary>The price of a piece, and what the quantity earns.</summary>
    private static string Words(RunPriceAnswer run, string currency) => run.Earned == 0
        ? DisplayText.Money(run.PerPiece, currency)
        : $"{DisplayText.Money(run.PerPiece, currency)}, earns {DisplayText.Number(Rounding.Trim(run.Earned * 100))} %";

    private static string Sentence(RunPriceAnswer run, string currency) =>
        $"{Pieces(run)} {(run.Quantity == 1 ? "piece" : "pieces")}: {Words(run, currency)}, {DisplayText.Money(run.FloorTotal, currency)} in all"
        + (run.QuantityJustBelow is { } fewer ? $"; {DisplayText.Number(fewer)} would save a whole load" : "") + ".";

    private static string Description(RunPricesAnswer answer, string design, string channel) =>
        $"{design} made to order, sold on {channel}, {answer.Currency}. "
        + string.Join(' ', answer.Runs.Select(run => Sentence(run, answer.Currency)))
        + (answer.Runs[0].ListedPrice is { } price ? $" Listed at {DisplayText.Money(price, answer.Currency)}." : "");
}
