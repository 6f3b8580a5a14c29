using System.Globalization;
using System.Text;
using FsCheck.Xunit;
using PriceFloor.Statements.Files;
using Xunit;

namespace PriceFloor.Statements.Tests.Files;

/// <summary>Files come from outside: whatever is in them, reading returns an answer.</summary>
public sealed class HostileFileTests
{
    private static readonly string[] s_refusals = ["malformed", "unknown-format"];

    /// <summary>Only a hang fails by this; nothing is timed.</summary>
    private static readonly TimeSpan s_hang = TimeSpan.FromSeconds(60);

    private const string Camt = "<Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.02\"><BkToCstmrStmt><Stmt><Ntry>";

    private static IEnumerable<byte[]> Fixtures =>
        new[] { StudioYear.Sheet(false), StudioYear.Sheet(true), StudioYear.OfxSgml(), StudioYear.OfxXml(), StudioYear.Camt() }
            .Select(Encoding.UTF8.GetBytes);

    private static async Task<Outcome<StatementFile>> Answer(byte[] bytes) =>
        await Task.Run(() => Reading.Of(bytes)).WaitAsync(s_hang, TestContext.Current.CancellationToken);

    private static Task<Outcome<StatementFile>> Answer(string text) => Answer(Encoding.UTF8.GetBytes(text));

    private static void IsWhole(Outcome<StatementFile> outcome) => Assert.True(outcome.Found is not null || outcome.Faults.Count > 0);

    [Fact]
    public async Task Entities_that_grow_without_end_are_not_even_begun()
    {
        var bomb = new StringBuilder("<?xml version=\"1.0\"?><!DOCTYPE lolz [<!ENTITY lol0 \"lol\">");
        for (var i = 1; i < 12; i++)
            bomb.Append(CultureInfo.InvariantCulture, $"<!ENTITY lol{i} \"{string.Concat(Enumerable.Repeat($"&lol{i - 1};", 10))}\">");
        bomb.Append("]><OFX>&lol11;</OFX>");

        Reading.FailsWith("doctype", await Answer(bomb.ToString()));
    }

    [Theory]
    [InlineData("<!DOCTYPE OFX SYSTEM \"file:///etc/passwd\"><OFX/>")]
    [InlineData("<?xml version=\"1.0\"?>\n<!-- a --><?b c?><!DOCTYPE d [<!ENTITY x SYSTEM \"file:///etc/hostname\">]><Document>&x;</Document>")]
    [InlineData("\uFEFF  <!doctype html><html/>")]
    public async Task A_document_type_is_never_read(string text) => Reading.FailsWith("doctype", await Answer(text));

    [Theory]
    [InlineData("<OFX>&x;</OFX>")]
    [InlineData("<a/><!DOCTYPE OFX SYSTEM \"file:///etc/passwd\">")]
    public async Task Entities_without_a_document_type_name_nothing(string rest)
    {
        var read = await Answer($"<?xml version=\"1.0\"?>{rest}");

        Assert.Contains(Assert.Single(read.Faults).Code, s_refusals);
    }

    /// <summary>Paths of a megabyte to each of very many values: reading ends inside the one entry, and needs only a little memory.</summary>
    [Fact]
    public async Task Reading_ends_inside_one_element_when_it_is_called_off()
    {
        var names = Enumerable.Range(0, 50).Select(number => new string('n', 16_000) + number).ToList();
        var values = new StringBuilder();
        for (var i = 0; i < 600_000; i++)
            values.Append('<').Append('a').Append(i).Append(">1</a").Append(i).Append('>');
        var bytes = Encoding.UTF8.GetBytes($"{Camt}<{string.Join("><", names)}>{values}</{string.Join("></", names.AsEnumerable().Reverse())}></Ntry>"
            + "</Stmt></BkToCstmrStmt></Document>");
        using var over = new CancellationTokenSource(TimeSpan.FromMilliseconds(100));
        var reading = Task.Run(() => StatementReader.Read(bytes, "a", new SheetReading(), over.Token), TestContext.Current.CancellationToken);
        await Assert.ThrowsAsync<OperationCanceledException>(() => reading.WaitAsync(s_hang, TestContext.Current.CancellationToken));

        Assert.Equal("1 not-booked", Reading.Refused((await Answer(bytes)).Value));
    }

