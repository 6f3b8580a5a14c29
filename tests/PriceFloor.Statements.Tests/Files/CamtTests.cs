using System.Text;
using Xunit;

namespace PriceFloor.Statements.Tests.Files;

public sealed class CamtTests
{
    private static string Document(string statements, string version = "02") =>
        $"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.{version}\"><BkToCstmrStmt>"
        + $"<GrpHdr><MsgId>1</MsgId></GrpHdr>{statements}</BkToCstmrStmt></Document>";

    private static string Statement(string entries) => Document($"<Stmt><Acct><Id><IBAN>XX00TEST</IBAN></Id><Ccy>EUR</Ccy></Acct>{entries}</Stmt>");

    private static string Entry(string rest, string amount = "<Amt Ccy=\"EUR\">10.00</Amt>", string sign = "CRDT") =>
        $"<Ntry>{amount}<CdtDbtInd>{sign}</CdtDbtInd><Sts>BOOK</Sts><BookgDt><Dt>2027-03-04</Dt></BookgDt><AcctSvcrRef>R</AcctSvcrRef>{rest}</Ntry>";

    private static string Told(string entry) => Reading.Told(Reading.Of(Statement(entry)).Value.Statements[0]);

    /// <summary>
    /// The entries of the ISO 20022 business example of a statement (camt.053, AAAASESS-FP-STAT001 of 2010-10-18: in 105678.50, out 200000, in 30000
    /// SEK), from memory of the message definition report; the layout is ours.
    /// </summary>
    [Fact]
    public void The_standards_own_example_is_read()
    {
        var read = Reading.Of(Document("""
            <Stmt><Id>AAAASESS-FP-STAT001</Id><CreDtTm>2010-10-18T17:00:00+01:00</CreDtTm>
            <FrToDt><FrDtTm>2010-10-18T08:00:00+01:00</FrDtTm><ToDtTm>2010-10-18T17:00:00+01:00</ToDtTm></FrToDt>
            <Acct><Id><Othr><Id>50000000054910000003</Id></Othr></Id><Ownr><Nm>FINPETROL</Nm></Ownr></Acct>
            <Bal><Tp><CdOrPrtry><Cd>OPBD</Cd></CdOrPrtry></Tp><Amt Ccy="SEK">500000</Amt><CdtDbtInd>CRDT</CdtDbtInd><Dt><Dt>2010-10-15</Dt></Dt></Bal>
            <Ntry><Amt Ccy="SEK">105678.50</Amt><CdtDbtInd>CRDT</CdtDbtInd><Sts>BOOK</Sts><BookgDt><DtTm>2010-10-18T13:15:00+01:00</DtTm></BookgDt><ValDt><Dt>2010-10-18</Dt></ValDt><AcctSvcrRef>AAAASESS-FP-CN_98765/01</AcctSvcrRef></Ntry>
            <Ntry><Amt Ccy="SEK">200000</Amt><CdtDbtInd>DBIT</CdtDbtInd><Sts>BOOK</Sts><BookgDt><DtTm>2010-10-18T10:15:00+01:00</DtTm></BookgDt><ValDt><Dt>2010-10-18</Dt></ValDt><AcctSvcrRef>AAAASESS-FP-ACCR-01</AcctSvcrRef></Ntry>
            <Ntry><Amt Ccy="SEK">30000</Amt><CdtDbtInd>CRDT</CdtDbtInd><Sts>BOOK</Sts><BookgDt><DtTm>2010-10-18T15:15:00+01:00</DtTm></BookgDt><ValDt><Dt>2010-10-18</Dt></ValDt><AcctSvcrRef>AAAASESS-FP-CONF-FX</AcctSvcrRef></Ntry>
            </Stmt>
            """)).Value;

        Assert.Equal(StatementFormat.Camt053, read.Format);
        var statement = Assert.Single(read.Statements);
        Assert.Equal(("50000000054910000003", new DateOnly(2010, 10, 18), new DateOnly(2010, 10, 18)),
            (statement.Account, statement.From, statement.To));
        Assert.Equal("""
            2010-10-18 105678.50 SEK AAAASESS-FP-CN_98765/01 
            2010-10-18 -200000.00 SEK AAAASESS-FP-ACCR-01 
            2010-10-18 30000.00 SEK AAAASESS-FP-CONF-FX 
            """, Reading.Told(statement));
        // 500000 + 105678.50 - 200000 + 30000 = 435678.50, the example's closing balance
        Assert.Equal(435678.50m, 500000 + statement.Transactions.Sum(one => one.Amount));
    }

