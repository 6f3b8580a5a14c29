using System.Text;
using Xunit;

namespace PriceFloor.Statements.Tests.Files;

public sealed class SheetFileTests
{
    private static readonly SheetReading s_dayFirst = new() { DateOrder = DateOrder.DayMonthYear };

    [Fact]
    public void A_plain_sheet_is_read_by_its_general_words()
    {
        var read = Reading.Of("""
            Date,Description,Amount,Currency
            2027-03-05,Borosilicate rods,-112.40,EUR
            2027-03-06,Market day,"1,250.00",EUR
            """).Value;

        Assert.Equal(StatementFormat.Csv, read.Format);
        var statement = Assert.Single(read.Statements);
        Assert.Equal(Reading.Account, statement.Account);
        Assert.Null(statement.From);
        Assert.Equal("2027-03-05 -112.40 EUR - Borosilicate rods\n2027-03-06 1250.00 EUR - Market day", Reading.Told(statement));
        Assert.Equal([2, 3], statement.Transactions.Select(one => one.Line));
    }

    [Fact]
    public void Money_in_and_money_out_may_have_columns_of_their_own()
    {
        var read = Reading.Of("""
            Date,Payee,Reference,Paid out,Paid in
            2027-03-05,Gas,March,40.00,
            2027-03-06,Shop,Order 7,0.00,19.90
            2027-03-07,Gas,Minus in the column,-41.00,
            2027-03-08,Both,,1.00,2.00
            2027-03-09,Neither,,,
            2027-03-10,Nothing,,0.00,0.00
            """).Value;

        Assert.Equal("2027-03-05 -40.00 - - Gas March\n2027-03-06 19.90 - - Shop Order 7\n2027-03-07 -41.00 - - Gas Minus in the column",
            Reading.Told(read.Statements[0]));
        Assert.Equal("5 bad-amount, 6 bad-amount, 7 zero", Reading.Refused(read));
    }

    [Fact]
    public void Columns_for_in_and_out_are_surer_than_an_amount_beside_them()
    {
        var read = Reading.Of("Date,Amount,Debit,Credit,Text\n2027-03-04,40.00,40.00,\n2027-03-05,2.00,,2.00").Value;

        Assert.Equal([-40m, 2m], read.Statements[0].Transactions.Select(one => one.Amount));
    }

    [Fact]
    public void Columns_that_the_caller_names_count_before_general_words()
    {
        var sheet = new SheetReading
        {
            DateColumn = "Buchungstag",
            AmountColumn = "Betrag",
            TextColumn = "Zweck",
            IdColumn = "Beleg",
            CurrencyColumn = "Währung",
            AccountColumn = "Konto",
            Semicolon = true,
            DateOrder = DateOrder.DayMonthYear,
        };

        var read = Reading.Of(
            "Konto;Buchungstag;Amount;Betrag;Zweck;Beleg;Währung\nA 1;05.03.2027;9;-1.112,40;Glas;77;eur\nB 2;06.03.27;9;12,5;Messe;78;EUR",
            sheet).Value;

        Assert.Equal(["A 1", "B 2"], read.Statements.Select(one => one.Account));
        Assert.Equal("2027-03-05 -1112.40 EUR 77 Glas", Reading.Told(read.Statements[0]));
        Assert.Equal("2027-03-06 12.50 EUR 78 Messe", Reading.Told(read.Statements[1]));
    }

    [Fact]
    public void Tabs_are_seen_without_a_word()
    {
        var read = Reading.Of("Date\tDetails\tAmount\n2027-03-04\tGas, March; paid\t-40.00").Value;

        Assert.Equal("2027-03-04 -40.00 - - Gas, March; paid", Reading.Told(Reading.Only(read)));
    }

    [Fact]
    public void A_sheet_in_the_other_dialect_is_not_guessed_at()
    {
        Reading.FailsWith("dialect", Reading.Of("Date;Amount;Text\n2027-03-04;1,50"));
        Reading.FailsWith("dialect", Reading.Of("Date,Amount,Text\n2027-03-04,1.50", new SheetReading { Semicolon = true }));
    }

