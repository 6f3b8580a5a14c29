using System.Xml.Linq;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.Evidence.Logged;

/// <summary>The picture of how work got quicker.</summary>
public sealed class LearningPictureTests
{
    private const string Path = "/v1/designs/RB-014/learning.svg";

    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    /// <summary>
    /// Worked example of the model: y(1) = 77.914, today 48.197, rate 0.925709; 12 entries; 8 minutes of annealing are not hurried.
    /// </summary>
    [Fact]
    public async Task It_has_a_dot_for_each_entry_the_curve_today_and_what_nobody_can_hurry()
    {
        await using var studio = await RiverDropLog.Logged();
        var answer = await studio.Get($"{Path}?to={RiverDropLog.LastDay}");
        Assert.Equal((200, "image/svg+xml"), (answer.Status, answer.ContentType));
        var picture = XDocument.Parse(answer.Text).Root!;
        Assert.Equal(12, picture.Elements(s_svg + "g").Count());
        Assert.Equal("Pieces 1 to 12: 66 min each", picture.Elements(s_svg + "g").First().Element(s_svg + "title")!.Value); // 792 / 12
        Assert.Equal("River drop pendant (RB-014). First 77.9 min, today 48.2 min; each doubling leaves 92.6 % of the time. 144 pieces begun. "
            + "Of each piece 8 min cannot be hurried.", picture.Element(s_svg + "desc")!.Value);
        Assert.Single(picture.Elements(s_svg + "path"));
        Assert.Contains("today", answer.Text, StringComparison.Ordinal);

        // today's line is 40.2 minutes above the top of the foot, which is 8 minutes high: 40.2 / 8 = 5.02 times its height
        var foot = picture.Elements(s_svg + "rect").Where(box => Class(box) == "f-grey").MaxBy(box => Number(box, "width"))!;
        var today = picture.Elements(s_svg + "line").Where(line => Class(line) == "s-target dashed").Max(line => Number(line, "y1"));
        Assert.Equal(5.0m, decimal.Round((Number(foot, "y") - today) / Number(foot, "height"), 1));
    }

    [Fact]
    public async Task It_has_a_tag_and_is_not_sent_again()
    {
        await using var studio = await RiverDropLog.Logged();
        var first = await studio.Get($"{Path}?to={RiverDropLog.LastDay}");
        Assert.Equal(304, (await studio.Get($"{Path}?to={RiverDropLog.LastDay}", null, ("If-None-Match", first["ETag"]!))).Status);
        await studio.BenchSheet("source=bench-book", "ref,on,sku,started,good,minutes\n99,2027-12-31,RB-014,12,12,560\n");
        Assert.NotEqual(first["ETag"], (await studio.Get($"{Path}?to={RiverDropLog.LastDay}"))["ETag"]);
    }

    [Fact]
    public async Task Without_a_curve_it_says_why_and_shows_the_entries()
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.BenchSheet("source=bench-book", "ref,on,sku,started,good,minutes\n1,2027-01-01,RB-014,12,12,560\n");
        var answer = await studio.Get(Path);
        Assert.Contains("No learning curve: too few entries", answer.Text, StringComparison.Ordinal);
        Assert.Single(XDocument.Parse(answer.Text).Root!.Elements(s_svg + "g"));
        Assert.Empty(XDocument.Parse(answer.Text).Root!.Elements(s_svg + "path"));
    }

    [Fact]
    public async Task Without_minutes_there_is_nothing_to_draw()
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        var answer = await studio.Get(Path);
        answer.IsProblem(422, "cannot-compute");
        Assert.Contains("nothing-logged", answer.Text, StringComparison.Ordinal);
    }

    private static string? Class(XElement element) => element.Attribute("class")?.Value;

    private static decimal Number(XElement element, string name) =>
        decimal.Parse(element.Attribute(name)!.Value, System.Globalization.CultureInfo.InvariantCulture);
}
