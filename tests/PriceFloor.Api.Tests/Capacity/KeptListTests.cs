using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using Xunit;

namespace PriceFloor.Api.Tests.Capacity;

/// <summary>Complete answers are kept with the documents that they rest on. After a change nothing keeps answers, documents or floors.</summary>
public sealed class KeptListTests
{
    private const int Designs = 300;

    private static readonly string[] s_lists =
    [
        "/v1/price-list", "/v1/price-list?channel=web", "/v1/price-list?sort=short-by", "/v1/price-list?channel=web&sort=short-by",
        "/v1/price-list.html", "/v1/price-list.html?channel=web", "/v1/price-list.svg?channel=web",
    ];

    private static readonly string[] s_sheets =
        ["/v1/price-list", "/v1/price-list?channel=web", "/v1/price-list?sort=short-by", "/v1/price-list?channel=web&sort=short-by"];

    [Fact]
    public async Task What_belongs_to_documents_before_the_last_change_is_let_go()
    {
        await using var studio = new Studio();
        await HasManyDesigns(studio);
        var held = new List<Held>();
        for (var change = 1; change <= 200; change++)
        {
            await studio.Has("/v1/profiles/main", ProfileOf(change));
            await Asks(studio, change);
            if (change % 10 == 0)
            {
                Collect();
                Assert.Empty(held.Where(one => one.IsAlive).Select(one => $"{one.What}, after change {change}"));
            }

            held.AddRange(await HeldNow(studio, change));
        }

        Collect();
        Assert.Equal(3, held.Count(one => one.IsAlive)); // those of the last change: what is looked for above is what the service keeps
    }

    private static async Task HasManyDesigns(Studio studio)
    {
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/order", """{"sells":"wholesale","currency":"USD"}""");
        var lines = new StringBuilder();
        for (var i = 0; i < Designs; i++)
            lines.Append(CultureInfo.InvariantCulture, $$$"""{"key":"D-{{{i}}}","profile":"main","making":{"minutesPerPiece":{{{20 + i}}}}}""")
                .Append('\n');
        var stored = await studio.SendBytes("POST", "/v1/designs/batch", Encoding.UTF8.GetBytes(lines.ToString()), "application/x-ndjson");
        Assert.True(stored.Status == 200, stored.Text);
    }

    private static string ProfileOf(int change) =>
        Sample.SmallProfile.Replace("\"amount\":3000", $"\"amount\":{3000 + change}", StringComparison.Ordinal);

    /// <summary>Asks one of the lists, each in its turn.</summary>
    private static async Task Asks(Studio studio, int turn)
    {
        var question = turn % (s_lists.Length + s_sheets.Length);
        var answer = question < s_lists.Length
            ? await studio.Get(s_lists[question])
            : await studio.Get(s_sheets[question - s_lists.Length], headers: ("Accept", "text/csv"));
        Assert.True(answer.Status == 200, answer.Text);
    }

    /// <summary>What the service keeps of the present documents: the profile, a floor that rests on it, and an answer beside its own lists.</summary>
    private static async Task<IReadOnlyList<Held>> HeldNow(Studio studio, int change)
    {
        var catalogue = await studio.Services.GetRequiredService<CatalogueSource>().SeenBy(ProfileAccess.All).Whole(asOf: null);
        var profile = catalogue.Profile("main")!;
        return
        [
            new($"the profile of change {change}", new(profile)),
            new($"the floor of change {change}", new(catalogue.Floor(profile, catalogue.Design($"D-{change}")!).Value)),
            new($"the answer of change {change}", new(await catalogue.Kept((nameof(KeptListTests), change), () => Task.FromResult(new object())))),
        ];
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Collect()
    {
        for (var i = 0; i < 3; i++)
        {
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true);
            GC.WaitForPendingFinalizers();
        }
    }

    private sealed record Held(string What, WeakReference Reference)
    {
        public bool IsAlive => Reference.IsAlive;
    }
}
