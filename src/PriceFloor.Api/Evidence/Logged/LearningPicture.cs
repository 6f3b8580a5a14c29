using System.Text;
using PriceFloor.Api.Pictures;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>
/// Minutes a piece by how many had been begun: each entry of the bench log as a dot, the curve through them, what a piece takes today, and as a
/// hatched foot the minutes that nobody can hurry.
/// </summary>
public static class LearningPicture
{
    private const decimal Height = 220;

    private const int Points = 60;

    /// <param name="work">The entries and their curve.</param>
    /// <param name="design">The design's name for people.</param>
    public static byte[] Of(TimedWork work, string design)
    {
        var picture = new Picture("Minutes a piece", Description(work, design));
        var y = picture.Paragraph(Picture.Margin, 52, work.Step is null ? design : $"{design}, {work.Step}", Picture.Inner);
        y = picture.Paragraph(Picture.Margin, y, Summary(work), Picture.Inner, Picture.Small, Palette.Quiet) + 9;
        Key(picture, work, y);
        var (top, bottom) = (y + 31, y + 31 + Height);
        var minutes = work.Entries.Select(entry => entry.Minutes / entry.Started).ToList();
        var up = new Scale(0, decimal.Max(minutes.Max(), work.Fit?.First ?? 0) * 1.04m + 0.01m, bottom, top);
        var ticks = up.Ticks(5).ToList();
        var left = Picture.Margin + ticks.Max(tick => TextMetrics.Width(DisplayText.Number(tick), Picture.Small)) + 8;
        var across = new Scale(0, work.Pieces * 1.02m, left, Picture.Right);
        foreach (var tick in ticks)
        {
            picture.Line(left, up.At(tick), Picture.Right, up.At(tick), Palette.Grid);
            picture.Words(left - 8, up.At(tick) + 4.5m, DisplayText.Number(tick), Picture.Small, Palette.Quiet, "end");
        }

        picture.Box(left, up.At(work.Unhurried), Picture.Right - left, bottom - up.At(work.Unhurried), Palette.Grey, Hatch.Rising);
        picture.Line(left, bottom, Picture.Right, bottom, Palette.Quiet);
        picture.Words(Picture.Right, bottom + 19, Pieces(work.Pieces), Picture.Small, Palette.Quiet, "end");
        if (work.Fit is { } fit)
            Curve(picture, fit, across, up);
        Dots(picture, work, across, up);
        return picture.Render(bottom + 19 + Picture.Margin);
    }

    private static void Curve(Picture picture, LearningFit fit, Scale across, Scale up)
    {
        picture.Line(across.At(0), up.At(fit.Today.Value), Picture.Right, up.At(fit.Today.Value), Palette.Target, Dash.Dashed, 2);
        var path = new StringBuilder();
        foreach (var piece in Enumerable.Range(0, Points + 1).Select(point => 1 + (int)((long)(fit.Pieces - 1) * point / Points)).Distinct())
            path.Append(path.Length == 0 ? 'M' : 'L').Append(Svg.Number(across.At(piece))).Append(' ')
                .Append(Svg.Number(up.At(fit.MinutesOf(piece))));
        picture.Path(path.ToString(), Palette.Floor);
    }

    /// <summary>Each stands in the middle of its pieces.</summary>
    private static void Dots(Picture picture, TimedWork work, Scale across, Scale up)
    {
        var done = 0m;
        foreach (var entry in work.Entries)
        {
            var each = entry.Minutes / entry.Started;
            picture.Group($"Pieces {DisplayText.Number(done + 1)} to {DisplayText.Number(done + entry.Started)}: {Minutes(each)} each",
                () => picture.Disc(across.At(done + (entry.Started + 1) / 2m), up.At(each), 4, Palette.Text, Palette.Paper));
            done += entry.Started;
        }
    }

    private static void Key(Picture picture, TimedWork work, decimal y)
    {
        picture.Disc(Picture.Margin + 8, y - 5, 4, Palette.Text, Palette.Paper);
        picture.Words(Picture.Margin + 24, y, "an entry", Picture.Small);
        if (work.Fit is not null)
        {
            picture.Line(Picture.Margin + 96, y - 5, Picture.Margin + 124, y - 5, Palette.Floor, thick: 2);
            picture.Words(Picture.Margin + 132, y, "the curve", Picture.Small);
            picture.Line(Picture.Margin + 208, y - 5, Picture.Margin + 236, y - 5, Palette.Target, Dash.Dashed, 2);
            picture.Words(Picture.Margin + 244, y, "today", Picture.Small);
        }

        if (work.Unhurried == 0)
            return;
        picture.Box(Picture.Margin + 300, y - 13, 16, 16, Palette.Grey, Hatch.Rising, Palette.Text);
        picture.Words(Picture.Margin + 324, y, "not to be hurried", Picture.Small);
    }

    private static string Summary(TimedWork work) => work.Fit is { } fit
        ? $"First {Minutes(fit.First)}, today {Minutes(fit.Today.Value)}; each doubling leaves "
            + $"{DisplayText.Number(Rounding.Trim(Rounding.Nearest(fit.Rate.Value * 100, 1)))} % of the time"
        : "No learning curve: " + (work.NoFit switch
        {
            LearningFit.Absence.TooFewEntries => "too few entries",
            LearningFit.Absence.TooLittleGrowth => "too few pieces since the first entry",
            LearningFit.Absence.NotAboveFixedMinutes => "an entry takes no longer than what cannot be hurried",
            _ => "the pieces did not get quicker for sure",
        });

    private static string Minutes(decimal minutes) => $"{DisplayText.Number(Rounding.Trim(Rounding.Nearest(minutes, 1)))} min";

    private static string Pieces(long pieces) => pieces == 1 ? "1 piece begun" : $"{DisplayText.Number(pieces)} pieces begun";

    private static string Description(TimedWork work, string design)
    {
        var words = new StringBuilder($"{design}{(work.Step is null ? "" : ", " + work.Step)}. {Summary(work)}. {Pieces(work.Pieces)}.");
        if (work.Unhurried > 0)
            words.Append($" Of each piece {Minutes(work.Unhurried)} cannot be hurried.");
        return words.ToString();
    }
}
