using System.IO.Pipelines;
using System.Text;
using PriceFloor.Api.Tests.Sheets;

namespace PriceFloor.ParserFuzzing;

/// <summary>A parser that we wrote ourselves, inputs to begin with, and the marks that mean something to it.</summary>
/// <param name="Name">What it reads.</param>
/// <param name="Read">Reads the input once; the branches that this takes are counted.</param>
/// <param name="Check">What must hold besides not throwing.</param>
/// <param name="Seeds">Good inputs.</param>
/// <param name="Words">Marks and words.</param>
internal sealed record FuzzedParser(string Name, Func<byte[], Task> Read, Func<byte[], Random, Task> Check, IReadOnlyList<byte[]> Seeds,
    IReadOnlyList<byte[]> Words)
{
    private static readonly byte[][] s_marks =
    [
        .. Bytes("\"", "\"\"", ",", ";", "\r\n", "\n", "\r", "\t", " ", "0", "-", ".", "=", "'", "\\", "\0", "\u00E9", "\uFEFF"),
        [0xFF],
        [0xC3],
        [0xEF, 0xBB],
    ];

    public static IReadOnlyList<FuzzedParser> All =>
    [
        Pieces("sheet-rows", ToldRows.OfSheet,
            ["sku,channel,price\r\nRB-014,web,58.00\r\n", "a;b\n\"x;\"\"y\";2\n\nc;d", "\uFEFFa,b\r\"1\n2\",3\r"], []),
        Pieces("json-lines", ToldRows.OfLines, ["{\"sku\":\"RB-014\",\"price\":58.00}\n{}\r\n\n1", "\uFEFF[]\n"], ["{", "}", "          "]),
        Pieces("json-array", ToldRows.OfArray, ["[{\"sku\":\"RB-014\",\"price\":58.00},\n 2, [true,null] ]", "[]", "[\"a\\u00e9\\\"\"]"],
            ["{", "}", "[", "]", ":", "\"a\":1", "true", "1e5", "\\u", "//", "[[[[[[[[["]),
        Statement("ofx-sgml", ["OFXHEADER:100\nDATA:OFXSGML\n\n<OFX><STMTRS><CURDEF>USD<BANKACCTFROM><ACCTID>1</BANKACCTFROM><BANKTRANLIST><STMTTRN>"
            + "<TRNTYPE>DEBIT<DTPOSTED>20270105120000[-5:EST]<TRNAMT>-540.00<FITID>1<MEMO>Bench rent &amp; heat</STMTTRN></BANKTRANLIST>"
            + "</STMTRS></OFX>"],
            ["<", ">", "</", "<!--", "-->", "<![CDATA[", "]]>", "&amp;", "&#65;", "&lt", "<STMTTRN>", "</STMTTRN>", "<STMTRS>", "<CCSTMTRS>",
                "</OFX>", "<TRNAMT>", "<DTPOSTED>", "20270105", "<CURRENCY>", "<CURSYM>EUR", "<PAYEE><NAME>x", "<NAME>"]),
        Statement("statement-sheet", [
            "Date,Amount,Description,Currency\r\n2026-01-05,-540.00,Bench rent,USD\r\n2026-01-15,812.40,\"Shop, payout\",USD\r\n",
            "Date,Amount,Way,Debit/Credit\n2026-01-05,40.00,D,D\n2026-01-06,-2.00,in,C\n",
            "Date,What,In,Out,To,Cost kind,Business share\n2026-01-05,Rod,,40.00,business,materials,0.5\n2026-01-06,Stall,90.00,,sale,,\n",
            "Account 1\n\nDate;Paid in;Paid out;Details\n05.01.2026;;540,00;Rent\n",
        ],
            ["Date", "Amount", "Paid in", "Paid out", "Currency", "Account", "2026-01-05", "05/01/2026", "1,234.50", "1.234,50", "(12.00)", "12.00-",
                "USD", "2026-02-30", "$12.00", "12,00 €", "EUR 12.00", "4 March 2026", "05-Jan-26", "13/01/26", "Total", "Opening balance"]),
        Whole("movement-sheet", ToldLines.OfMovements, [
            "ref,on,sku,channel,pieces,price,order,discount,fees,status\n1,2027-03-14,RB-014,web,1,52.00,7,4.00,1.96,\n"
            + "2,2027-03-14,RB-014,web,2,55.00,7,4.00,1.96,\n3,2027-03-15,GLOBE,web,1,90.00,8,,,cancelled\n",
            "Date,Item,What,Channel,Pieces,Line total,Currency\n2027-03-14,RB-014,sold,fair,2,900,JPY\n2027-03-15,RB-014,sent,fair,3,,\n",
            "on;sku;pieces;price\n14.03.2027;RB-014;-1;52,00\n14.03.2027;NEW-7;2;1.234,50\n",
        ],
            ["ref", "on", "sku", "channel", "pieces", "price", "lineTotal", "listed", "order", "discount", "fees", "shippingCost", "grade", "stall",
                "piece", "resale", "status", "currency", "RB-014", "web", "fair", "2027-03-14", "14/03/2027", "sold", "returned", "made", "counted",
                "second", "no", "-1", "1000001", "0.005", "(52.00)", "USD", "1e9", "99999999999999999999999999999"]),
        Whole("bench-sheet", ToldLines.OfBench, [
            "ref,on,sku,step,started,good,minutes,status\n1,2027-03-02,RB-014,torch,12,11,792,\n2,2027-03-02,,,,,45.5,\n",
            "Date;Sku;Started;Good;Minutes\n02.03.2027;RB-014;12;11;792,5\n03.03.2027;RB-014;12;13;\n",
        ],
            ["ref", "on", "sku", "step", "started", "good", "minutes", "RB-014", "2027-03-02", "12", "0", "0.001", "100001", "cancelled"]),
        Whole("log-lines-json", ToldLines.OfJson, [
            """{"source":"shop","ref":"1","on":"2027-03-14","what":"sold","sku":"RB-014","channel":"web","pieces":1,"price":52.00,"order":"7","fees":1}"""
            + "\n" + """{"on":"2027-03-14","sku":"RB-014","channel":"web","pieces":2,"lineTotal":110.00,"order":"7","discount":4}""",
            """{"source":"book","ref":"1","on":"2027-03-02","sku":"RB-014","step":"torch","started":12,"good":11,"minutes":792}""",
        ],
            ["{", "}", ":", "null", "true", "\\u0041", "1e3", "-1", "0.5", "\"ref\":\"2\"", "\"on\":\"0001-01-01\"", "\"on\":\"9999-12-31\"",
                "\"pieces\":1000000", "\"what\":\"made\"", "\"what\":\"counted\"", "\"resale\":false", "\"stall\":\"Fair\"", "\"currency\":\"JPY\""]),
    ];

    /// <summary>Same answer however the bytes are cut.</summary>
    private static FuzzedParser Pieces(string name, Func<PipeReader, byte[], Task<List<string>>> told, string[] seeds, string[] words) => new(
        name,
        input => told(Dripping.Whole(input), input),
        async (input, random) =>
        {
            var whole = await told(Dripping.Whole(input), input);
            foreach (var pipe in new[]
            {
                Dripping.Pieces(input, 1),
                Dripping.Pieces(input, random.Next(2, 9)),
                Dripping.CutAt(input, random.Next(1, input.Length + 2)),
            })
                if (!whole.SequenceEqual(await told(pipe, input)))
                    throw new InvalidOperationException("It is read otherwise where it comes in pieces.");
        },
        Bytes(seeds),
        [.. s_marks, .. Bytes(words)]);

    private static FuzzedParser Statement(string name, string[] seeds, string[] words) => Whole(name, ToldRows.OfStatement, seeds, words);

    /// <summary>What it must hold is insisted on where it is read.</summary>
    private static FuzzedParser Whole(string name, Func<byte[], Task> read, string[] seeds, string[] words) =>
        new(name, read, (_, _) => Task.CompletedTask, Bytes(seeds), [.. s_marks, .. Bytes(words)]);

    private static byte[][] Bytes(params string[] texts) => [.. texts.Select(Encoding.UTF8.GetBytes)];
}
