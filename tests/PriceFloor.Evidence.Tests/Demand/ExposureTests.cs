using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Shelves;
using Xunit;

namespace PriceFloor.Evidence.Tests.Demand;

/// <summary>In which days a design could be bought, and what each of them weighs.</summary>
public sealed class ExposureTests
{
    [Fact]
    public void Days_without_a_piece_do_not_count()
    {
        // Two made on day 0, sold on days 6 and 13; one more on day 70, unsold on day 83: days 0 to 13 and 70 to 83, 28 days.
        var offer = Offer([NineDesigns.Made(0, 2), Sold(6), Sold(13), NineDesigns.Made(70, 1)], [], 83);
        Assert.Equal(Exposure.InStock, offer.Offer.Exposure);
        Assert.Equal([Span(0, 13), Span(70, 83)], offer.Offer.Days);
        Assert.Equal((2m, 4m), (offer.All.Orders, offer.All.Exposure));
        // 56 of 84 days.
        Assert.Equal(1 - 28m / 84, offer.Offer.SoldOutShare);
    }

    [Fact]
    public void A_piece_made_and_sold_on_one_day_was_there_that_day()
    {
        var offer = Offer([NineDesigns.Made(3, 1), Sold(3)], [], 20);
        Assert.Equal([Span(3, 3)], offer.Offer.Days);
        Assert.Equal(1m / 7, offer.All.Exposure);
    }

    [Fact]
    public void Where_more_was_sold_than_made_the_listed_days_count()
    {
        var offer = Offer([NineDesigns.Made(0, 1), Sold(6), Sold(13)], [new(NineDesigns.FirstDay, 50)], 13);
        Assert.Equal((Exposure.Listed, 2m), (offer.Offer.Exposure, offer.All.Exposure));
        Assert.Null(offer.Offer.SoldOutShare);
    }

    [Fact]
    public void Days_on_which_it_was_not_listed_do_not_count()
    {
        var day = NineDesigns.FirstDay;
        var offer = Offer([Sold(6)], [new(day, 50), new(day.AddDays(14), null), new(day.AddDays(28), 55)], 41);
        Assert.Equal([Span(0, 13), Span(28, 41)], offer.Offer.Days);
        Assert.Equal([(50m, 2m), (55m, 2m)], offer.Runs.Select(run => (run.Price!.Value, run.Sales.Exposure)));
    }

    [Fact]
    public void Where_nothing_else_is_known_it_is_from_the_first_sale_to_the_last()
    {
        var offer = Offer([Sold(10), Sold(30)], [], 100);
        Assert.Equal((Exposure.FirstToLastSale, 3m), (offer.Offer.Exposure, offer.All.Exposure));
        Assert.Null(offer.Runs[0].Price);
        Assert.Null(offer.LastChange);
    }

    [Fact]
    public void Lines_say_what_was_asked_when_no_list_does()
    {
        var offer = Offer([Sold(0) with { Listed = 40 }, Sold(14) with { Listed = 40 }, Sold(28) with { Listed = 45 }, Sold(41) with { Listed = 45 }],
            [], 41);
        Assert.Equal([(40m, 2m, 4m), (45m, 2m, 2m)],
            offer.Runs.Select(run => (run.Price!.Value, run.Sales.Orders, run.Sales.Exposure)));
    }

    [Fact]
    public void A_gallery_sells_only_what_was_sent_there()
    {
        // Ten in the studio from day 0, one of them at the gallery from day 7 to 13.
        var sent = NineDesigns.Made(7, 1) with { What = MovementKind.Sent, Channel = NineDesigns.Web };
        var offer = Offer([NineDesigns.Made(0, 10), sent, Sold(13)], [], 83);
        Assert.Equal([Span(7, 13)], offer.Offer.Days);
    }

