using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Years;

/// <summary>
/// What the year must bring in as one bar of its parts, with what is planned and what has come in below it on the same scale. Each part has a letter,
/// a pattern and its place in the order.
/// </summary>
public static class YearPicture
{
    private const int KindsShown = 9;
    private const decimal BarHeight = 30, RowHeight = 52;

    private static readonly (Palette Palette, Hatch Hatch)[] s_kinds =
    [
        (Palette.Straw, Hatch.Ticks), (Palette.Blue, Hatch.None), (Palette.Amber, Hatch.Dots), (Palette.Teal, Hatch.Level),
        (Palette.Rose, Hatch.Falling), (Palette.Sky, Hatch.Rising), (Palette.Peach, Hatch.Squares), (Palette.Mint, Hatch.Upright),
        (Palette.Plum, Hatch.Rings), (Palette.Grey, Hatch.None),
    ];

    /// <param name="year">The year.</param>
    /// <param name="isPrinted">On white paper, whatever the reader's screen prefers.</param>
    public static byte[] Of(YearAnswer year, bool isPrinted = false)
    {
        var parts = PartsOf(year);
        var picture = new Picture("What the year must bring in", Description(year, parts));
        picture.Words(Picture.Margin, 52, $"{Money(year, year.RequiredRevenue)} {year.Currency}", bold: true);
        var top = picture.Paragraph(Picture.Margin, 70, $"{year.Name ?? "The year"}, {Days(year)}", Picture.Inner,
            Picture.Small, Palette.Quiet) + 9;
        var whole = parts.Sum(part => part.Amount);
        decimal[] amounts = [whole, year.RequiredRevenue, year.Planned ?? 0, year.Received ?? 0];
        var scale = new Scale(0, decimal.Max(amounts.Max(), 0.000001m), Picture.Margin, Picture.Right);
        StackedBar.Draw(picture, scale, top, BarHeight, parts);
        var y = StackedBar.List(picture, top + BarHeight + 22, year.Currency, parts) + 34;
        if (whole > year.RequiredRevenue)
        {
            var elsewhere = Money(year, whole - year.RequiredRevenue);
            y = picture.Paragraph(Picture.Margin, y - 8, $"Other income pays {elsewhere} of it; the rest must come from sales.", Picture.Inner,
                Picture.Small) + 11;
        }

        if (year is { Planned: { } planned, NotPlanned: { } notPlanned })
            y = Against(picture, scale, y, year, (planned, "planned"), (notPlanned, "not planned yet"));
        if (year is { Received: { } received, StillToCome: { } stillToCome })
            y = Against(picture, scale, y, year, (received, "come in so far"), (stillToCome, "still to come"));
        return picture.Render(y - 10, isPrinted);
    }

    /// <summary>Its first and its last day.</summary>
    public static string Days(YearAnswer year) =>
        $"{DisplayText.Date(year.YearStart)} to {DisplayText.Date(year.YearStart.AddYears(1).AddDays(-1))}";

    /// <summary>A bar for an amount, up to the line at what the year must bring in.</summary>
    private static decimal Against(Picture picture, Scale scale, decimal y, YearAnswer year, (decimal Amount, string Words) has,
        (decimal Amount, string Words) lacks)
    {
        var ending = lacks.Amount > 0 ? $"{Money(year, lacks.Amount)} {lacks.Words}" : "enough";
        var start = $"{Money(year, has.Amount)} {has.Words}";
        var down = TextMetrics.Width(start, Picture.Small) + TextMetrics.Width(ending, Picture.Small) + 12 > Picture.Inner
            ? Picture.LineOf(Picture.Small)
            : 0; // long amounts stand below each other
        picture.Group($"{has.Words}: {Money(year, has.Amount)}, {ending}", () =>
        {
            picture.Words(Picture.Margin, y, start, Picture.Small);
            y += down;
            picture.Words(Picture.Right, y, ending, Picture.Small, lacks.Amount > 0 ? Palette.Floor : Palette.Text, "end");
            var end = scale.At(has.Amount);
            picture.Box(scale.At(0), y + 8, end - scale.At(0), 18, Palette.Green, Hatch.None, Palette.Text);
            picture.Box(end, y + 8, scale.At(year.RequiredRevenue) - end, 18, null, Hatch.Crossed, Palette.Floor, Dash.Dashed);
            picture.Line(scale.At(year.RequiredRevenue), y + 3, scale.At(year.RequiredRevenue), y + 31, Palette.Text, thick: 3);
        });
        return y + RowHeight;
    }

    /// <summary>The parts above 0: the largest kinds of cost, the rest of them together, household, tax.</summary>
    private static List<StackedPart> PartsOf(YearAnswer year)
    {
        var costs = year.Parts.Where(part => part.Part == RevenuePartOf.Expenses && part.Amount > 0).ToList();
        var shown = costs.Count > KindsShown + 1 ? KindsShown : costs.Count;
        var parts = costs.Take(shown).Select((part, i) =>
            new StackedPart(Letter(i), DisplayText.Kind(part.CostKind!.Value), part.Amount, s_kinds[i].Palette, s_kinds[i].Hatch)).ToList();
        if (costs.Count > shown)
            parts.Add(new StackedPart(Letter(shown), "all other costs", costs.Skip(shown).Sum(part => part.Amount), s_kinds[shown].Palette,
                s_kinds[shown].Hatch));
        foreach (var (of, words, palette, hatch) in new[]
                 { (RevenuePartOf.Household, "household", Palette.Green, Hatch.None), (RevenuePartOf.Tax, "tax", Palette.Lilac, Hatch.Squares) })
            if (year.Parts.FirstOrDefault(part => part.Part == of) is { Amount: > 0 } found)
                parts.Add(new StackedPart(Letter(parts.Count), words, found.Amount, palette, hatch));
        return parts;
    }

    private static char Letter(int place) => (char)('a' + place);

    private static string Money(YearAnswer year, decimal amount) => DisplayText.Money(amount, year.Currency);

    private static string Description(YearAnswer year, IReadOnlyList<StackedPart> parts) =>
        $"The year must bring in {Money(year, year.RequiredRevenue)} {year.Currency}: "
        + string.Join(", ", parts.Select(part => $"{part.Words} {Money(year, part.Amount)}")) + "."
        + (year.Planned is { } planned ? $" Planned: {Money(year, planned)}, {Money(year, year.NotPlanned!.Value)} not planned yet." : "")
        + (year.Received is { } received ? $" Come in: {Money(year, received)}, {Money(year, year.StillToCome!.Value)} still to come." : "");
}
