namespace PriceFloor.Evidence.Sheets;

/// <summary>Why a line of a log is refused, beside what may be wrong with a line of any sheet.</summary>
public static class SheetLineCodes
{
    public static readonly Code OrderAmountsDiffer = new("order-amounts-differ",
        "Lines of one order give different amounts for the whole order, such as two discounts.",
        "Give the order's amount on one of its lines, or the same on each.");

    public static readonly Code RefUsedTwice = new("ref-used-twice",
        "Two lines of one request have the same ref and say different things.",
        "Name a column as refColumn in which every line has its own id.");

    public static readonly Code MadeTwice = new("made-twice",
        "Pieces of the design count as made that day by the other list already: by a movement, or by a source of bench entries that counts as made.",
        "Send what was made by one of the two lists only.");
}
