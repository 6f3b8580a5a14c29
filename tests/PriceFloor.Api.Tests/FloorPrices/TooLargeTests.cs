using Xunit;

namespace PriceFloor.Api.Tests.FloorPrices;

/// <summary>
/// Documents that are each valid, but whose figures together are too large to be exact: a problem that says so, never a fault of the service.
/// </summary>
public sealed class TooLargeTests
{
    // 2,000,000 helpers' hours, and a piece of 0.000001 minutes for a million at a time: an hour at the bench would earn
    // 10^12 / (10^-12 / 60), some 6 x 10^25.
    private const string Helped =
        """{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":24000,"per":"year"}],"helpers":[{"benchHoursPerYear":1000000},{"benchHoursPerYear":1000000}]}""";
    private const string Instant = """{"profile":"main","making":{"steps":[{"handsOnMinutes":0.000001,"batchSize":1000000}]}}""";

    // Six steps that each lose nearly all: 10^24 starts, of which the rejected ones bring 1,000 each.
    private const string Lossy =
        """{"profile":"main","making":{"steps":[{"handsOnMinutes":1,"goodShare":0.0001},{"handsOnMinutes":1,"goodShare":0.0001},{"handsOnMinutes":1,"goodShare":0.0001},{"handsOnMinutes":1,"goodShare":0.0001},{"handsOnMinutes":1,"goodShare":0.0001},{"handsOnMinutes":1,"goodShare":0.0001}]},"seconds":{"share":1,"price":1000}}""";

    private const string Plain = """{"sells":"retail","currency":"USD"}""";

    [Theory]
    [InlineData(Instant, "/v1/price-checks?sku=A&channel=web&price=1000000000000")] // 6 x 10^25 an hour over 2,002,000 hours of the year
    [InlineData(Instant, "/v1/designs/A/break-even.svg?channel=web&price=1000000000000")] // a scale for 10^20 pieces at 10^12
    [InlineData(Lossy, "/v1/designs/A/break-even?channel=web&price=58&planned=1000000")] // a million pieces that leave 10^27 each
    public async Task A_question_whose_figures_are_too_large_to_be_exact_is_refused(string design, string question)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Helped);
        await studio.Has("/v1/designs/A", design);
        await studio.Has("/v1/channels/web", Plain);
        Assert.Equal("too-large", (await studio.Get(question)).IsProblem(422, "cannot-compute").Json.GetProperty("reason").GetString());
    }

    [Fact]
    public async Task A_line_of_a_batch_that_passes_exactness_does_not_stop_the_others()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Helped);
        await studio.Has("/v1/designs/A", Instant);
        await studio.Has("/v1/channels/web", Plain);
        var items = (await studio.Post("/v1/price-checks/batch",
            """[{"sku":"A","channel":"web","price":1000000000000},{"sku":"A","channel":"web","price":58}]""")).Json.GetProperty("items");
        Assert.Equal("too-large", items[0].GetProperty("reason").GetString());
        Assert.Equal("meets-target", items[1].GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task A_chain_that_loses_nearly_everything_is_refused_when_it_is_stored()
    {
        // Eight steps at 0.0001 are 10^32 starts for a good piece.
        var making = $$"""{"steps":[{{string.Join(',', Enumerable.Repeat("""{"handsOnMinutes":1,"goodShare":0.0001}""", 8))}}]}""";
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Helped);
        Assert.Equal(["too-large"],
            (await studio.Put("/v1/designs/A", $$"""{"profile":"main","making":{{making}} }""")).IsProblem(422, "invalid-input").Codes);
        var batch = await studio.Post("/v1/designs/batch",
            $$"""[{"key":"B","profile":"main","making":{"minutesPerPiece":30} },{"key":"A","profile":"main","making":{{making}} }]""");
        Assert.Equal(("#/1", "too-large"), (Assert.Single(batch.IsProblem(422, "invalid-input").Pointers), Assert.Single(batch.Codes)));
    }
}
