namespace PriceFloor.Statements.Files;

/// <summary>The columns of a sheet by meaning; -1 if there is none.</summary>
internal sealed class SheetColumns
{
    private readonly string[] _words;

    public SheetColumns(IReadOnlyList<string> header, SheetReading sheet)
    {
        Headings = header;
        _words = [.. header.Select(SheetWords.Plain)];
        Count = header.Count;
        Date = Find(sheet.DateColumn, SheetWords.Date);
        (Amount, In, Out) = Money(sheet);
        Texts = sheet.TextColumn is { } named ? [Find(named, [])] : [.. Enumerable.Range(0, Count).Where(i => SheetWords.Text.Contains(_words[i]))];
        CashBook = sheet.IsCashBook ? CashBook.Of(_words, sheet.Semicolon) : null;
        if (CashBook is { } book && sheet.TextColumn is null)
            Texts = book.Texts;
        Id = Find(sheet.IdColumn, SheetWords.Id);
        Currency = Find(sheet.CurrencyColumn, SheetWords.Currency);
        Account = Find(sheet.AccountColumn, SheetWords.Account);
        Direction = Find(sheet.DirectionColumn, []);
        Beside = Amount >= 0 && sheet.DirectionColumn is null ? Find(null, SheetWords.Direction) : -1;
        IsUnsigned = Beside >= 0 && sheet.AmountColumn is null;
        Missing = [.. MissingOf(sheet)];
    }

    /// <summary>The headings as the file has them.</summary>
    public IReadOnlyList<string> Headings { get; }

    public int Count { get; }

    public int Date { get; }

    public int Amount { get; }

    /// <summary>The column that says which way the money went, as the caller named it.</summary>
    public int Direction { get; }

    /// <summary>A column that seems to say which way the money went, although the caller did not name it.</summary>
    public int Beside { get; }

    public int In { get; }

    public int Out { get; }

    public IReadOnlyList<int> Texts { get; }

    /// <summary>The columns of a cash book that say what a line is; null for any other sheet.</summary>
    public CashBook? CashBook { get; }

    public int Id { get; }

    public int Currency { get; }

    public int Account { get; }

    /// <summary>Parameters whose column the header does not have, or that must name a column that was not recognised.</summary>
    public IReadOnlyList<string> Missing { get; }

    /// <summary>A header names at least a day and an amount.</summary>
    public bool IsHeader => Date >= 0 && (Amount >= 0 || In >= 0 || Out >= 0);

    /// <summary>At least one column of two or more is recognised: it was meant as a header, but is incomplete.</summary>
    public bool IsNearly => Count > 1 && (Date >= 0 || Amount >= 0 || In >= 0 || Out >= 0);

    /// <summary>
    /// The amounts seem to have no sign, since another column has their direction. If the caller names their column, the lines show whether they do.
    /// </summary>
    public bool IsUnsigned { get; }

    /// <summary>One column has the amounts, and none that the caller named has their direction.</summary>
    public bool IsSigned => Amount >= 0 && Direction < 0;

    /// <summary>Columns for in and out are more certain than one amount, which might have no sign beside them.</summary>
    private (int Amount, int In, int Out) Money(SheetReading sheet)
    {
        if (sheet.AmountColumn is not null || sheet.DirectionColumn is not null)
            return (Find(sheet.AmountColumn, SheetWords.Amount), -1, -1);
        var (ins, outs) = (Find(sheet.InColumn, SheetWords.In), Find(sheet.OutColumn, SheetWords.Out));
        var amount = Find(null, SheetWords.Amount);
        var isNamed = sheet.InColumn is not null || sheet.OutColumn is not null;
        return isNamed || (ins >= 0 && outs >= 0) || amount < 0 ? (-1, ins, outs) : (amount, -1, -1);
    }

    private int Find(string? named, string[] words)
    {
        if (named is not null)
            return Array.IndexOf(_words, SheetWords.Plain(named));
        foreach (var word in words)
            if (Array.IndexOf(_words, word) is >= 0 and var found)
                return found;
        return -1;
    }

    private IEnumerable<string> MissingOf(SheetReading sheet)
    {
        if (Date < 0)
            yield return "dateColumn";
        if (Amount < 0 && (sheet.AmountColumn is not null || (In < 0 && Out < 0)))
            yield return "amountColumn";
        if (sheet.DirectionColumn is not null && Direction < 0)
            yield return "directionColumn";
        if (sheet.AmountColumn is null && sheet.InColumn is not null && In < 0)
            yield return "inColumn";
        if (sheet.AmountColumn is null && sheet.OutColumn is not null && Out < 0)
            yield return "outColumn";
        if (sheet.TextColumn is not null ? Texts[0] < 0 : Texts.Count == 0 && CashBook is not { SaysPlaces: true })
            yield return "textColumn";
        if (sheet.IdColumn is not null && Id < 0)
            yield return "idColumn";
        if (sheet.CurrencyColumn is not null && Currency < 0)
            yield return "currencyColumn";
        if (sheet.AccountColumn is not null && Account < 0)
            yield return "accountColumn";
    }
}
