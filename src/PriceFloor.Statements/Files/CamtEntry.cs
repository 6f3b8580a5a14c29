namespace PriceFloor.Statements.Files;

/// <summary>
/// One Ntry while it is read. An entry that books several payments at once becomes one transaction for each, if all of them have an amount in the
/// entry's currency and these add up to the entry exactly. Otherwise it stays one, so no money is made or lost.
/// </summary>
internal sealed class CamtEntry(int line)
{
    private readonly CamtPart _own = new();
    private readonly List<CamtPart> _details = [];

    /// <summary>Takes the start of an element, and returns how many payments have begun by it.</summary>
    public int Open(string path, string? currency)
    {
        if (path == "NtryDtls/TxDtls")
        {
            _details.Add(new CamtPart());
            return 1;
        }

        if (currency is not null)
            Say($"{path}@Ccy", currency);
        return 0;
    }

    public void Say(string path, string value)
    {
        const string Detail = "NtryDtls/TxDtls/";
        if (!path.StartsWith(Detail, StringComparison.Ordinal))
            _own.Say(path, value);
        else if (_details.Count > 0)
            _details[^1].Say(path[Detail.Length..], value);
    }

    public void End(CamtStatement statement, ParseResult result)
    {
        if (Read(statement, out var entry) is { } fault)
        {
            result.Refuse(line, fault.Code, fault.Detail);
            return;
        }
        foreach (var transaction in Parts(entry!))
        {
            statement.Add(transaction);
            result.Take();
        }
    }

    private LineFault? Read(CamtStatement statement, out Transaction? entry)
    {
        entry = null;
        // Text in version 02, a code of its own from version 04.
        if ((_own["Sts/Cd"] ?? _own["Sts"])?.Trim() != "BOOK")
            return LineFault.NotBooked;
        if ((CamtValue.Day(_own["BookgDt/Dt"] ?? _own["BookgDt/DtTm"]) ?? CamtValue.Day(_own["ValDt/Dt"] ?? _own["ValDt/DtTm"])) is not { } date)
            return LineFault.BadDate;
        if (CamtValue.Amount(_own["Amt"]) is not { } amount)
            return LineFault.BadAmount;
        if (amount == 0)
            return LineFault.Zero;
        if (_own.Sign is not { } sign)
            return LineFault.NoSign;
        var currency = PlainText.Currency(_own["Amt@Ccy"]) ?? statement.Currency;
        if (currency is "")
            return LineFault.BadCurrency;
        entry = new Transaction
        {
            Line = line,
            Date = date,
            Amount = sign * amount,
            Currency = currency,
            BankId = Id(),
            Text = PlainText.Of([.. _details.SelectMany(part => part.Words(PaidBy(sign))), _own["AddtlNtryInf"]]),
        };
        return null;
    }

    private string? Id() =>
        PlainText.Id(_own["AcctSvcrRef"]) ?? PlainText.Id(_own["NtryRef"])
        ?? (_details is [var only] ? PlainText.Id(only["Refs/AcctSvcrRef"]) : null);

    /// <summary>
    /// The other side: for money that came in, the debtor. CdtDbtInd is the direction of this entry even if RvslInd says that it reverses another
    /// ("If the CreditDebitIndicator is CRDT and ReversalIndicator is Yes, the original operation was a debit entry", ISO 20022, ReportEntry). So the
    /// sign is right as it is; only the roles of the parties are still those of the reversed entry.
    /// </summary>
    private string PaidBy(int sign) => (sign > 0) != (_own["RvslInd"]?.Trim() is "true" or "1") ? "Dbtr" : "Cdtr";

    private List<Transaction> Parts(Transaction entry)
    {
        if (_details.Count < 2)
            return [entry];
        var amounts = _details.ConvertAll(part => part.Amount(entry));
        if (amounts.Exists(amount => amount is null or 0) || amounts.Sum() != entry.Amount)
            return [entry];
        return [.. _details.Select((part, i) => entry with
        {
            Amount = amounts[i]!.Value,
            BankId = entry.BankId is { } id ? $"{id}/{i + 1}" : null,
            Text = PlainText.Of([.. part.Words(PaidBy(decimal.Sign(entry.Amount))), _own["AddtlNtryInf"]]),
        })];
    }
}
