using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>Computations read the present documents from memory; the answers never show it.</summary>
public sealed partial class PresentDocumentsTests
{
    private static readonly string[] s_figures = ["floor", "wholesale", "channels", "basis"];

    /// <summary>
    /// Odd revisions of the profile need 60.00 for a pendant, even ones 30.00: (24,000 + 36,000) or (24,000 + 6,000) over 1,000 pieces. The shop
    /// takes 2.4 % and 0.25: 60.25 / 0.976 = 61.7316, 30.25 / 0.976 = 30.9939, rounded up.
    /// </summary>
    [Theory]
    [InlineData("/v1/designs/RB-014/floor-price", "\"floor\":60.00,", "\"floor\":30.00,")]
    [InlineData("/v1/price-checks?sku=RB-014&channel=web&price=58", "\"verdict\":\"below-floor\"", "\"verdict\":\"below-target\"")]
    [InlineData("/v1/price-checks?sku=RB-014&channel=web&price=58", "\"floorPrice\":61.74,", "\"floorPrice\":31.00,")]
    [InlineData("/v1/price-list?channel=web", "\"floorPrice\":61.74,", "\"floorPrice\":31.00,")]
    public async Task No_answer_is_older_than_what_was_acknowledged_before_it_was_asked_for(string question, string odd, string even)
    {
        // The clock stands still, and a quick machine asks more often than the usual limit allows in a minute.
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_REQUESTS_PER_MINUTE", "1000000000"));
        await studio.HasASmallShop();
        var acknowledged = 1;
        var writing = Task.Run(async () =>
        {
            for (var revision = 2; revision <= 60; revision++)
            {
                var living = revision % 2 == 0 ? "500" : "3000";
                var answer = await studio.Put("/v1/profiles/main",
                    Sample.SmallProfile.Replace("\"amount\":3000", $"\"amount\":{living}", StringComparison.Ordinal));
                Assert.Equal($"\"{revision}\"", answer["ETag"]);
                Volatile.Write(ref acknowledged, revision);
            }
        }, Studio.Cancellation);
        var checks = Enumerable.Range(0, 4).Select(_ => Task.Run(async () =>
        {
            var asked = 0;
            while (!writing.IsCompleted)
            {
                var atLeast = Volatile.Read(ref acknowledged);
                var answer = (await studio.Get(question)).Text;
                var revision = int.Parse(Revision().Match(answer).Groups["number"].ValueSpan, CultureInfo.InvariantCulture);
                Assert.True(revision >= atLeast, $"main@{revision} was answered after main@{atLeast} was acknowledged");
                Assert.Contains(revision % 2 == 0 ? even : odd, answer, StringComparison.Ordinal);
                asked++;
            }

            return asked;
        }, Studio.Cancellation)).ToList();
        await writing;
        Assert.All(await Task.WhenAll(checks), asked => Assert.True(asked > 0));
    }

    [Fact]
    public async Task Whatever_is_written_the_answers_are_those_of_a_service_that_starts_on_the_same_store()
    {
        var random = new Random(7);
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/order", """{"sells":"wholesale","currency":"USD"}""");
        for (var i = 0; i < 60; i++)
        {
            var sku = $"D-{random.Next(4)}";
            _ = random.Next(7) switch
            {
                0 => await studio.Put("/v1/profiles/main",
                    Sample.SmallProfile.Replace("24000", random.Next(20000, 30000).ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)),
                1 => await studio.Delete($"/v1/designs/{sku}"),
                2 => await studio.Put($"/v1/designs/{sku}/prices/order", $$"""{"price":{{random.Next(20, 90)}}}"""),
                3 => await studio.Delete($"/v1/designs/{sku}/prices/order"),
                4 => await studio.Put("/v1/channels/web", Sample.Shop.Replace("0.024", $"0.0{random.Next(1, 9)}", StringComparison.Ordinal)),
                5 => await studio.Put($"/v1/designs/{sku}/prices/web", $$"""{"price":{{random.Next(20, 200)}}}"""),
                _ => await studio.Put($"/v1/designs/{sku}", $$"""{"profile":"main","making":{"minutesPerPiece":{{random.Next(20, 90)}} } }"""),
            };
            var now = studio.Clock.GetUtcNow().AddDays(1).ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
            foreach (var design in (await studio.Get("/v1/designs")).Json.GetProperty("items").EnumerateArray())
            {
                var path = $"/v1/designs/{design.GetProperty("key").GetString()}/floor-price";
                // With asOf the same question is answered from the store itself.
                Assert.Equal(Of((await studio.Get($"{path}?asOf={now}")).Json), Of((await studio.Get(path)).Json));
            }
        }
    }

    private static string Of(JsonElement floor) =>
        string.Join(' ', s_figures.Select(name => floor.GetProperty(name).GetRawText()));

    [GeneratedRegex("main@(?<number>[0-9]+)", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Revision();
}
