using System.Globalization;
using System.Security;
using System.Text;

namespace PriceFloor.Statements.Tests.Files;

/// <summary>An invented studio's year on three accounts, and how four kinds of banks would write it.</summary>
internal static class StudioYear
{
    public const string Current = "XX0010001", Savings = "XX0010002", Card = "4000-7";

    private static readonly (string Account, string[] Names, decimal[] Amounts)[] s_habits =
    [
        (Current, ["Market day", "Kiln & Co <gas>", "Shop \"online\"; order", "Rent, studio", "Café Grün – lunch"],
            [412.50m, -88.10m, 59.90m, -350m, -17.35m]),
        (Savings, ["To savings", "Interest"], [150m, 1.07m]),
        (Card, ["Borosilicate rods", "Refund of rods", "Postage"], [-1240.99m, 310.25m, -6.75m]),
    ];

    /// <summary>Twelve months of each habit: 5 + 2 + 3 transactions a month, 120 in all.</summary>
    public static IReadOnlyList<(string Account, Transaction Transaction)> Transactions { get; } =
    [
        .. from habit in s_habits
           from month in Enumerable.Range(1, 12)
           from i in Enumerable.Range(0, habit.Names.Length)
           select (habit.Account, new Transaction
           {
               Line = 0,
               Date = new DateOnly(2027, month, 1 + (i * 6) + (month % 3)),
               Amount = habit.Amounts[i] + (habit.Amounts[i] > 0 ? month : -month),
               Currency = habit.Account == Card ? "USD" : "EUR",
               BankId = $"{habit.Account}:{month}.{i}",
               Text = $"{habit.Names[i]} {month}",
           }),
    ];

    private static IEnumerable<IGrouping<string, Transaction>> ByAccount => Transactions.GroupBy(one => one.Account, one => one.Transaction);

    public static string Sheet(bool semicolon)
    {
        var sheet = new StringBuilder("Account,Booking date,Description,Amount,Currency,Transaction ID\r\n".Replace(',', semicolon ? ';' : ','));
        foreach (var (account, one) in Transactions)
        {
            var amount = one.Amount.ToString("#,##0.00", CultureInfo.InvariantCulture);
            if (semicolon)
                amount = amount.Replace(',', '_').Replace('.', ',').Replace('_', '.');
            string[] cells = [account, $"{one.Date:yyyy-MM-dd}", one.Text, amount, one.Currency!, one.BankId!];
            sheet.AppendJoin(semicolon ? ';' : ',', cells.Select(cell => $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\""))
                .Append("\r\n");
        }
        return sheet.ToString();
    }

    public static string OfxSgml() =>
        "OFXHEADER:100\r\nDATA:OFXSGML\r\nVERSION:102\r\nSECURITY:NONE\r\nENCODING:USASCII\r\nCHARSET:1252\r\nCOMPRESSION:NONE\r\nOLDFILEUID:NONE\r\n"
        + "NEWFILEUID:NONE\r\n\r\n"
        + Ofx((tag, value) => $"<{tag}>{SecurityElement.Escape(value)}\r\n");

    public static string OfxXml() =>
        "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"no\"?>\n"
        + "<?OFX OFXHEADER=\"200\" VERSION=\"220\" SECURITY=\"NONE\" OLDFILEUID=\"NONE\" NEWFILEUID=\"NONE\"?>\n"
        + Ofx((tag, value) => $"<{tag}>{SecurityElement.Escape(value)}</{tag}>");

    private static string Ofx(Func<string, string, string> leaf)
    {
        var (bank, card) = (new StringBuilder(), new StringBuilder());
        foreach (var account in ByAccount)
        {
            var (into, prefix, from) = account.Key == Card ? (card, "CC", "CCACCTFROM") : (bank, "", "BANKACCTFROM");
            into.Append($"<{prefix}STMTTRNRS>{leaf("TRNUID", "1")}<{prefix}STMTRS>{leaf("CURDEF", account.First().Currency!)}")
                .Append($"<{from}>{leaf("ACCTID", account.Key)}</{from}>");
            into.Append($"<BANKTRANLIST>{leaf("DTSTART", "20270101")}{leaf("DTEND", "20271231")}");
            foreach (var one in account)
                into.Append($"<STMTTRN>{leaf("TRNTYPE", "OTHER")}{leaf("DTPOSTED", $"{one.Date:yyyyMMdd}120000")}")
                    .Append(leaf("TRNAMT", one.Amount.ToString(CultureInfo.InvariantCulture)))
                    .Append($"{leaf("FITID", one.BankId!)}{leaf("MEMO", one.Text)}</STMTTRN>");
            into.Append($"</BANKTRANLIST></{prefix}STMTRS></{prefix}STMTTRNRS>");
        }
        return $"<OFX><BANKMSGSRSV1>{bank}</BANKMSGSRSV1><CREDITCARDMSGSRSV1>{card}</CREDITCARDMSGSRSV1></OFX>";
    }

    public static string Camt()
    {
        var camt = new StringBuilder(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.08\"><BkToCstmrStmt>");
        foreach (var account in ByAccount)
        {
            camt.Append("<Stmt><FrToDt><FrDtTm>2027-01-01T00:00:00</FrDtTm><ToDtTm>2027-12-31T23:59:59</ToDtTm></FrToDt>");
            camt.Append($"<Acct><Id><Othr><Id>{account.Key}</Id></Othr></Id></Acct>");
            foreach (var one in account)
                camt.Append(CultureInfo.InvariantCulture,
                    $"<Ntry><Amt Ccy=\"{one.Currency}\">{decimal.Abs(one.Amount)}</Amt><CdtDbtInd>{(one.Amount > 0 ? "CRDT" : "DBIT")}</CdtDbtInd>")
                    .Append(CultureInfo.InvariantCulture,
                        $"<Sts><Cd>BOOK</Cd></Sts><BookgDt><Dt>{one.Date:yyyy-MM-dd}</Dt></BookgDt><AcctSvcrRef>{one.BankId}</AcctSvcrRef>")
                    .Append($"<NtryDtls><TxDtls><RmtInf><Ustrd>{SecurityElement.Escape(one.Text)}</Ustrd></RmtInf></TxDtls></NtryDtls></Ntry>");
            camt.Append("</Stmt>");
        }
        return camt.Append("</BkToCstmrStmt></Document>").ToString();
    }
}
