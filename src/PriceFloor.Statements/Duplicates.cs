namespace PriceFloor.Statements;

/// <summary>
/// Finds what stands more than once: by the bank's own id where there is one, else by date, amount and words. Two equal lines in *one*
/// file without an id are two purchases; in two files they are one. Some banks
/// count their ids anew in each statement, so that an id stands for the same line only with the same day and amount.
/// </summary>
public sealed class Duplicates
{
    private readonly HashSet<(string Account, string Id, DateOnly Date, decimal Amount)> _ids = [];
    private readonly HashSet<(string Account, string Id)> _idsAlone = [];
    private readonly Dictionary<(string, DateOnly, decimal, string), (int Kept, int File, int InFile)> _alike = [];

    /// <summary>Found by date, amount and words alone.</summary>
    public int ByLikeness { get; private set; }

    /// <summary>Equal lines of one file that were all counted.</summary>
    public int Repeated { get; private set; }

    /// <summary>Ids that stand at two different days or amounts: both were counted.</summary>
    public int IdsUsedAgain { get; private set; }

    /// <summary>True where the entry has been counted already. Entries come file by file.</summary>
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
