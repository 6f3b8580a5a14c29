namespace PriceFloor.Statements.Files;

/// <summary>One STMTRS or CCSTMTRS while it is read.</summary>
internal sealed class OfxStatement
{
    private readonly List<Transaction?> _transactions = [];
    private readonly List<(OfxTransaction Correction, int? At)> _corrections = [];
    private string? _bank, _account, _currency;
    private DateOnly? _from, _to;

    public void Say(string inside, string field, string value)
    {
        switch (inside, field)
        {
            case ("STMTRS" or "CCSTMTRS", "CURDEF"):
                _currency = PlainText.Currency(value);
                break;
            case ("BANKACCTFROM", "BANKID"):
                _bank = value;
                break;
            case ("BANKACCTFROM" or "CCACCTFROM", "ACCTID"):
                _account = value;
                break;
            case ("BANKTRANLIST", "DTSTART"):
                _from = OfxValue.Day(value);
                break;
            // The specification (11.4.2.2) calls DTEND the value to send as the next DTSTART "to ensure that it does not miss any transactions":
            // a time up to which the statement is complete. Its day counts as covered; a line that comes again in the next file is recognised by its
            // FITID.
            case ("BANKTRANLIST", "DTEND"):
                _to = OfxValue.Day(value);
                break;
        }
    }

    public void Add(OfxTransaction read, ParseResult result)
    {
        if (read.CorrectedId is not null && read.IsDeletion)
        {
            _corrections.Add((read, null));
            result.Take();
            return;
        }
        if (read.Read(_currency, out var transaction) is { } fault)
        {
            result.Refuse(read.Line, fault.Code, fault.Detail);
            return;
        }
        if (read.CorrectedId is not null)
            _corrections.Add((read, _transactions.Count));
        _transactions.Add(transaction);
        result.Take();
    }

    public AccountStatement End(string account, ParseResult result)
    {
        Correct(result);
        return new AccountStatement(Name() ?? account, _from, _to, [.. _transactions.OfType<Transaction>()]);
    }

    /// <summary>The bank's number makes an account's number unique.</summary>
    private string? Name() =>
        PlainText.Account(_account) is not { } number ? null : PlainText.Account(_bank) is { } bank ? $"{bank}/{number}" : number;

    /// <summary>
    /// A correction replaces the line that it corrects. If that line is in another file, neither can be identified here, so the correction is
    /// refused.
    /// </summary>
    private void Correct(ParseResult result)
    {
        if (_corrections.Count == 0)
            return;
        var places = new Dictionary<string, int>();
        for (var i = 0; i < _transactions.Count; i++)
            if (_transactions[i]?.BankId is { } id)
                places.TryAdd(id, i);
        foreach (var (correction, at) in _corrections)
        {
            var isHere = places.TryGetValue(correction.CorrectedId!, out var place) && place != at && _transactions[place] is not null;
            if (isHere)
                Drop(place, LineFault.Corrected, result);
            if (at is { } own && !isHere)
                Drop(own, LineFault.CorrectsElsewhere, result);
            else if (at is null)
                result.Untake(correction.Line, isHere ? LineFault.Deletion : LineFault.CorrectsElsewhere);
        }
    }

    private void Drop(int place, LineFault why, ParseResult result)
    {
        result.Untake(_transactions[place]!.Line, why);
        _transactions[place] = null;
    }
}
