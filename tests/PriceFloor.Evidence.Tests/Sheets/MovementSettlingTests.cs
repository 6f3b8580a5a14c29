using PriceFloor.Evidence.Sheets;
using Xunit;

namespace PriceFloor.Evidence.Tests.Sheets;

public sealed class MovementSettlingTests
{
    [Fact]
    public void Each_line_is_in_one_place_and_lines_and_money_add_up_to_what_was_read()
    {
        var sheet = Shop.Web with { Cancelled = ["void", "Refused by buyer"] };
        var settled = Shop.Settled("""
            on,sku,pieces,price,ref,status
            2027-03-01,RB-014,1,10.00,a,paid
            2027-03-01,RB-014,1,10.00,a,paid
            2027-03-02,RB-014,1,20.00,b,VOID
            2027-03-03,XX-999,2,30.00,c,paid
            2027-03-03,XX-999,1,5.00,d,paid
            2027-03-04,YY-111,1,40.00,e,paid
            2027-02-28,RB-014,1,50.00,f,paid
            2027-03-32,RB-014,1,70.00,g,paid
            2027-03-05,RB-014,1,1.00,h,refused by buyer
            """, sheet, new LogWindow(new DateOnly(2027, 3, 1), new DateOnly(2027, 3, 31)));

        Assert.Equal(new LineCount(1, 10m), settled.UsedCount);
        Assert.Equal(new LineCount(1, 10m), settled.Duplicate);
        Assert.Equal(new LineCount(2, 21m), settled.CancelledCount);
        Assert.Equal(["b", "h"], settled.Cancelled.Select(line => line.Ref));
        Assert.Equal([("XX-999", 2, 65m), ("YY-111", 1, 40m)], settled.Unplaced.Select(one => (one.Name, one.Count.Lines, one.Count.Money)));
        Assert.Equal(new LineCount(1, 50m), settled.Outside);
        Assert.Equal(new LineCount(1, 70m), settled.RefusedCount);
        // 10 + 10 + 21 + 105 + 50 + 70
        Assert.Equal(new LineCount(9, 266m), settled.Read);
    }

    [Fact]
    public void One_ref_for_two_different_lines_is_no_id()
    {
        var settled = Shop.Settled("on,sku,pieces,price,ref\n2027-03-01,RB-014,1,10.00,7\n2027-03-01,AB-001,1,20.00,7\n2027-03-01,AB-001,1,20.00,8");

        Assert.Equal("2 ref-used-twice, 3 ref-used-twice", Shop.Refused(settled));
        Assert.Single(settled.Used);
    }

    [Fact]
    public void Equal_lines_without_refs_are_as_many_sales()
    {
        Assert.Equal(2, Shop.Settled("on,sku,pieces,price\n2027-03-01,RB-014,1,10.00\n2027-03-01,RB-014,1,10.00").Used.Count);
    }

    [Fact]
    public void An_unknown_channel_is_unplaced_as_an_unknown_design_is()
    {
        var settled = Shop.Settled("on,sku,channel,pieces,price\n2027-03-01,RB-014,market,1,10.00");

        Assert.Equal("market", Assert.Single(settled.Unplaced).Name);
    }

    [Fact]
    public void Ten_thousand_unknown_names_are_ten_thousand_names_largest_first()
    {
        var text = "on,sku,pieces,price\n" + string.Concat(Enumerable.Range(1, 10_000).Select(i => $"2027-03-01,N{i},1,{i}\n"));

        var settled = Shop.Settled(text);

        Assert.Equal(10_000, settled.Unplaced.Count);
        Assert.Equal("N10000", settled.Unplaced[0].Name);
        Assert.Equal(10_000m * 10_001m / 2, settled.UnplacedCount.Money);
    }
}
