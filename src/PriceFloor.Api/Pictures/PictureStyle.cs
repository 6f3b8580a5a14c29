using System.Text;

namespace PriceFloor.Api.Pictures;

/// <summary>The style of one drawing; every rule begins with its id, so it changes nothing else in a page.</summary>
public static class PictureStyle
{
    /// <param name="id">The drawing's id.</param>
    /// <param name="isPrinted">Without the colours of dark paper.</param>
    public static string For(string id, bool isPrinted = false)
    {
        var css = new StringBuilder(
            $"#{id}{{font-family:system-ui,'Segoe UI',Roboto,'Helvetica Neue',Arial,sans-serif;font-variant-numeric:tabular-nums}}");
        css.Append($"#{id} .hollow{{fill:none}}#{id} .dashed{{stroke-dasharray:7 4}}#{id} .dotted{{stroke-dasharray:1.5 3.5}}");
        css.Append($"#{id} .hatch{{fill:none;stroke-width:1;stroke-opacity:.45}}#{id} .dot{{stroke-width:2;stroke-linecap:round}}");
        Inks(css, id, ink => ink.Light);
        if (isPrinted)
            return css.ToString();
        css.Append("@media (prefers-color-scheme:dark){");
        Inks(css, id, ink => ink.Dark);
        return css.Append('}').ToString();
    }

    private static void Inks(StringBuilder css, string id, Func<Palette, string> colour)
    {
        foreach (var ink in Palette.All)
            css.Append($"#{id} .f-{ink.Name}{{fill:{colour(ink)}}}#{id} .s-{ink.Name}{{stroke:{colour(ink)}}}");
        css.Append($"#{id} .hatch{{stroke:{colour(Palette.Text)}}}");
    }
}