    [Fact]
    public void An_entry_keeps_its_first_values_however_many_follow()
    {
        var rest = string.Concat(Enumerable.Range(0, 1000).Select(number => $"<a{number}>1</a{number}>"));
        const string Said = "<Amt Ccy=\"EUR\">7.00</Amt><Sts>BOOK</Sts><CdtDbtInd>CRDT</CdtDbtInd><BookgDt><Dt>2027-03-04</Dt></BookgDt>";
        var read = Reading.Of($"{Camt}{Said}{rest}</Ntry></Stmt></BkToCstmrStmt></Document>");
        Assert.Equal((7.00m, "EUR"), (Reading.Only(read.Value).Amount, Reading.Only(read.Value).Currency));

        Reading.FailsWith("too-many", Reading.Of(
            $"{Camt}<NtryDtls>{string.Concat(Enumerable.Repeat("<TxDtls/>", 200_001))}</NtryDtls></Ntry></Stmt></BkToCstmrStmt></Document>"));
    }

    [Theory]
    [InlineData(Camt)]
    [InlineData("<?xml version=\"1.0\"?><OFX>")]
    public async Task Depth_has_an_end(string start)
    {
        var text = new StringBuilder(start).Insert(start.Length, "<a>", 100_000);

        Reading.FailsWith("malformed", await Answer(text.ToString()));
    }

    [Fact]
    public async Task Depth_in_SGML_is_not_kept()
    {
        var text = new StringBuilder("OFXHEADER:100\n<OFX><STMTRS>")
            .Insert(27, "<STMTRS><BANKTRANLIST><STMTTRN><PAYEE><CURRENCY>", 20_000).Append("</OFX>");

        IsWhole(await Answer(text.ToString()));
    }

    [Theory]
    [InlineData("<?xml version=\"1.0\"?><OFX><STMTRS><BANKTRANLIST><STMTTRN><MEMO>", "<b/>")]
    [InlineData("OFXHEADER:100\n<OFX><STMTRS><BANKTRANLIST><STMTTRN><MEMO>", "<b/>")]
    [InlineData("OFXHEADER:100\n<OFX><STMTRS><BANKTRANLIST>", "<STMTTRN>")]
    [InlineData("OFXHEADER:100\n<OFX><STMTRS><BANKTRANLIST><STMTTRN><MEMO>", "<")]
    [InlineData("OFXHEADER:100\n<OFX><STMTRS><BANKTRANLIST><STMTTRN><MEMO>", "&")]
    [InlineData("OFXHEADER:100\n<OFX><STMTRS><BANKTRANLIST><STMTTRN><MEMO>", "<![CDATA[")]
    [InlineData("OFXHEADER:100\n<OFX><STMTRS><BANKTRANLIST><STMTTRN><MEMO>", "<!--")]
    [InlineData(Camt, "<b/>")]
    [InlineData(Camt, "<Amt>1</Amt>")]
    [InlineData(Camt + "<NtryDtls><TxDtls><RmtInf>", "<Ustrd>x</Ustrd>")]
    [InlineData("", "<?a?>")]
    [InlineData("", "<!---->")]
    [InlineData("Date,Amount,Text\n", "\"")]
    [InlineData("Date,Amount,Text\n", "\"\n")]
    [InlineData("Date,Amount,Text\n", "\"\"\"\n")]
    [InlineData("Date,Amount,Text\n", "\"a\n")]
    [InlineData("Date,Amount,Text\n", "\"\"")]
    [InlineData("Date,Amount,Text\n", ",")]
    [InlineData("", ",")]
    [InlineData("", "\0")]
    public async Task Thirty_megabytes_of_one_thing_are_answered(string start, string again)
    {
        var text = new StringBuilder(start).Insert(start.Length, again, 30_000_000 / again.Length);

        IsWhole(await Answer(text.ToString()));
    }

    [Fact]
    public void A_file_cut_off_anywhere_is_answered()
    {
        foreach (var whole in Fixtures)
            for (var length = 0; length < whole.Length; length += 97)
                IsWhole(Reading.Of(whole[..length]));
    }

    [Fact]
    public void OFX_and_camt_that_were_cut_off_are_never_read_as_whole()
    {
        foreach (var whole in new[] { StudioYear.OfxSgml(), StudioYear.OfxXml(), StudioYear.Camt() }.Select(Encoding.UTF8.GetBytes))
            for (var length = 0; length < whole.Length; length += 97)
                Assert.Null(Reading.Of(whole[..length]).Found);
    }

    [Property(MaxTest = 500)]
    public void Bytes_at_random_are_answered(byte[] bytes) => IsWhole(Reading.Of(bytes));

    [Property(MaxTest = 500)]
    public void Text_at_random_under_a_header_is_answered(string? text)
    {
        IsWhole(Reading.Of($"Date,Amount,Text\n{text}"));
        IsWhole(Reading.Of($"Date,Amount,Text\n{text},{text},\n04/03/27,{text}1,\n{text}Mar 2027,1{text},", new SheetReading { Currency = "EUR" }));
        IsWhole(Reading.Of($"Date,What,In,Out,To,Cost kind,Name,Business share,Traced to,Income kind\n{text}\n2027-03-04,a,1,,{text}\n"
            + $"2027-03-04,a,1,,sale,{text}", new SheetReading { IsCashBook = true }));
        IsWhole(Reading.Of($"OFXHEADER:100\n<OFX><STMTRS><STMTTRN>{text}</STMTTRN></OFX>"));
        IsWhole(Reading.Of($"{Camt}{text}</Ntry></Stmt></BkToCstmrStmt></Document>"));
    }

