using System.Globalization;
using System.Text;
using Xunit;

namespace PriceFloor.Statements.Tests.Files;

public sealed class OfxTests
{
    private const string Head = "OFXHEADER:100\nDATA:OFXSGML\nVERSION:102\nSECURITY:NONE\nENCODING:USASCII\nCHARSET:1252\nCOMPRESSION:NONE\n"
        + "OLDFILEUID:NONE\nNEWFILEUID:NONE\n\n";

    private const string Xml = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        + "<?OFX OFXHEADER=\"200\" VERSION=\"220\" SECURITY=\"NONE\" OLDFILEUID=\"NONE\" NEWFILEUID=\"NONE\"?>\n";

    /// <summary>
    /// The statement response of the OFX specification's own example (1.x and 2.x, section 11.14.1): a check of 200.00 and 300.00 from a machine in
    /// October 2005. Days and amounts as published there, account numbers from memory, layout ours.
    /// </summary>
    private const string Published = """
        <OFX><SIGNONMSGSRSV1><SONRS><STATUS><CODE>0<SEVERITY>INFO</STATUS><DTSERVER>20051029101003<LANGUAGE>ENG</SONRS></SIGNONMSGSRSV1>
        <BANKMSGSRSV1><STMTTRNRS><TRNUID>1001<STATUS><CODE>0<SEVERITY>INFO</STATUS>
        <STMTRS><CURDEF>USD
        <BANKACCTFROM><BANKID>121099999<ACCTID>999988<ACCTTYPE>CHECKING</BANKACCTFROM>
        <BANKTRANLIST><DTSTART>20051001<DTEND>20051028
        <STMTTRN><TRNTYPE>CHECK<DTPOSTED>20051004<TRNAMT>-200.00<FITID>00002<CHECKNUM>1000</STMTTRN>
        <STMTTRN><TRNTYPE>ATM<DTPOSTED>20051020<DTUSER>20051020<TRNAMT>-300.00<FITID>00003</STMTTRN>
        </BANKTRANLIST>
        <LEDGERBAL><BALAMT>200.29<DTASOF>200510291120</LEDGERBAL><AVAILBAL><BALAMT>200.29<DTASOF>200510291120</AVAILBAL>
        </STMTRS></STMTTRNRS></BANKMSGSRSV1></OFX>
        """;

    private static string Statement(string transactions, string currency = "<CURDEF>EUR") =>
        $"{Head}<OFX><BANKMSGSRSV1><STMTTRNRS><STMTRS>{currency}<BANKACCTFROM><ACCTID>1</BANKACCTFROM><BANKTRANLIST>{transactions}</BANKTRANLIST>"
        + "</STMTRS></STMTTRNRS></BANKMSGSRSV1></OFX>";

    private static string One(string values) => Statement($"<STMTTRN>{values}</STMTTRN>");

