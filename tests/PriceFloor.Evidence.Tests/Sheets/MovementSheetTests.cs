using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Statements;
using Xunit;

namespace PriceFloor.Evidence.Tests.Sheets;

public sealed class MovementSheetTests
{
    [Fact]
    public void A_sheet_whose_columns_bear_the_names_of_the_fields_needs_no_parameter()
    {
        var settled = Shop.Settled("""
            on,sku,channel,what,pieces,price,listed,order,fees,ref,grade,piece
            2027-03-14,RB-014,web,sold,1,52.00,58.00,10231,1.96,10231/1,,7/25
            2027-03-02,RB-014,,made,11,,,,,m1,,
            2027-03-15,pendant,web,returned,1,52.00,,10231,,r1,second,
            """, new LogSheet());

        Assert.Equal("2027-03-02 Made 11 RB-014 - -\n2027-03-14 Sold 1 RB-014 web 52.00\n2027-03-15 Returned 1 RB-014 web 52.00", Shop.Told(settled));
        var sold = settled.Used[1];
        Assert.Equal((2, "10231/1", 52.00m), (sold.Line, sold.Ref, sold.Money));
        Assert.Equal((58.00m, 1.96m, "7/25"), (sold.Entry.Listed, sold.Entry.Fees, sold.Entry.Piece));
        Assert.Equal(Grade.Second, settled.Used[2].Entry.Grade);
        Assert.Equal([1L, 2L, 3L], settled.Used.Select(line => line.Entry.Position));
    }

    [Fact]
    public void Columns_are_named_by_the_caller_and_no_other_is_read()
    {
        var sheet = Shop.Web with
        {
            DateOrder = DateOrder.DayMonthYear,
            Semicolon = true,
            Columns = new Dictionary<LogField, string>
            {
                [LogField.On] = "Bestelldatum",
                [LogField.Sku] = "Artikel",
                [LogField.Pieces] = "Menge",
                [LogField.LineTotal] = "Summe",
            },
        };
        var settled = Shop.Settled("""
            Shop export of March
            Bestelldatum;Kunde;Artikel;Menge;Summe;Price
            03.04.2027;Jo Nobody;RB-014;3;1.234,50;99
            """, sheet);

        // three for 1,234.50 together: the line's total counts, and the column of prices that nobody named is beaten by it
        Assert.Equal("2027-04-03 Sold 3 RB-014 web 1234.50", Shop.Told(settled));
    }

    [Fact]
    public void Negative_pieces_or_amounts_came_back_and_only_once_if_both_are()
    {
        var settled = Shop.Settled("""
            date,sku,pieces,price
            2027-03-01,RB-014,-2,10.00
            2027-03-02,RB-014,2,-10.00
            2027-03-03,RB-014,-2,-10.00
            """);

        Assert.Equal("2027-03-01 Returned 2 RB-014 web 20.00\n2027-03-02 Returned 2 RB-014 web 20.00\n2027-03-03 Returned 2 RB-014 web 20.00",
            Shop.Told(settled));
        Assert.Equal(new LineCount(3, -60.00m), settled.Read);
    }

    [Fact]
    public void A_line_that_cannot_be_read_costs_only_itself_and_keeps_its_money_where_that_can_be_read()
    {
        var settled = Shop.Settled("""
            on,sku,pieces,price
            yesterday,RB-014,2,10.00
            2027-03-02,RB-014,two,10.00
            2027-03-03,RB-014,1,dear
            2027-03-04,,1,10.00
            2027-03-05,RB-014,0,10.00
            2027-03-06,RB-014,1.5,10.00
            2027-03-07,RB-014,1,
            2027-03-08,RB-014,1,10.00,something
            2027-03-09,RB-014,1,7.00
            2027-03-10,RB-014,1,7.005
            2027-03-11,RB-014,1,EUR 7.00
            "2027-03-12,RB-014,1,7.00
            """);

        Assert.Equal("2 bad-date, 3 bad-amount, 4 bad-amount, 5 required, 6 out-of-range, 7 out-of-range, 8 required, 9 too-many-cells, "
            + "11 out-of-range, 12 currency-mismatch, 13 bad-quotes", Shop.Refused(settled));
        Assert.Equal("2027-03-09 Sold 1 RB-014 web 7.00", Shop.Told(settled));
        // 20.00 of line 2, 10.00 of line 5, 7.005 of line 11 and 7.00 of line 12
        Assert.Equal(new LineCount(11, 44.005m), settled.RefusedCount);
        Assert.Equal(new LineCount(12, 51.005m), settled.Read);
    }

    [Fact]
    public void A_day_that_could_be_read_in_two_ways_is_never_guessed_but_another_line_may_prove_it()
    {
        Assert.Equal("2 ambiguous-date", Shop.Refused(Shop.Settled("on,sku,pieces,price\n03/04/2027,RB-014,1,7")));
        var proven = Shop.Settled("on,sku,pieces,price\n03/04/2027,RB-014,1,7\n31/12/2027,RB-014,1,7");
        Assert.Equal(new DateOnly(2027, 4, 3), proven.Used[0].Entry.On);
    }

    [Fact]
    public void A_heading_that_lacks_a_column_says_which_parameter_names_it()
    {
        var faults = MovementSheet.Read("on,item,qty\n2027-03-01,RB-014,1"u8, new LogSheet()).Faults;

        Assert.Equal(["skuColumn", "piecesColumn", "priceColumn", "channelColumn"], faults.Select(fault => fault.Pointer));
        Assert.All(faults, fault => Assert.Equal(FileCodes.MissingColumn, fault.Code));
        Assert.Equal(FileCodes.Dialect, MovementSheet.Read("on;sku;pieces;price\n"u8, Shop.Web).Faults[0].Code);
        Assert.Equal(FileCodes.DuplicateColumn, MovementSheet.Read("on,sku,sku,pieces,price\n"u8, Shop.Web).Faults[0].Code);
        Assert.Equal(FileCodes.UnknownFormat, MovementSheet.Read(""u8, Shop.Web).Faults[0].Code);
        var named = Shop.Web with { Columns = new Dictionary<LogField, string> { [LogField.Order] = "Order no" } };
        Assert.Equal("orderColumn", Assert.Single(MovementSheet.Read("on,sku,pieces,price\n"u8, named).Faults).Pointer);
    }

    [Fact]
    public void What_was_made_needs_neither_channel_nor_price()
    {
        var settled = Shop.Settled("on,sku,pieces\n2027-03-01,RB-014,11\n2027-03-02,RB-014,-1", new LogSheet { What = MovementKind.Made });

        Assert.Equal("2027-03-01 Made 11 RB-014 - -", Shop.Told(settled));
        Assert.Equal("3 out-of-range", Shop.Refused(settled)); // pieces are not unmade; they are lost or reworked
    }

    [Fact]
    public void More_lines_than_are_read_at_once_are_refused_as_a_whole()
    {
        var text = "on,sku,pieces,price\n" + string.Concat(Enumerable.Repeat("2027-03-01,RB-014,1,7\n", LogRanges.MostLines + 1));

        Assert.Equal(FileCodes.TooMany, Assert.Single(MovementSheet.Read(System.Text.Encoding.UTF8.GetBytes(text), Shop.Web).Faults).Code);
    }
}
