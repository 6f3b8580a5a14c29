namespace PriceFloor.Api.Pictures;

/// <summary>A colour on light paper and on dark. Words, pattern or shape also distinguish what is drawn in it.</summary>
public sealed record Palette(string Name, string Light, string Dark)
{
    public static readonly Palette Paper = new("paper", "#ffffff", "#15181d");

    // Words, and lines that matter: at least 4.5 to 1 against the paper.
    public static readonly Palette Text = new("text", "#1b1b1b", "#f1f1f1");
    public static readonly Palette Quiet = new("quiet", "#555a63", "#b7bdc8");
    public static readonly Palette Floor = new("floor", "#a12a17", "#ff9d87");
    public static readonly Palette Target = new("target", "#1d5aa0", "#93c4ff");

    /// <summary>Grid lines: they guide the eye and carry no information.</summary>
    public static readonly Palette Grid = new("grid", "#d6d9de", "#3b424d");

    // Fills with a letter in them: at least 4.5 to 1 against the text.
    public static readonly Palette Grey = new("grey", "#dcdcdc", "#4a4d52");
    public static readonly Palette Sky = new("sky", "#c4d6f5", "#2c4674");
    public static readonly Palette Blue = new("blue", "#a7c4ef", "#24508c");
    public static readonly Palette Teal = new("teal", "#bbe3ea", "#1b5867");
    public static readonly Palette Mint = new("mint", "#d3ecd8", "#2c553a");
    public static readonly Palette Rose = new("rose", "#f3cbd5", "#743046");
    public static readonly Palette Amber = new("amber", "#f7d7a6", "#70470f");
    public static readonly Palette Straw = new("straw", "#f1e8a8", "#5c540f");
    public static readonly Palette Lilac = new("lilac", "#d9cfeb", "#514378");
    public static readonly Palette Green = new("green", "#bfe3bd", "#28602d");
    public static readonly Palette Peach = new("peach", "#fbe0cc", "#6d4426");
    public static readonly Palette Ash = new("ash", "#e9e4da", "#55503f");
    public static readonly Palette Plum = new("plum", "#ecd3ea", "#67416a");
    public static readonly Palette Sea = new("sea", "#9ed8c6", "#11604f");

    public static IReadOnlyList<Palette> ForWords { get; } = [Text, Quiet, Floor, Target];

    public static IReadOnlyList<Palette> ForFills { get; } = [Grey, Sky, Blue, Teal, Mint, Rose, Amber, Straw, Lilac, Green, Peach, Ash, Plum, Sea];

    public static IReadOnlyList<Palette> All { get; } = [Paper, .. ForWords, Grid, .. ForFills];
}

/// <summary>The pattern that distinguishes one fill from another without colour.</summary>
public enum Hatch { None, Rising, Falling, Level, Upright, Crossed, Dots, Squares, Wide, Rings, Ticks }

/// <summary>The stroke that distinguishes one line from another without colour.</summary>
public enum Dash { Solid, Dashed, Dotted }

public static class Hatches
{
    /// <summary>The pattern's tile, 8 by 8.</summary>
    public static string Tile(Hatch hatch) => hatch switch
    {
        Hatch.Rising => """<path d="M-2 2l4-4M0 8l8-8M6 10l4-4" class="hatch"/>""",
        Hatch.Falling => """<path d="M-2 6l4 4M0 0l8 8M6-2l4 4" class="hatch"/>""",
        Hatch.Level => """<path d="M0 2h8M0 6h8" class="hatch"/>""",
        Hatch.Upright => """<path d="M2 0v8M6 0v8" class="hatch"/>""",
        Hatch.Crossed => """<path d="M0 8l8-8M0 0l8 8" class="hatch"/>""",
        Hatch.Dots => """<path d="M2 2h.01M6 6h.01" class="hatch dot"/>""",
        Hatch.Squares => """<path d="M0 4h8M4 0v8" class="hatch"/>""",
        Hatch.Wide => """<path d="M0 4h8" class="hatch"/>""",
        Hatch.Rings => """<circle cx="4" cy="4" r="2" class="hatch"/>""",
        Hatch.Ticks => """<path d="M1 3h2M5 7h2" class="hatch"/>""",
        _ => "",
    };
}