    /// <summary>Flips, inserts, repeats and deletes bytes; 1000 of each format.</summary>
    [Theory]
    [InlineData(20270304)]
    public void Damaged_files_are_answered(int seed)
    {
        var random = new Random(seed);
        var counts = (Read: 0, Refused: 0);
        foreach (var fixture in Fixtures)
            for (var i = 0; i < 1000; i++)
            {
                var damaged = Damage(fixture, random);
                try
                {
                    var outcome = Reading.Of(damaged, new SheetReading { Semicolon = i % 2 == 0 });
                    IsWhole(outcome);
                    counts = outcome.Found is null ? (counts.Read, counts.Refused + 1) : (counts.Read + 1, counts.Refused);
                }
                catch (Exception thrown) when (thrown is not Xunit.Sdk.IAssertionException)
                {
                    Assert.Fail($"Seed {seed}, case {i}: {thrown}\n{Convert.ToBase64String(damaged)}");
                }
            }
        // Damage that always breaks a file, or never does, would test only half of the reader.
        Assert.True(counts.Read > 500 && counts.Refused > 500, $"{counts}");
    }

    private static byte[] Damage(byte[] fixture, Random random)
    {
        var damaged = fixture.ToList();
        for (var times = random.Next(1, 6); times > 0 && damaged.Count > 1; times--)
        {
            var at = random.Next(damaged.Count);
            switch (random.Next(4))
            {
                case 0:
                    damaged[at] = (byte)random.Next(256);
                    break;
                case 1:
                    damaged.Insert(at, "<>&\";,-.0\n\0\u00FF"u8[random.Next(12)]);
                    break;
                case 2:
                    damaged.RemoveRange(at, int.Min(random.Next(1, 40), damaged.Count - at));
                    break;
                default:
                    damaged.InsertRange(random.Next(damaged.Count), damaged.GetRange(at, int.Min(random.Next(1, 200), damaged.Count - at)));
                    break;
            }
        }
        return [.. damaged];
    }

    /// <summary>Details name headings at most; if one quoted a line, it would contain this word, which is in every value.</summary>
    [Fact]
    public void Nothing_that_the_bank_wrote_is_in_a_detail()
    {
        const string Secret = "Zqxsecret";
        string[] files =
        [
            $"Date,Amount,Text\n{Secret},1,{Secret}\n2027-03-04,{Secret},x\n"
            + $"2027-03-04,1,\"{Secret}\n04/03/2027,1,{Secret}\n2027-03-04,1,{Secret},{Secret}",
            $"Date,Betrag,Text\n2027-03-04,1,{Secret}", $"Date;Text;Amount\n2027-03-04;1;{Secret}", $"{Secret}",
            $"{Secret},2027-03-04,1\n{Secret},2027-03-05,2", $"{Secret};Date;04.03.2027", $"Debit,{Secret},2027-03-04", $"{Secret}\t12",
            $"OFXHEADER:100\n<OFX><STMTRS><CURDEF>{Secret}<STMTTRN><DTPOSTED>20270304<TRNAMT>1<FITID>{Secret}</STMTTRN><STMTTRN>"
            + $"<DTPOSTED>{Secret}</STMTTRN><STMTTRN><DTPOSTED>20270304<TRNAMT>{Secret}</STMTTRN></STMTRS></OFX>",
            $"OFXHEADER:100\n<OFX><{Secret}>{Secret}", $"<?xml version=\"1.0\"?><OFX><{Secret}>{Secret}</{Secret}x></OFX>",
            $"{Camt}<Amt Ccy=\"{Secret}\">1</Amt><Sts>BOOK</Sts><CdtDbtInd>CRDT</CdtDbtInd><BookgDt><Dt>2027-03-04</Dt></BookgDt></Ntry><Ntry>"
            + $"<Sts>{Secret}</Sts></Ntry></Stmt></BkToCstmrStmt></Document>",
            $"{Camt}<{Secret}></x>",
        ];

        foreach (var file in files)
        {
            var read = Reading.Of(file);
            string[] details = [.. read.Faults.Select(fault => fault.Detail), .. read.Found?.Refused.Select(refused => refused.Detail) ?? []];
            Assert.NotEmpty(details);
            Assert.All(details, detail => Assert.DoesNotContain(Secret, detail, StringComparison.OrdinalIgnoreCase));
        }
    }
}