    [Fact]
    public void A_fair_is_one_event_even_if_it_takes_three_days()
    {
        var stall = RiverDrop.Channel with { Stall = new Stall { Pieces = 10, TimesAYear = 6 } };
        var demand = NineDesigns.Of([Sold(0), Sold(1), Sold(2), Sold(90), Sold(97)], _ => [new(NineDesigns.FirstDay, 50)],
            NineDesigns.FirstDay.AddDays(120),
            stall).On(NineDesigns.Sku, NineDesigns.Web)!;
        Assert.Equal((Exposure.Events, 5m, 2m), (demand.Offer.Exposure, demand.All.Orders, demand.All.Exposure));
        // Six a year: half of one in 365/12 days, three in 182.5.
        Assert.Equal(6m, demand.TimeOf(365));
        // Nothing is known before: (1/2 + 5)/2 an event, six times a year.
        Assert.Equal((2.75m, 16.5m), (demand.Rate!.Value.Value, demand.OrdersAYear));
    }

    [Fact]
    public void An_order_of_twelve_is_one_decision()
    {
        var offer = Offer([Sold(0) with { Pieces = 12 }, Sold(7)], [], 7);
        Assert.Equal((2m, 6.5m), (offer.All.Orders, offer.Offer.PiecesPerOrder));
    }

    [Fact]
    public void Lines_of_one_order_are_one_order()
    {
        var order = LineId.OfText("10231");
        Assert.Equal(1, Offer([Sold(0) with { Order = order }, Sold(0) with { Order = order }], [], 7).All.Orders);
    }

    [Fact]
    public void Seconds_are_no_demand_for_the_design() =>
        Assert.Equal(1, Offer([Sold(0), Sold(3) with { Grade = Grade.Second }], [], 7).All.Orders);

    [Fact]
    public void A_december_of_many_orders_weighs_more()
    {
        // A whole year: one order on the first of each month but 25 in December. (1+10)*12/(36+120) = 0.846153.., (25+10)*12/156 = 2.6923..
        var days = Enumerable.Range(1, 11).Select(month => new DateOnly(2027, month, 1))
            .Concat(Enumerable.Range(1, 25).Select(day => new DateOnly(2027, 12, day))).ToList();
        var seasons = Seasons.Of(days, new DateOnly(2027, 12, 31));
        Assert.True(seasons.IsKnown);
        Assert.Equal((11m * 12 / 156, 35m * 12 / 156), (seasons.Weights[0], seasons.Weights[11]));
        Assert.Equal(12m, decimal.Round(seasons.Weights.Sum(), 20));
        // The last week of November and the first of December.
        Assert.Equal(decimal.Round((11m + 35) * 12 / 156, 20),
            decimal.Round(seasons.Weeks(new DaySpan(new(2027, 11, 24), new(2027, 12, 7))), 20));
    }

    [Fact]
    public void Less_than_a_whole_year_says_nothing_of_seasons()
    {
        Assert.False(Seasons.Of([new(2027, 1, 2), new(2027, 12, 1)], new DateOnly(2027, 12, 31)).IsKnown);
        Assert.False(Seasons.Of([], new DateOnly(2027, 12, 31)).IsKnown);
    }

    [Fact]
    public void Only_whole_years_count()
    {
        // From 2026-07-01 to 2027-12-31 one whole year: the orders of 2026 are left out, so January 2027's single order is 11*12/121.
        var seasons = Seasons.Of([new(2026, 7, 1), new(2026, 12, 31), new(2027, 1, 1)], new DateOnly(2027, 12, 31));
        Assert.Equal((11m * 12 / 121, 10m * 12 / 121), (seasons.Weights[0], seasons.Weights[6]));
    }

    private static Movement Sold(int day) => NineDesigns.Sold(0, day);

    private static DaySpan Span(int from, int to) => new(NineDesigns.FirstDay.AddDays(from), NineDesigns.FirstDay.AddDays(to));

    private static DesignDemand Offer(IReadOnlyList<Movement> lines, IReadOnlyList<PriceStep> listed, int to) =>
        NineDesigns.Of([.. lines.Select((line, position) => line with { Position = position + 1 })], _ => listed, NineDesigns.FirstDay.AddDays(to))
            .On(NineDesigns.Sku, NineDesigns.Web)!;
}
