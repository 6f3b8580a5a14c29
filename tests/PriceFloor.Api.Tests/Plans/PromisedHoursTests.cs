using PriceFloor.Api.Tests.Quotes;
using Xunit;

namespace PriceFloor.Api.Tests.Plans;

/// <summary>Work that is promised to clients takes hours of the year: a plan that keeps fewer back is told so, and never changed.</summary>
public sealed class PromisedHoursTests
{
    private const string Sold = """{"through":"2027-01-31","sold":[]}""";

    [Fact]
    public async Task A_plan_that_keeps_too_few_hours_back_for_accepted_quotes_is_told_so()
    {
        await using var studio = await WithPlan(10);
        await studio.HasAccepted("Q-1", 7);
        Assert.Empty(await Told(studio));
        studio.Clock.Advance(TimeSpan.FromHours(1));
        var before = studio.Clock.GetUtcNow();
        studio.Clock.Advance(TimeSpan.FromHours(1));
        await studio.HasAccepted("Q-2", 5.25m); // 12.25 h promised
        Assert.Equal(["Accepted quotes still take 12.3 hours, and the plan keeps 10 back."], await Told(studio));
        Assert.Equal(await Told(studio), Messages(await studio.Send("POST", "/v1/plans/2027/progress", Sold)));
        Assert.Equal(await Told(studio), Messages(await studio.Post("/v1/plan-months", """{"plan":"2027"}""")));
        Assert.Empty(await Told(studio, $"?asOf={before:yyyy-MM-ddTHH:mm:ssZ}"));
        await studio.Has("/v1/quotes/Q-1/actual", """{"benchHours":8}"""); // done: 5.25 h are left
        Assert.Empty(await Told(studio));
    }

    [Fact]
    public async Task What_the_plan_keeps_back_to_the_hour_is_enough()
    {
        await using var studio = await WithPlan(12.25m);
        await studio.HasAccepted("Q-1", 12.25m);
        Assert.Empty(await Told(studio));
    }

    [Fact]
    public async Task Hours_promised_of_another_profile_do_not_count_and_a_profile_that_was_sent_has_none()
    {
        await using var studio = await WithPlan(0);
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.HasAccepted("Q-1", 3);
        Assert.NotEmpty(await Told(studio));
        Assert.Empty(Messages(await studio.Post("/v1/plan-months", """{"plan":"2027","profile":"other"}""")));
        Assert.Empty(Messages(await studio.Post("/v1/plan-months", $$"""{"plan":"2027","profile":{{Sample.SmallProfile}} }""")));
    }

    private static async Task<Studio> WithPlan(decimal keptBack)
    {
        var studio = await QuotingStudio.Small();
        await studio.Has("/v1/plans/2027", FormattableString.Invariant(
            $$"""{"profile":"main","hoursKeptBack":{{keptBack}},"lines":[{"sku":"RB-014","channel":"web","price":120,"units":300}]}"""));
        return studio;
    }

    private static async Task<List<string>> Told(Studio studio, string query = "") => Messages(await studio.Get("/v1/plans/2027/months" + query));

    private static List<string> Messages(Answer answer)
    {
        Assert.True(answer.Status == 200, answer.Text);
        return [.. answer.Json.GetProperty("warnings").EnumerateArray()
            .Where(warning => warning.GetProperty("code").GetString() == "quotes-not-kept-back"
                && warning.GetProperty("pointer").GetString() == "#/hoursKeptBack")
            .Select(warning => warning.GetProperty("message").GetString()!)];
    }
}
