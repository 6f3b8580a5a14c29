namespace PriceFloor.Statements.Files;

/// <summary>The words by which a column says which way the money went, in the languages of the banks that write them.</summary>
internal static class Direction
{
    private static readonly HashSet<string> s_in = ["c", "cr", "crdt", "credit", "in", "money in", "paid in", "received", "deposit", "+", "h",
        "haben", "gutschrift", "bij", "crédit", "haber", "abono", "avere"];

    private static readonly HashSet<string> s_out = ["d", "dr", "dbit", "debit", "out", "money out", "paid out", "paid", "withdrawal", "-",
        "\u2212", "s", "soll", "lastschrift", "af", "débit", "debe", "cargo", "dare"];

    /// <summary>Null if the word is none of them.</summary>
    public static Paid? Of(string cell)
    {
        var word = SheetWords.Plain(cell);
        return s_in.Contains(word) ? Paid.In : s_out.Contains(word) ? Paid.Out : null;
    }
}