    [Fact]
    public void The_specifications_own_example_is_read()
    {
        var read = Reading.Of(Head + Published).Value;

        Assert.Equal(StatementFormat.OfxSgml, read.Format);
        var statement = Assert.Single(read.Statements);
        Assert.Equal(("121099999/999988", new DateOnly(2005, 10, 1), new DateOnly(2005, 10, 28)), (statement.Account, statement.From, statement.To));
        Assert.Equal("2005-10-04 -200.00 USD 00002 \n2005-10-20 -300.00 USD 00003 ", Reading.Told(statement));
        Assert.Empty(read.Refused);
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\n\n   ")]
    [InlineData("")]
    public void Line_breaks_between_tags_mean_nothing(string between)
    {
        var text = Published.Replace("\n", "", StringComparison.Ordinal).Replace("<", between + "<", StringComparison.Ordinal);

        Assert.Equal("2005-10-04 -200.00 USD 00002 \n2005-10-20 -300.00 USD 00003 ", Reading.Told(Reading.Of(Head + text).Value.Statements[0]));
    }

    [Fact]
    public void Lines_of_SGML_are_those_of_the_file()
    {
        var read = Reading.Of(Head + Published).Value;

        // Ten lines of header, then the transactions on the sixth and seventh of the body.
        Assert.Equal([16, 17], read.Statements[0].Transactions.Select(one => one.Line));
    }

    [Fact]
    public void In_XML_transactions_are_counted()
    {
        var read = Reading.Of($"{Xml}<OFX><CREDITCARDMSGSRSV1><CCSTMTTRNRS><CCSTMTRS><CURDEF>EUR</CURDEF><CCACCTFROM>"
            + "<ACCTID>4000</ACCTID></CCACCTFROM>"
            + "<BANKTRANLIST><DTSTART>20270101</DTSTART><DTEND>20271231235959.999[+1:CET]</DTEND>"
            + "<STMTTRN><DTPOSTED>20270304120000.000[-5:EST]</DTPOSTED><TRNAMT>-1.50</TRNAMT><FITID>a</FITID><NAME>Kiln &amp; Co</NAME>"
            + "<MEMO/></STMTTRN>"
            + "<STMTTRN><DTPOSTED>20270305</DTPOSTED><TRNAMT>1</TRNAMT><FITID>b</FITID><PAYEE><NAME>P</NAME><CITY>C</CITY></PAYEE><MEMO>"
            + "<![CDATA[x < y]]></MEMO></STMTTRN>"
            + "</BANKTRANLIST></CCSTMTRS></CCSTMTTRNRS></CREDITCARDMSGSRSV1></OFX>").Value;

        Assert.Equal(StatementFormat.OfxXml, read.Format);
        Assert.Equal(("4000", new DateOnly(2027, 12, 31)), (read.Statements[0].Account, read.Statements[0].To));
        Assert.Equal("2027-03-04 -1.50 EUR a Kiln & Co\n2027-03-05 1.00 EUR b P x < y", Reading.Told(read.Statements[0]));
        Assert.Equal([1, 2], read.Statements[0].Transactions.Select(one => one.Line));
    }

    [Theory]
    [InlineData("Kiln &amp; Glass &lt;1&gt; &#233; &#xE9;", "Kiln & Glass <1> é é")]
    [InlineData("Kiln & Glass; AT&T &unknown; &#0xD800; &#55296;", "Kiln & Glass; AT&T &unknown; &#0xD800; &#55296;")]
    [InlineData("1 < 2 <3 </ >", "1 < 2 <3 </ >")]
    [InlineData("<![CDATA[<b>]]> text", "<b> text")]
    [InlineData("a<!-- <STMTTRN> -->b", "ab")]
    public void Words_in_SGML_are_read_as_they_were_meant(string written, string expected)
    {
        var read = Reading.Only(Reading.Of(One($"<DTPOSTED>20270304<TRNAMT>1.00<FITID>1<MEMO>{written}")).Value);

        Assert.Equal(expected, read.Text);
    }

    [Fact]
    public void Empty_elements_without_end_tags_do_not_swallow_what_follows()
    {
        var read = Reading.Of(Statement("<STMTTRN>\n<DTPOSTED>20270304\n<MEMO>\n<NAME>\n<TRNAMT>1.00\n<FITID>\n</STMTTRN>\n<STMTTRN>"
            + "<DTPOSTED>20270305<TRNAMT>2.00<FITID>2<NAME>n</NAME>")).Value;

        Assert.Equal("2027-03-04 1.00 EUR - \n2027-03-05 2.00 EUR 2 n", Reading.Told(read.Statements[0]));
    }

    [Theory]
    [InlineData("20270304", "2027-03-04")]
    [InlineData("20270304120000", "2027-03-04")]
    [InlineData("20271231235959.999[-5:EST]", "2027-12-31")] // written in the bank's zone, and left there
    [InlineData("20270304[0:GMT]", "2027-03-04")]
    [InlineData("2027-03-04", "bad-date")]
    [InlineData("20270229", "bad-date")]
    [InlineData("00000000", "bad-date")]
    [InlineData("", "bad-date")]
    public void The_day_is_the_written_one(string written, string expected)
    {
        var read = Reading.Of(One($"<DTPOSTED>{written}<TRNAMT>1.00<FITID>1")).Value;

        Assert.Equal(expected, read.Refused is [var refused] ? refused.Code
            : Reading.Only(read).Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("-12.50", "-12.50")]
    [InlineData("+12,5", "12.50")]
    [InlineData("12", "12.00")]
    [InlineData(" .5 ", "0.50")]
    [InlineData("1.234,50", "bad-amount")]
    [InlineData("1,234", "bad-amount")]
    [InlineData("1.2.3", "bad-amount")]
    [InlineData("-", "bad-amount")]
    [InlineData("1e5", "bad-amount")]
    [InlineData("USD 5", "bad-amount")]
    [InlineData("12345678901234567890", "bad-amount")]
    [InlineData("0.00", "zero")]
    public void Amounts_have_a_sign_and_one_decimal_mark(string written, string expected)
    {
        var read = Reading.Of(One($"<DTPOSTED>20270304<TRNAMT>{written}<FITID>1")).Value;

        Assert.Equal(expected, read.Refused is [var refused] ? refused.Code
            : Reading.Only(read).Amount.ToString("0.00", CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Only_CURRENCY_changes_the_currency_of_an_amount()
    {
        var read = Reading.Of(Statement(
            "<STMTTRN><DTPOSTED>20270304<TRNAMT>-1.00<FITID>1<CURRENCY><CURRATE>1.1<CURSYM>USD</CURRENCY></STMTTRN>"
            + "<STMTTRN><DTPOSTED>20270304<TRNAMT>-2.00<FITID>2<ORIGCURRENCY><CURRATE>1.1<CURSYM>USD</ORIGCURRENCY></STMTTRN>"
            + "<STMTTRN><DTPOSTED>20270304<TRNAMT>-3.00<FITID>3<CURRENCY><CURSYM>dollars</CURRENCY></STMTTRN>")).Value;

        Assert.Equal("2027-03-04 -1.00 USD 1 \n2027-03-04 -2.00 EUR 2 ", Reading.Told(read.Statements[0]));
        Assert.Equal("bad-currency", Assert.Single(read.Refused).Code);
    }

    [Fact]
    public void The_account_on_the_other_side_of_a_transfer_is_not_this_account()
    {
        var read = Reading.Of(One("<DTPOSTED>20270304<TRNAMT>1.00<FITID>1<BANKACCTTO><BANKID>9<ACCTID>99</BANKACCTTO><MEMO>to savings")).Value;

        Assert.Equal("1", Assert.Single(read.Statements).Account);
        Assert.Equal("to savings", Reading.Only(read).Text);
    }

    [Fact]
    public void Several_accounts_are_kept_apart_and_one_without_a_number_gets_the_given_name()
    {
        var read = Reading.Of(Head + "<OFX><BANKMSGSRSV1>"
            + "<STMTTRNRS><STMTRS><CURDEF>EUR<BANKACCTFROM><BANKID>10<ACCTID>20</BANKACCTFROM><BANKTRANLIST><STMTTRN>"
            + "<DTPOSTED>20270304<TRNAMT>1<FITID>1</STMTTRN></BANKTRANLIST></STMTRS></STMTTRNRS>"
            + "<STMTTRNRS><STMTRS><BANKTRANLIST><STMTTRN><DTPOSTED>20270304<TRNAMT>2<FITID>1</STMTTRN></BANKTRANLIST></STMTRS>"
            + "</STMTTRNRS></BANKMSGSRSV1>"
            + "<CREDITCARDMSGSRSV1><CCSTMTTRNRS><CCSTMTRS><CURDEF>USD<CCACCTFROM><ACCTID>30</CCACCTFROM></CCSTMTRS></CCSTMTTRNRS>"
            + "</CREDITCARDMSGSRSV1></OFX>").Value;

        Assert.Equal([("10/20", 1), (Reading.Account, 1), ("30", 0)], read.Statements.Select(one => (one.Account, one.Transactions.Count)));
        Assert.Equal(["EUR", null], read.Statements.SelectMany(one => one.Transactions).Select(one => one.Currency));
    }

    [Fact]
    public void A_correction_takes_the_place_of_what_it_corrects()
    {
        var read = Reading.Of(Statement("""

            <STMTTRN><DTPOSTED>20270301<TRNAMT>-10.00<FITID>1</STMTTRN>
            <STMTTRN><DTPOSTED>20270301<TRNAMT>-20.00<FITID>2</STMTTRN>
            <STMTTRN><DTPOSTED>20270302<TRNAMT>-11.00<FITID>3<CORRECTFITID>1<CORRECTACTION>REPLACE</STMTTRN>
            <STMTTRN><DTPOSTED>20270302<TRNAMT>0<FITID>4<CORRECTFITID>2<CORRECTACTION>DELETE</STMTTRN>
            <STMTTRN><DTPOSTED>20270302<TRNAMT>-7.00<FITID>5<CORRECTFITID>other<CORRECTACTION>REPLACE</STMTTRN>
            <STMTTRN><DTPOSTED>20270302<TRNAMT>-7.00<FITID>6<CORRECTFITID>other<CORRECTACTION>DELETE</STMTTRN>
            <STMTTRN><DTPOSTED>20270302<TRNAMT>-7.00<FITID>7<CORRECTFITID>7<CORRECTACTION>REPLACE</STMTTRN>
            """)).Value;

        Assert.Equal("2027-03-02 -11.00 EUR 3 ", Reading.Told(read.Statements[0]));
        Assert.Equal("12 corrected, 13 corrected, 15 correction, 16 correction, 17 correction, 18 correction", Reading.Refused(read));
    }

    [Fact]
    public void What_is_only_held_is_not_booked() =>
        Assert.Equal("not-booked", Assert.Single(Reading.Of(One("<TRNTYPE>HOLD<DTPOSTED>20270304<TRNAMT>1.00<FITID>1")).Value.Refused).Code);

    [Fact]
    public void The_list_of_pending_lines_is_not_part_of_the_statement()
    {
        var text = One("<DTPOSTED>20270304<TRNAMT>1.00<FITID>1").Replace("</STMTRS>",
            "<BANKTRANLISTP><DTASOF>20270305<STMTTRNP><TRNTYPE>DEBIT<DTTRAN>20270305<TRNAMT>-9.00<NAME>n</STMTTRNP></BANKTRANLISTP></STMTRS>",
            StringComparison.Ordinal);

        Assert.Equal("2027-03-04 1.00 EUR 1 ", Reading.Told(Reading.Only(Reading.Of(text).Value)));
    }

    [Fact]
    public void Letters_of_Windows_1252_are_read_and_so_is_UTF_8_under_its_name()
    {
        var text = One("<DTPOSTED>20270304<TRNAMT>1.00<FITID>1<NAME>Café – Grün");

        Assert.Equal("Café – Grün", Reading.Only(Reading.Of(CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes(text)).Value).Text);
        Assert.Equal("Café – Grün", Reading.Only(Reading.Of(text).Value).Text);
    }

    [Fact]
    public void A_file_that_was_cut_off_is_not_read_as_if_it_were_whole()
    {
        Reading.FailsWith("malformed", Reading.Of((Head + Published)[..^8]));
        Reading.FailsWith("no-statement", Reading.Of(Head + "<OFX><SIGNONMSGSRSV1></SIGNONMSGSRSV1></OFX>"));
    }
}