    [Fact]
    public void Lines_above_the_header_are_passed_over()
    {
        var read = Reading.Of("\uFEFFsep=,\nStatement of the year,2027\n\nDate,Amount,Text\n2027-03-04,1.50").Value;

        Assert.Equal(5, Reading.Only(read).Line);
    }

    [Fact]
    public void A_sheet_without_a_text_says_which_column_was_looked_for_and_which_headings_there_are()
    {
        var noText = Assert.Single(Reading.Of("Date,Wording,Amount\n2027-03-04,Rent,1.50").Faults);

        Assert.Equal("missing-column", noText.Code);
        Assert.Equal("No column of the header is the one for textColumn; say ?textColumn= with the column's name in the file. "
            + "The headings of the file are \"Date\", \"Wording\", \"Amount\".", noText.Detail);
        Assert.Equal("Rent",
            Reading.Only(Reading.Of("Date,Wording,Amount\n2027-03-04,Rent,1.50", new SheetReading { TextColumn = "Wording" }).Value).Text);
    }

    [Fact]
    public void A_sheet_of_unknown_headings_says_them_and_what_names_columns_and_a_letter_is_no_sheet()
    {
        string Detail(string text, string code = "missing-column")
        {
            Reading.FailsWith(code, Reading.Of(text));
            return Assert.Single(Reading.Of(text).Faults).Detail;
        }

        Assert.StartsWith("None of the headings of the file is known: \"Tag\", \"Betrag\", \"Zweck\". Say which they are with "
            + "?dateColumn=, ?amountColumn= (or ?inColumn= and ?outColumn=) and ?textColumn=, and add ?dialect=semicolon.",
            Detail("Kontoauszug\n\nTag;Betrag;Zweck\n04.03.2027;1,50;Miete"), StringComparison.Ordinal);
        Assert.EndsWith("?textColumn=.", Detail("Tag,Betrag,Zweck\n2027-03-04,1.50,Miete"), StringComparison.Ordinal);
        Assert.EndsWith("its first line must name the columns, such as Date, Amount and Description.",
            Detail("2027-03-04,1.50,Miete\n2027-03-05,1.50,Miete", "unknown-format"), StringComparison.Ordinal);
        Assert.EndsWith("save its sheet as CSV and send that.", Detail("PK\u0003\u0004\u0014\0\u0006\0", "unknown-format"), StringComparison.Ordinal);
        // Long and many headings are cut: 25 names of 60 letters.
        var many = Detail(string.Join(',', Enumerable.Range(0, 25).Select(_ => new string('x', 60))) + "\n" + new string(',', 24));
        Assert.Contains("xxx...\" and 5 more.", many, StringComparison.Ordinal);
        Assert.True(many.Length < 1300, many);
    }

    [Fact]
    public void A_header_without_a_needed_column_says_what_to_name()
    {
        var noAmount = Assert.Single(Reading.Of("Date,Description,Betrag\n2027-03-04,Secret Ltd,1.50").Faults);
        var misnamed = Assert.Single(Reading.Of("Date,Amount,Text\n2027-03-04,1.50", new SheetReading { TextColumn = "Words" }).Faults);

        Assert.Equal(("missing-column", true), (noAmount.Code, noAmount.Detail.Contains("?amountColumn=", StringComparison.Ordinal)));
        Assert.Equal(("missing-column", true), (misnamed.Code, misnamed.Detail.Contains("?textColumn=", StringComparison.Ordinal)));
    }

    [Fact]
    public void Quoted_line_breaks_and_quotes_keep_line_numbers_right()
    {
        var read = Reading.Of("Date,Text,Amount\r\n2027-03-04,\"two\r\nlines, \"\"quoted\"\"\",1.00\r\n\r\n,,\r\n2027-03-05,next,2.00\r\n").Value;

        Assert.Equal("2027-03-04 1.00 - - two lines, \"quoted\"\n2027-03-05 2.00 - - next", Reading.Told(read.Statements[0]));
        Assert.Equal([2, 6], read.Statements[0].Transactions.Select(one => one.Line));
    }

