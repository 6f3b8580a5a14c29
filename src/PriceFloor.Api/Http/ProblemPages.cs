using System.Globalization;
using System.Net;

namespace PriceFloor.Api.Http;

/// <summary>A page for each problem type: its meaning and how to fix it.</summary>
public static class ProblemPages
{
    public static IResult Index() => HtmlPage.Answer("Problems", string.Concat(ProblemTypes.All.Select(type =>
        $"<li><a href=\"problems/{type.Slug}\">{type.Slug}</a> ({type.Status}): {WebUtility.HtmlEncode(type.Title)}</li>"))
            .Insert(0, "<ul>") + "</ul>");

    public static IResult Page(string slug) => ProblemTypes.All.FirstOrDefault(type => type.Slug == slug) is { } type
        ? HtmlPage.Answer(type.Title, string.Create(CultureInfo.InvariantCulture,
            $"<p>HTTP status {type.Status}, type <code>{type.Address}</code></p><h2>What it means</h2><p>{WebUtility.HtmlEncode(type.Meaning)}</p>"
            + $"<h2>How to fix it</h2><p>{WebUtility.HtmlEncode(type.Cure)}</p><p><a href=\"../problems\">All problems</a></p>"))
        : Problem.Of(ProblemTypes.NotFound, "There is no such problem type; /problems lists them.");
}