    [Theory]
    [InlineData("02", "<Sts>BOOK</Sts>", "<Nm>Kiln &amp; Co</Nm>")]
    [InlineData("04", "<Sts><Cd>BOOK</Cd></Sts>", "<Nm>Kiln &amp; Co</Nm>")]
    [InlineData("08", "<Sts><Cd>BOOK</Cd></Sts>", "<Pty><Nm>Kiln &amp; Co</Nm></Pty>")]
    [InlineData("13", "<Sts><Cd>BOOK</Cd></Sts>", "<Pty><Nm>Kiln &amp; Co</Nm></Pty>")]
    public void Each_version_says_the_same_in_its_way(string version, string status, string name)
    {
        var read = Reading.Of(Document("<Stmt><Acct><Id><IBAN>XX00</IBAN></Id><Ccy>EUR</Ccy></Acct><Ntry><NtryRef>N1</NtryRef><Amt>10.00</Amt>"
            + "<CdtDbtInd>DBIT</CdtDbtInd>"
            + $"{status}<ValDt><DtTm>2027-03-04T23:59:00-05:00</DtTm></ValDt><NtryDtls><TxDtls><RltdPties><Dbtr><Nm>The studio</Nm></Dbtr>"
            + $"<Cdtr>{name}</Cdtr></RltdPties>"
            + "<RmtInf><Ustrd>Rods</Ustrd><Ustrd>March</Ustrd></RmtInf></TxDtls></NtryDtls><AddtlNtryInf>Transfer</AddtlNtryInf></Ntry></Stmt>",
            version)).Value;

        Assert.Equal("2027-03-04 -10.00 EUR N1 Kiln & Co Rods March Transfer", Reading.Told(Reading.Only(read)));
    }

    [Theory]
    [InlineData("01")]
    [InlineData("14")]
    [InlineData("2")]
    [InlineData("02x")]
    public void Other_versions_and_messages_are_not_this_format(string version)
    {
        Reading.FailsWith("unknown-format", Reading.Of(Document("<Stmt/>", version)));
        Reading.FailsWith("unknown-format", Reading.Of("<Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.054.001.02\"/>"));
        Reading.FailsWith("unknown-format", Reading.Of("<html><body>Please log in</body></html>"));
    }

    [Fact]
    public void A_prefix_on_every_name_changes_nothing()
    {
        var text = Statement(Entry(""));
        text = text.Replace("<?", "\u0001", StringComparison.Ordinal).Replace("</", "\u0002", StringComparison.Ordinal)
            .Replace("<", "<c:", StringComparison.Ordinal)
            .Replace("\u0001", "<?", StringComparison.Ordinal).Replace("\u0002", "</c:", StringComparison.Ordinal)
            .Replace("xmlns=", "xmlns:c=", StringComparison.Ordinal);

        Assert.Equal("2027-03-04 10.00 EUR R ", Reading.Told(Reading.Of(text).Value.Statements[0]));
    }

    [Fact]
    public void The_payer_of_incoming_money_is_named_and_in_a_reversal_the_one_who_is_paid_back()
    {
        const string Parties = "<NtryDtls><TxDtls><RltdPties><Dbtr><Nm>payer</Nm></Dbtr><Cdtr><Nm>payee</Nm></Cdtr></RltdPties></TxDtls></NtryDtls>";

        Assert.Equal("2027-03-04 10.00 EUR R payer", Told(Entry(Parties)));
        Assert.Equal("2027-03-04 -10.00 EUR R payee", Told(Entry(Parties, sign: "DBIT")));
        // The money of an outgoing payment comes back: in, and from the payee.
        Assert.Equal("2027-03-04 10.00 EUR R payee", Told(Entry("<RvslInd>true</RvslInd>" + Parties)));
        Assert.Equal("2027-03-04 -10.00 EUR R payer", Told(Entry("<RvslInd>true</RvslInd>" + Parties, sign: "DBIT")));
        Assert.Equal("2027-03-04 10.00 EUR R payee", Told(Entry(Parties.Replace("<Dbtr><Nm>payer</Nm></Dbtr>", "", StringComparison.Ordinal))));
    }

    private static string Payment(string amount, string more = "") =>
        $"<TxDtls><Amt Ccy=\"EUR\">{amount}</Amt>{more}<RmtInf><Ustrd>p{amount}</Ustrd></RmtInf></TxDtls>";

