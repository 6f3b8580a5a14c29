using PriceFloor.Api.Tests.Plans;
using Xunit;

namespace PriceFloor.Api.Tests;

/// <summary>The worked studio with the worked plan in its steady year, under the key of each year that tests ask about.</summary>
public sealed class PlannedStudio : IAsyncLifetime
{
    public Studio Studio { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Studio = await WorkedStudio.Create();
        foreach (var year in new[] { "2026", "2027" })
            await Studio.Has($"/v1/plans/{year}", WorkedPlan.Steady.ToJsonString());
    }

    public ValueTask DisposeAsync() => Studio.DisposeAsync();
}
