using Xunit;

namespace PriceFloor.Evidence.Tests.Sheets;

/// <summary>Discount, fees and shipping of an order on the lines of a sheet.</summary>
public sealed class OrderAmountTests
{
    [Fact]
    public void A_discount_on_each_line_counts_once_and_is_spread_by_value()
    {
        var settled = Shop.Settled("""
            on,sku,pieces,price,order,discount,fees,ref
            2027-03-01,RB-014,1,30.00,7,10.00,2.00,7/1
            2027-03-01,AB-001,2,10.00,7,10.00,2.00,7/2
            """);

        // 10.00 over 30.00 and 20.00: 6.00 and 4.00; fees 1.20 and 0.80
        Assert.Equal("2027-03-01 Sold 1 RB-014 web 24.00\n2027-03-01 Sold 2 AB-001 web 16.00", Shop.Told(settled));
        Assert.Equal([1.20m, 0.80m], settled.Used.Select(line => line.Entry.Fees));
        Assert.Equal(40.00m, settled.Read.Money);
    }

    [Fact]
    public void On_one_line_only_and_with_a_minus_or_beside_zeros_it_is_the_same_amount()
    {
        foreach (var (one, other) in new[] { ("-10.00", ""), ("", "10.00"), ("10.00", "0.00"), ("-10.00", "10.00") })
        {
            var settled = Shop.Settled($"on,sku,pieces,price,order,discount\n2027-03-01,RB-014,1,30.00,7,{one}\n2027-03-01,AB-001,1,20.00,7,{other}");

            Assert.Equal([16.00m, 24.00m], settled.Used.Select(line => line.Money).Order());
        }
    }

    [Fact]
    public void What_cannot_be_divided_goes_to_the_largest_remainder_and_of_equals_to_the_first_line()
    {
        var settled = Shop.Settled("""
            on,sku,pieces,price,order,shippingCharged,shippingCost
            2027-03-01,RB-014,1,10.00,7,1.00,0.05
            2027-03-01,RB-014,1,10.00,7,,
            2027-03-01,RB-014,1,10.00,7,,
            """);

        // a third of 100 cents is 33, one cent left: first line. A third of 5 cents is 1, two left: the first two
        Assert.Equal([0.34m, 0.33m, 0.33m], settled.Used.OrderBy(line => line.Line).Select(line => line.Entry.ShippingCharged));
        Assert.Equal([0.02m, 0.02m, 0.01m], settled.Used.OrderBy(line => line.Line).Select(line => line.Entry.ShippingCost));
    }

    [Fact]
    public void Two_different_amounts_refuse_the_lines_of_that_order_alone()
    {
        var settled = Shop.Settled("""
            on,sku,pieces,price,order,discount
            2027-03-01,RB-014,1,30.00,7,10.00
            2027-03-01,AB-001,1,20.00,7,9.00
            2027-03-01,AB-001,1,20.00,8,9.00
            """);

        Assert.Equal("2 order-amounts-differ, 3 order-amounts-differ", Shop.Refused(settled));
        Assert.Equal("2027-03-01 Sold 1 AB-001 web 11.00", Shop.Told(settled));
        Assert.Equal(50.00m, settled.RefusedCount.Money);
    }

    [Fact]
    public void More_off_than_the_order_is_worth_is_out_of_range()
    {
        Assert.Equal("2 out-of-range", Shop.Refused(Shop.Settled("on,sku,pieces,price,order,discount\n2027-03-01,RB-014,1,30.00,7,30.01")));
        Assert.Equal(0m, Shop.Settled("on,sku,pieces,price,order,discount\n2027-03-01,RB-014,1,30.00,7,30.00").Read.Money);
    }

    [Fact]
    public void What_came_back_takes_nothing_of_the_orders_discount()
    {
        var settled = Shop.Settled("""
            on,sku,pieces,price,order,discount
            2027-03-01,RB-014,2,30.00,7,6.00
            2027-03-09,RB-014,-1,27.00,7,6.00
            """);

        Assert.Equal("2027-03-01 Sold 2 RB-014 web 54.00\n2027-03-09 Returned 1 RB-014 web 27.00", Shop.Told(settled));
    }

    [Fact]
    public void A_channel_in_yen_is_spread_in_whole_yen()
    {
        var fair = Shop.Web with { Channel = "fair" };
        var settled = Shop.Settled("on,sku,pieces,price,order,discount\n2027-03-01,RB-014,1,100,7,5\n2027-03-01,AB-001,1,100,7,", fair);

        Assert.Equal([97m, 98m], settled.Used.Select(line => line.Money).Order());
        Assert.Equal("2 out-of-range", Shop.Refused(Shop.Settled("on,sku,pieces,price,discount\n2027-03-01,RB-014,1,100,0.5", fair)));
    }
}
