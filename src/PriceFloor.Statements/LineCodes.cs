namespace PriceFloor.Statements;

/// <summary>Why a line of a statement is in no figure.</summary>
public static class LineCodes
{
    public static readonly Code BadDate = new("bad-date",
        "The date is missing, is not a day of the calendar, or has a month in words that are not English.",
        "Correct the line, or name the right column.");

    public static readonly Code AmbiguousDate = new("ambiguous-date",
        "The date may be day-month or month-day, and no line of the file shows which.",
        "Say dateOrder.");

    public static readonly Code BadAmount = new("bad-amount",
        "The amount is not a number, or both or neither of money in and money out are filled.",
        "Correct the line, or name the right columns.");

    public static readonly Code Zero = new("zero",
        "The amount is zero; nothing came in or went out.",
        "Nothing needs doing.");

    public static readonly Code BadPlace = new("bad-place",
        "A line of a cash book says what it is in words that a reading rule does not take.",
        "Use the words of reading rules, or leave the cells empty.");

    public static readonly Code Total = new("total",
        "The line is a total or a balance of the sheet, not a transaction.",
        "Nothing needs doing.");

    public static readonly Code BadCurrency = new("bad-currency",
        "The currency is not an ISO 4217 code, or the line names two.",
        "Correct the line.");

    public static readonly Code TooManyCells = new("too-many-cells",
        "The line has more cells than the heading has names.",
        "Put text that has separators into quotes.");

    public static readonly Code BadQuotes = new("bad-quotes",
        "A quote is never closed, or text follows a closing quote.",
        "Double the quotes inside a cell, and close it with one.");

    public static readonly Code NotBooked = new("not-booked",
        "The bank has not booked the line yet.",
        "Do nothing: it will be in a later statement.");

    public static readonly Code BadDirection = new("bad-direction",
        "The line does not say whether it is a credit or a debit, or says it in unknown words.",
        "Correct the line, or name the right column.");

    public static readonly Code Corrected = new("corrected",
        "The bank replaced or deleted the line later in the file.",
        "Nothing needs doing.");

    public static readonly Code Correction = new("correction",
        "The line is not a transaction: it corrects another one.",
        "Do nothing if that one is in this file; else check it by hand.");

    /// <summary>Lines that a bank writes on purpose and that need nothing; any other line that is not read is a failure to read it.</summary>
    private static readonly Code[] s_expected = [Zero, Total, NotBooked, Corrected, Correction];

    /// <summary>True if the code says that the line could not be read, false if there is nothing to read in it.</summary>
    public static bool IsFailure(Code code) => !s_expected.Contains(code);
}
