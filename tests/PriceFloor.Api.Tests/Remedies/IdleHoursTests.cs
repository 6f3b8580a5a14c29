using PriceFloor.Api.Tests.Plans;
using Xunit;

namespace PriceFloor.Api.Tests.Remedies;

/// <summary>Working faster closes nothing of a year whose hours lie idle, so the ways to fix a price say so where a plan shows it.</summary>
public sealed class IdleHoursTests
{
    [Fact]
    public async Task A_plan_that_leaves_hours_idle_is_said_beside_working_faster()
    {
        await using var studio = await WorkedStudio.Create();
        Assert.Empty(await Idle(studio, "/v1/designs/RB-014/remedies?channel=web"));
        Assert.Empty(await Idle(studio, "/v1/remedies"));
        await studio.Has("/v1/plans/2026", WorkedPlan.Steady.ToJsonString());
        foreach (var address in new[] { "/v1/designs/RB-014/remedies?channel=web", "/v1/remedies" })
            Assert.StartsWith("The plan \"2026\" takes 781.", Assert.Single(await Idle(studio, address)), StringComparison.Ordinal);
        Assert.Empty(await Idle(studio, "/v1/designs/PN-007/remedies?channel=web")); // it carries its share: there is nothing to hurry for
    }

    [Fact]
    public async Task One_plan_that_needs_every_hour_is_enough_to_leave_the_way_open()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/plans/2026", WorkedPlan.Steady.ToJsonString());
        var full = WorkedPlan.Steady;
        full["hoursKeptBack"] = 400; // 1,131 - 400 = 731 of 781.7 hours
        await studio.Has("/v1/plans/full", full.ToJsonString());
        Assert.Empty(await Idle(studio, "/v1/designs/RB-014/remedies?channel=web"));
    }

    private static async Task<List<string?>> Idle(Studio studio, string address) =>
    [
        .. (await studio.Get(address)).Json.GetProperty("warnings").EnumerateArray()
            .Where(one => one.GetProperty("code").GetString() == "hours-not-short").Select(one => one.GetProperty("message").GetString()),
    ];
}
