using System.Text.Json;

namespace PriceFloor.Statements.Files;

/// <summary>The columns by which a line of a cash book says itself what it is, as a reading rule would. All of them may be missing.</summary>
internal sealed class CashBook
{
    private static readonly string[] s_what = ["what", "what for", "for", "item", .. SheetWords.Text.Where(word => word != "name")];

    private static readonly SheetAmount s_shares = new('.'), s_sharesWithComma = new(',');

    private readonly string[] _words;
    private readonly SheetAmount _amounts;

    private CashBook(string[] words, bool hasCommas)
    {
        (_words, _amounts) = (words, hasCommas ? s_sharesWithComma : s_shares);
        (To, CostKind, Name) = (Find("to"), Find("cost kind", "costkind"), Find("name", "line"));
        (Share, TracedTo, IncomeKind) =
            (Find("business share", "businessshare"), Find("traced to", "tracedto"), Find("income kind", "incomekind"));
        var what = Enumerable.Range(0, words.Length).Where(i => s_what.Contains(words[i])).ToList();
        Texts = what.Count > 0 || Name < 0 ? what : [Name];
    }

    /// <summary>The columns with the text.</summary>
    public IReadOnlyList<int> Texts { get; }

    /// <summary>Whether its lines can say what they are without a text.</summary>
    public bool SaysPlaces => To >= 0 || CostKind >= 0;

    private int To { get; }

    private int CostKind { get; }

    private int Name { get; }

    private int Share { get; }

    private int TracedTo { get; }

    private int IncomeKind { get; }

    public static CashBook Of(string[] words, bool hasCommas) => new(words, hasCommas);

    /// <returns>Null if the line says a valid place or none, else why not.</returns>
    public LineFault? Read(IReadOnlyList<string> cells, out ReadingRule? says)
    {
        says = null;
        var isRead = Word<Placement>(cells, To, out var to) & Word<CostKind>(cells, CostKind, out var costKind)
            & Word<TracedTo>(cells, TracedTo, out var tracedTo) & Word<IncomeKind>(cells, IncomeKind, out var incomeKind)
            & ShareOf(cells, out var share);
        if (!isRead)
            return LineFault.BadPlace;
        if (to is null && costKind is null)
            return tracedTo is null && incomeKind is null && share is null ? null : LineFault.BadPlace;
        var name = PlainText.Of(Cell(cells, Name));
        says = new ReadingRule
        {
            To = to ?? Placement.Business,
            CostKind = costKind,
            TracedTo = tracedTo,
            IncomeKind = incomeKind,
            BusinessShare = share,
            Name = name.Length is > 0 and <= Limits.NameLength ? name : null,
            Least = 0,
        };
        return ReadingRuleFaults.Of(new ReadingRules { Rules = [says] }, _ => true).Any() ? LineFault.BadPlace : null;
    }

    /// <summary>False if there is a word, but none that is known. Spaces and capitals do not matter: "Car and travel" is car-and-travel.</summary>
    private static bool Word<T>(IReadOnlyList<string> cells, int column, out T? value) where T : struct, Enum
    {
        value = null;
        var word = SheetWords.Plain(Cell(cells, column)).Replace(' ', '-');
        if (word.Length == 0)
            return true;
        foreach (var known in Enum.GetValues<T>())
            if (JsonNamingPolicy.KebabCaseLower.ConvertName(known.ToString()) == word)
                value = known;
        return value is not null;
    }

    private bool ShareOf(IReadOnlyList<string> cells, out decimal? share)
    {
        share = null;
        if (string.IsNullOrWhiteSpace(Cell(cells, Share)))
            return true;
        if (_amounts.Read(Cell(cells, Share), null, out var read, out var code) is not null || code is not null || read is < 0 or > 1)
            return false;
        share = read;
        return true;
    }

    private int Find(params string[] names) => Array.FindIndex(_words, names.Contains);

    private static string Cell(IReadOnlyList<string> cells, int column) => column >= 0 && column < cells.Count ? cells[column] : "";
}
