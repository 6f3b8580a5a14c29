namespace PriceFloor.Statements;

/// <summary>
/// Finds lines that are in the files more than once: by the bank's own id if there is one, else by date, amount and text. Two equal lines in *one*
/// file without an id are two purchases; in two files they are one. Some banks restart their ids in each statement, so an id means the same line only
/// with the same day and amount.
/// </summary>
public sealed class Duplicates
{
    private readonly HashSet<(string Account, string Id, DateOnly Date, decimal Amount)> _ids = [];
    private readonly HashSet<(string Account, string Id)> _idsAlone = [];
    private readonly Dictionary<(string, DateOnly, decimal, string), (int Kept, int File, int InFile)> _alike = [];

    /// <summary>Found only by date, amount and text.</summary>
    public int ByLikeness { get; private set; }

    /// <summary>Equal lines of one file that were all counted.</summary>
    public int Repeated { get; private set; }

    /// <summary>Ids with two different days or amounts: both lines were counted.</summary>
    public int IdsUsedAgain { get; private set; }

    /// <summary>True if the entry has already been counted. Entries come file by file.</summary>
    public bool Has(Entry entry)
    {
        if (entry.Transaction.BankId is not { } id)
            return HasAlike(entry);
        if (!_ids.Add((entry.Account, id, entry.Date, entry.Amount)))
            return true;
        if (!_idsAlone.Add((entry.Account, id)))
            IdsUsedAgain++;
        return false;
    }

    private bool HasAlike(Entry entry)
    {
        var key = (entry.Account, entry.Date, entry.Amount, entry.Transaction.Text);
        var (kept, file, inFile) = _alike.GetValueOrDefault(key, (0, entry.File, 0));
        inFile = file == entry.File ? inFile + 1 : 1;
        var isDuplicate = inFile <= kept;
        if (isDuplicate)
            ByLikeness++;
        else if (inFile > 1)
            Repeated++;
        _alike[key] = (isDuplicate ? kept : kept + 1, entry.File, inFile);
        return isDuplicate;
    }
}