    [Fact]
    public void A_line_that_cannot_be_read_costs_only_itself()
    {
        var read = Reading.Of("""
            Date,Text,Amount,Currency
            2027-03-01,"never closed,1.00,EUR
            2027-03-02,good,2.00,EUR
            2027-03-03,"shut" too early,3.00,EUR
            2027-03-04,decimal comma,12,50,EUR
            2027-03-05,currency,5.00,Euro
            2027-03-06,good,6.00,EUR
            """).Value;

        Assert.Equal("2027-03-02 2.00 EUR - good\n2027-03-06 6.00 EUR - good", Reading.Told(read.Statements[0]));
        Assert.Equal("2 bad-quotes, 4 bad-quotes, 5 too-many-cells, 6 bad-currency", Reading.Refused(read));
    }

    [Fact]
    public void Empty_cells_behind_the_last_column_do_no_harm_and_missing_ones_are_empty()
    {
        var read = Reading.Of($"Date,Amount,Text\n2027-03-04,1.00,x,,\n2027-03-05,2.00\n2027-03-06\n2027-03-07,4.00{new string(',', 2000)}").Value;

        Assert.Equal("2027-03-04 1.00 - - x\n2027-03-05 2.00 - - ", Reading.Told(read.Statements[0]));
        Assert.Equal("4 bad-amount, 5 bad-quotes", Reading.Refused(read));
    }

    [Fact]
    public void What_a_payer_wrote_as_reference_is_words_and_no_id()
    {
        var read = Reading.Of("Date,Amount,Reference,Transaction ID\n2027-03-04,1.00,RENT,T-1\n2027-04-04,1.00,RENT,T-2").Value;

        Assert.Equal("2027-03-04 1.00 - T-1 RENT\n2027-04-04 1.00 - T-2 RENT", Reading.Told(read.Statements[0]));
    }

    [Fact]
    public void Words_are_made_plain_and_are_not_endless()
    {
        var read =
            Reading.Of($"Date,Text,Amount\n2027-03-04,\" a\u0000b\t\u0007 c\u00A0\u202Ed\u200E \",1\n2027-03-05,{new string('x', 2000)},1").Value;

        Assert.Equal("a b c d", read.Statements[0].Transactions[0].Text);
        Assert.Equal(500, read.Statements[0].Transactions[1].Text.Length);
    }

    [Fact]
    public void A_cut_never_halves_a_character_outside_the_first_plane()
    {
        var text = Reading.Only(Reading.Of($"Date,Text,Amount\n2027-03-05,{new string('x', 499)}🔥🔥,1").Value).Text;

        Assert.Equal(new string('x', 499), text);
    }

    [Fact]
    public void A_sheet_in_any_usual_encoding_says_the_same()
    {
        const string Sheet = "Date,Text,Amount\n2027-03-04,Café Grün,1.00";
        var windows = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;
        byte[][] files =
        [
            Encoding.UTF8.GetBytes(Sheet), [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Sheet)], [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Sheet)],
            [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(Sheet)], windows.GetBytes(Sheet), Encoding.Latin1.GetBytes(Sheet),
        ];

        Assert.All(files, file => Assert.Equal("Café Grün", Reading.Only(Reading.Of(file).Value).Text));
    }

    [Fact]
    public void An_empty_sheet_is_a_statement_without_transactions()
    {
        var statement = Assert.Single(Reading.Of("Date,Amount,Text\n").Value.Statements);

        Assert.Equal((Reading.Account, 0), (statement.Account, statement.Transactions.Count));
    }

    [Fact]
    public void More_lines_than_a_year_can_have_are_refused()
    {
        var lines = new StringBuilder("Date,Amount,Text\n");
        lines.Insert(lines.Length, "2027-03-04,1\n", 200_000);

        Assert.Equal(200_000, Assert.Single(Reading.Of(lines.ToString()).Value.Statements).Transactions.Count);
        Reading.FailsWith("too-many", Reading.Of(lines.Append("2027-03-04,").ToString()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("Dear customer, good day")]
    [InlineData("{\"date\": 1}")]
    [InlineData("%PDF-1.7 \0\0")]
    [InlineData("Date\n2027-03-04")]
    public void A_file_without_a_header_is_not_a_sheet(string text) => Reading.FailsWith("unknown-format", Reading.Of(text, s_dayFirst));
}
