using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>What a channel charges and the profile traces to sales: counted twice, or nowhere.</summary>
public sealed class ChannelWarningsTests
{
    private static readonly CostProfile s_quiet = QuietStudio.Profile;

    [Fact]
    public void Channel_costs_counted_twice_or_nowhere()
    {
        var year = StudioYear.Of(s_quiet, default).Value;
        var traced = StudioYear.Of(s_quiet with { Expenses = [new Expense { Amount = 1, Per = Per.Year, TracedTo = TracedTo.Sale }] }, default).Value;
        var bare = new Channel { Sells = Sells.Retail, Currency = "USD", ShopShare = 0.4m };
        foreach (var dear in new[]
        {
            bare with { Fees = [new Fee { Rate = 0.01m }] },
            bare with { CostPerPiece = 1 },
            bare with { Shipping = new Shipping { Cost = 1 } },
            bare with { Stall = new Stall { Cost = 1, Pieces = 1 } },
        })
        {
            Assert.Equal(["channel-costs-not-traced"], Warnings.In(dear, year, "/channel", []).Select(warning => warning.Code.Word));
            Assert.Empty(Warnings.In(dear, traced, "/channel", []));
        }

        Assert.Equal(["traced-sale-costs-unused"], Warnings.In(bare, traced, "/channel", []).Select(warning => warning.Code.Word));
        Assert.Empty(Warnings.In(bare, year, "/channel", []));
    }

    [Theory]
    [InlineData(CostKind.CommissionsAndFees, "/channel/fees")]
    [InlineData(CostKind.Shipping, "/channel/shipping")]
    [InlineData(CostKind.Packaging, "/channel/costPerPiece")]
    [InlineData(CostKind.ShowsAndStalls, "/channel/stall")]
    public void What_a_channel_charges_is_held_against_traced_lines_of_its_own_kind(CostKind kind, string pointer)
    {
        // A channel that charges all four; all but one are traced: that one may be counted twice.
        var bare = new Channel { Sells = Sells.Retail, Currency = "USD" };
        var all = bare with
        {
            Fees = [new Fee { Rate = 0.01m }],
            Shipping = new Shipping { Cost = 1 },
            CostPerPiece = 1,
            Stall = new Stall { Cost = 1, Pieces = 1 },
        };
        CostKind[] kinds = [CostKind.CommissionsAndFees, CostKind.Shipping, CostKind.Packaging, CostKind.ShowsAndStalls];
        Assert.Equal([("channel-costs-not-traced", pointer)],
            Warnings.In(all, Tracing([.. kinds.Except([kind])]), "/channel", []).Select(warning => (warning.Code.Word, warning.Pointer)));
        Assert.Empty(Warnings.In(all, Tracing(kinds), "/channel", []));

        // Only this one is traced, and this channel charges nothing: recovered nowhere, unless another channel charges it.
        Assert.Equal([("traced-sale-costs-unused", pointer)],
            Warnings.In(bare, Tracing(kind), "/channel", [bare]).Select(warning => (warning.Code.Word, warning.Pointer)));
        Assert.Empty(Warnings.In(bare, Tracing(kind), "/channel", [bare, all]));
    }

    [Fact]
    public void Every_kind_of_cost_makes_a_channel_one_that_charges()
    {
        var year = StudioYear.Of(s_quiet, default).Value;
        var bare = new Channel { Sells = Sells.Retail, Currency = "USD" };
        Channel[] dear =
        [
            bare with { Fees = [new Fee { Fixed = 0.3m }] },
            bare with { Fees = [new Fee { Minimum = 1 }] },
            bare with { Shipping = new Shipping { ReturnCost = 1 } },
        ];
        Assert.All(dear, channel => Assert.Equal("channel-costs-not-traced", Assert.Single(Warnings.In(channel, year, "/channel", [])).Code));
        // these charge nothing
        Assert.Empty(Warnings.In(bare with { Fees = [new Fee { Maximum = 1 }, new Fee { Minimum = 0 }], Stall = new Stall { Pieces = 30 } },
            year, "/channel", []));
    }

    private static StudioYear Tracing(params CostKind[] kinds) =>
        StudioYear.Of(s_quiet with
        {
            Expenses = [.. kinds.Select(kind => new Expense { Amount = 1, Per = Per.Year, CostKind = kind, TracedTo = TracedTo.Sale })],
        }, default).Value;
}
