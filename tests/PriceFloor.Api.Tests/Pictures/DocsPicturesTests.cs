using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Demo;
using PriceFloor.Api.Tests.Conventions;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Pictures;

/// <summary>
/// The pictures in docs/pictures are the answers for the invented studio. To rewrite them:
/// <c>WRITE_PICTURES=1 dotnet run --project tests/PriceFloor.Api.Tests -- --filter-class '*DocsPicturesTests'</c>
/// </summary>
public sealed class DocsPicturesTests
{
    private const string Folder = "docs/pictures";

    private static readonly (string File, string Path)[] s_pictures =
    [
        ("price-parts.svg", "/v1/designs/RB-014/price-parts.svg?channel=web"),
        ("price-parts-channels.svg", "/v1/designs/RB-014/price-parts.svg"),
        ("break-even.svg", "/v1/designs/PN-007/break-even.svg?channel=web&planned=420"),
        ("run-prices.svg", "/v1/designs/RB-014/run-prices.svg?channel=web&quantities=1,2,6,12,24,48,60"),
        ("price-ladder.svg", "/v1/price-list.svg?channel=web"),
        ("price-list.html", "/v1/price-list.html"),
        ("year.svg", "/v1/profiles/main/year.svg?planned=52000&received=21500"),
        ("year.html", "/v1/profiles/main/year.html?planned=52000&received=21500"),
        ("shelf.svg", "/v1/shelf.svg?profile=main&to=2025-12-31"),
        ("shelf.html", "/v1/shelf.html?profile=main&to=2025-12-31"),
        ("learning.svg", "/v1/designs/FG-003/learning.svg?to=2025-12-31"),
        ("line-sheet.html", "/v1/line-sheet.html?channel=wholesale"),
        ("plan-months.svg", "/v1/plans/this-year/months.svg"),
        ("plan-months.html", "/v1/plans/this-year/months.html"),
    ];

    private static readonly (string File, string Path, string Body)[] s_asked =
    [
        ("what-ifs.svg", "/v1/what-ifs.svg", """
            {"profile":"main","combined":true,"scenarios":[
              {"name":"glass +12 %","changes":[{"of":"main","at":"/materials/clear-rod/price","by":1.12},
                {"of":"main","at":"/materials/clear-tube/price","by":1.12},{"of":"main","at":"/materials/colour-rod/price","by":1.12},
                {"of":"main","at":"/materials/soft-rod/price","by":1.12},{"of":"main","at":"/materials/frit/price","by":1.12},
                {"of":"main","at":"/expenses/Rod, tube, colour, findings and gift boxes/amount","by":1.08}]},
              {"name":"rent +10 %","changes":[{"of":"main","at":"/expenses/Bench rent/amount","by":1.10}]},
              {"name":"45 weeks","changes":[{"of":"main","at":"/calendar/weeksPerYear","to":45}]}]}
            """),
        ("sureness.svg", "/v1/sureness.svg", """
            {"profile":"main","sku":"RB-014","channel":"web","price":58.00,"ranges":[
              {"of":"RB-014","at":"/making/steps/torch/handsOnMinutes","to":{"low":30,"high":42}},
              {"of":"RB-014","at":"/making/steps/torch/goodShare","to":{"low":0.90,"high":0.97}},
              {"of":"main","at":"/calendar/benchShare","to":{"low":0.52,"high":0.64}},
              {"of":"main","at":"/calendar/weeksPerYear","to":{"low":42,"high":47}},
              {"of":"main","at":"/materials/*/price","by":{"low":0.95,"high":1.12}}]}
            """),
    ];

    private static IEnumerable<string> Files =>
        s_pictures.Select(picture => picture.File).Concat(s_asked.Select(picture => picture.File)).Append("floor-history.svg");

    [Fact]
    public async Task The_pictures_in_the_docs_are_what_the_demo_studio_is_answered()
    {
        await using var studio = new Studio();
        _ = studio.ClientWith(null);
        studio.Services.GetRequiredService<DemoStudio>().Fill(studio.Services.GetRequiredService<Store>());
        foreach (var (file, path) in s_pictures)
            await IsWritten(file, await studio.Get(path));
        foreach (var (file, path, body) in s_asked)
            await IsWritten(file, await studio.Post(path, body));
        await AYearGoesBy(studio);
        await IsWritten("floor-history.svg", await studio.Get("/v1/designs/RB-014/floor-history.svg?channel=web"));
        Assert.Equal(Files.Order(),
            Directory.EnumerateFiles(Repository.File(Folder)).Select(file => Path.GetFileName(file)!).Order());
    }

    [Fact]
    public async Task Every_picture_is_used_with_words_for_those_who_cannot_see_it()
    {
        var pages = string.Concat(await Task.WhenAll(Directory.EnumerateFiles(Repository.File("docs"), "*.md").Append(Repository.File("README.md"))
            .Select(page => File.ReadAllTextAsync(page, Studio.Cancellation))));
        foreach (var file in Files)
            Assert.Matches($@"\[[^\]]{{20,}}\]\((docs/)?pictures/{file}\)", pages.Replace('\n', ' '));
    }

    /// <summary>Rent rises twice, the price follows, the torch work gets faster and shops begin to buy.</summary>
    private static async Task AYearGoesBy(Studio studio)
    {
        async Task Later(int days, string path, params (string Old, string New)[] changes)
        {
            studio.Clock.Advance(TimeSpan.FromDays(days));
            var stored = changes.Length == 0 ? "" : (await studio.Get(path)).Text;
            foreach (var (old, changed) in changes)
            {
                Assert.Contains(old, stored, StringComparison.Ordinal);
                stored = stored.Replace(old, changed, StringComparison.Ordinal);
            }

            await studio.Has(path, stored);
        }

        await Later(45, "/v1/profiles/main", ("\"name\":\"Bench rent\",\"amount\":540.00", "\"name\":\"Bench rent\",\"amount\":690.00"));
        await Later(60, "/v1/designs/RB-014/prices/web", ("58.00", "66.00"));
        await Later(50, "/v1/designs/RB-014", ("\"handsOnMinutes\":34", "\"handsOnMinutes\":29"));
        await Later(70, "/v1/designs/RB-014/prices/web", ("66.00", "104.00"));
        await Later(40, "/v1/profiles/main", ("\"name\":\"Bench rent\",\"amount\":690.00", "\"name\":\"Bench rent\",\"amount\":860.00"));
        studio.Clock.Advance(TimeSpan.FromDays(60));
    }

    private static async Task IsWritten(string file, Answer answer)
    {
        Assert.Equal((file, 200), (file, answer.Status));
        var path = Repository.File(Path.Combine(Folder, file));
        if (Environment.GetEnvironmentVariable("WRITE_PICTURES") is "1")
        {
            Directory.CreateDirectory(Repository.File(Folder));
            await File.WriteAllTextAsync(path, answer.Text, Studio.Cancellation);
        }

        Assert.True(File.Exists(path) && await File.ReadAllTextAsync(path, Studio.Cancellation) == answer.Text, $"{Folder}/{file} differs from what "
            + "the demo studio is answered; look at it and rewrite it: "
            + "WRITE_PICTURES=1 dotnet run --project tests/PriceFloor.Api.Tests -- --filter-class '*DocsPicturesTests'");
    }
}
