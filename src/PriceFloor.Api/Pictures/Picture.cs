using System.Security.Cryptography;
using System.Text;

namespace PriceFloor.Api.Pictures;

/// <summary>
/// One drawing, 480 wide: narrow enough to read on a phone without turning it. Its id is made from its words, so a page can contain several; its
/// style is inside it, for light and dark.
/// </summary>
public sealed class Picture
{
    public const decimal Width = 480, Margin = 16, Right = Width - Margin, Inner = Width - 2 * Margin;
    public const decimal Heading = 18, Normal = 14, Small = 13;

    private readonly string _title, _description, _id;
    private readonly Svg _body = new();
    private readonly SortedSet<Hatch> _hatches = [];

    public Picture(string title, string description)
    {
        (_title, _description) = (title, description);
        _id = "pf-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(title + "\n" + description)).AsSpan(0, 5));
        Words(Margin, 30, title, Heading, bold: true, fit: Inner);
    }

    public void Words(decimal x, decimal y, string words, decimal size = Normal, Palette? ink = null, string? anchor = null,
        bool bold = false, decimal? fit = null)
    {
        var shown = fit is { } width ? TextMetrics.Into(width, words, size, bold) : words;
        _body.Words("text", shown, ("x", x), ("y", y), ("font-size", size), ("class", Fill(ink ?? Palette.Text)), ("text-anchor", anchor),
            ("font-weight", bold ? "bold" : null));
    }

    /// <summary>Words in as many lines as they need. Returns the y of the line below them.</summary>
    public decimal Paragraph(decimal x, decimal y, string words, decimal width, decimal size = Normal, Palette? ink = null, bool bold = false)
    {
        foreach (var line in TextMetrics.Lines(width, words, size, bold))
        {
            Words(x, y, line, size, ink, bold: bold);
            y += LineOf(size);
        }

        return y;
    }

    /// <summary>From one line of a paragraph to the next.</summary>
    public static decimal LineOf(decimal size) => size + 4;

    public void Box(decimal x, decimal y, decimal width, decimal height, Palette? fill = null, Hatch hatch = Hatch.None, Palette? outline = null,
        Dash dash = Dash.Solid)
    {
        if (width <= 0 || height <= 0)
            return;
        if (fill is not null)
            Shape("rect", [("x", x), ("y", y), ("width", width), ("height", height)], Fill(fill));
        if (hatch != Hatch.None)
        {
            _hatches.Add(hatch);
            _body.Shape("rect", ("x", x), ("y", y), ("width", width), ("height", height), ("fill", $"url(#{_id}-{hatch})"));
        }

        if (outline is not null)
            Shape("rect", [("x", x), ("y", y), ("width", width), ("height", height)], "hollow " + Stroke(outline, dash));
    }

    public void Line(decimal x1, decimal y1, decimal x2, decimal y2, Palette ink, Dash dash = Dash.Solid, decimal thick = 1) =>
        _body.Shape("line", ("x1", x1), ("y1", y1), ("x2", x2), ("y2", y2), ("class", Stroke(ink, dash)),
            ("stroke-width", thick == 1 ? null : thick));

    public void Path(string d, Palette ink, Dash dash = Dash.Solid, decimal thick = 2) =>
        _body.Shape("path", ("d", d), ("class", "hollow " + Stroke(ink, dash)), ("stroke-width", thick));

    public void Disc(decimal x, decimal y, decimal radius, Palette outline, Palette fill) =>
        _body.Shape("circle", ("cx", x), ("cy", y), ("r", radius), ("class", $"{Fill(fill)} {Stroke(outline, Dash.Solid)}"), ("stroke-width", 2));

    /// <summary>A group, with words for the tooltip, which also show names that were cut.</summary>
    public void Group(string words, Action draw)
    {
        _body.Open("g").Words("title", words);
        draw();
        _body.Close("g");
    }

    /// <summary>The whole file.</summary>
    /// <param name="height">Its height.</param>
    /// <param name="isPrinted">Always on light paper: it is in a page to print.</param>
    public byte[] Render(decimal height, bool isPrinted = false)
    {
        var svg = new Svg().Open("svg", ("xmlns", "http://www.w3.org/2000/svg"), ("id", _id),
            ("viewBox", $"0 0 {Svg.Number(Width)} {Svg.Number(height)}"), ("width", Width), ("height", height), ("role", "img"),
            ("aria-labelledby", $"{_id}-title {_id}-desc"));
        svg.Words("title", _title, ("id", _id + "-title")).Words("desc", _description, ("id", _id + "-desc"));
        svg.Raw($"<style>{PictureStyle.For(_id, isPrinted)}</style>\n");
        if (_hatches.Count > 0)
            svg.Raw("<defs>"
                + string.Concat(_hatches.Select(hatch =>
                    $"""<pattern id="{_id}-{hatch}" width="8" height="8" patternUnits="userSpaceOnUse">{Hatches.Tile(hatch)}</pattern>"""))
                + "</defs>\n");
        svg.Shape("rect", ("width", Width), ("height", height), ("class", Fill(Palette.Paper)));
        return Encoding.UTF8.GetBytes(svg.Raw(_body.ToString()).Close("svg").ToString());
    }

    private void Shape(string element, ReadOnlySpan<(string, object?)> attributes, string classes) =>
        _body.Shape(element, [.. attributes, ("class", classes)]);

    private static string Fill(Palette ink) => "f-" + ink.Name;

    private static string Stroke(Palette ink, Dash dash) => $"s-{ink.Name}{(dash == Dash.Solid ? "" : dash == Dash.Dashed ? " dashed" : " dotted")}";
}