    [Fact]
    public void A_batch_whose_payments_add_up_is_read_payment_by_payment()
    {
        // 12.00 - 2.00 = 10.00
        var told = Told(Entry(
            $"<NtryDtls>{Payment("12.00", "<CdtDbtInd>CRDT</CdtDbtInd>")}{Payment("2.00", "<CdtDbtInd>DBIT</CdtDbtInd>")}</NtryDtls>"
            + "<AddtlNtryInf>batch</AddtlNtryInf>"));
        var old = Told(Entry("<NtryDtls><TxDtls><AmtDtls><TxAmt><Amt Ccy=\"EUR\">4</Amt></TxAmt></AmtDtls></TxDtls><TxDtls><AmtDtls><TxAmt>"
            + "<Amt Ccy=\"EUR\">6</Amt></TxAmt></AmtDtls></TxDtls></NtryDtls>", sign: "DBIT"));

        Assert.Equal("2027-03-04 12.00 EUR R/1 p12.00 batch\n2027-03-04 -2.00 EUR R/2 p2.00 batch", told);
        Assert.Equal("2027-03-04 -4.00 EUR R/1 \n2027-03-04 -6.00 EUR R/2 ", old);
    }

    [Theory]
    [InlineData("<TxDtls><Amt Ccy=\"EUR\">4.00</Amt></TxDtls><TxDtls><Amt Ccy=\"EUR\">5.99</Amt></TxDtls>")]
    [InlineData("<TxDtls><Amt Ccy=\"EUR\">4.00</Amt></TxDtls><TxDtls><Amt Ccy=\"USD\">6.00</Amt></TxDtls>")]
    [InlineData("<TxDtls><Amt Ccy=\"EUR\">10.00</Amt></TxDtls><TxDtls></TxDtls>")]
    [InlineData("<TxDtls><Amt Ccy=\"EUR\">10.00</Amt></TxDtls>")]
    public void A_batch_whose_payments_do_not_add_up_stays_one_entry(string payments) =>
        Assert.Equal("2027-03-04 10.00 EUR R ", Told(Entry($"<NtryDtls>{payments}</NtryDtls>")));

    [Fact]
    public void What_cannot_be_read_costs_only_its_entry()
    {
        var read = Reading.Of(Statement(
            Entry("").Replace("BOOK", "PDNG", StringComparison.Ordinal) + Entry("").Replace("BOOK", "INFO", StringComparison.Ordinal)
            + Entry("").Replace("2027-03-04", "2027-02-30", StringComparison.Ordinal) + Entry("", "<Amt Ccy=\"EUR\">-1</Amt>")
            + Entry("", "<Amt Ccy=\"EUR\">0.00</Amt>") + Entry("", sign: "DEBIT") + Entry("", "<Amt Ccy=\"€\">1</Amt>") + Entry("")
            + "<Ntry/>")).Value;

        Assert.Equal("1 not-booked, 2 not-booked, 3 bad-date, 4 bad-amount, 5 zero, 6 bad-direction, 7 bad-currency, 9 not-booked",
            Reading.Refused(read));
        Assert.Equal(8, Reading.Only(read).Line);
    }

    [Fact]
    public void A_placeholder_for_a_missing_reference_is_not_an_id() =>
        Assert.Equal("2027-03-04 10.00 EUR - ", Told(Entry("").Replace(">R<", ">NOTPROVIDED<", StringComparison.Ordinal)));

    [Fact]
    public void Several_statements_are_kept_apart()
    {
        var read = Reading.Of(Document($"<Stmt><Acct><Id><IBAN>A</IBAN></Id></Acct>{Entry("")}</Stmt><Stmt>{Entry("")}</Stmt>")).Value;

        Assert.Equal(["A", Reading.Account], read.Statements.Select(one => one.Account));
        Reading.FailsWith("no-statement", Reading.Of(Document("")));
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("iso-8859-1")]
    [InlineData("windows-1252")]
    [InlineData("utf-8")]
    public void Declared_encodings_are_read(string name)
    {
        var encoding = name == "windows-1252" ? CodePagesEncodingProvider.Instance.GetEncoding(1252)! : Encoding.GetEncoding(name);
        var text = Statement(Entry("<AddtlNtryInf>Café Grün</AddtlNtryInf>")).Replace("UTF-8", name, StringComparison.Ordinal);

        Assert.Equal("Café Grün", Reading.Only(Reading.Of([.. encoding.GetPreamble(), .. encoding.GetBytes(text)]).Value).Text);
    }

    [Fact]
    public void Broken_XML_says_where_and_never_what()
    {
        var fault = Assert.Single(Reading.Of(Statement(Entry("<AddtlNtryInf>Secret</WrongSecretTag>"))).Faults);

        Assert.Equal("malformed", fault.Code);
        Assert.Contains("line 2, column", fault.Detail, StringComparison.Ordinal);
        Assert.DoesNotContain("Secret", fault.Detail, StringComparison.Ordinal);
    }
}
