namespace PriceFloor.Statements.Files;

/// <summary>Why a line is refused. The details are fixed sentences, so they can contain nothing that the bank wrote.</summary>
internal sealed record LineFault(Code Code, string Detail)
{
    public static readonly LineFault BadDate = new(LineCodes.BadDate,
        "The date is missing or is not a day of the calendar; words are read if they are English months, as in 4 March 2027.");

    public static readonly LineFault AmbiguousDate =
        new(LineCodes.AmbiguousDate,
            "The date may be day-month or month-day, and no line of the file shows which; "
            + "add ?dateOrder=day-month-year or ?dateOrder=month-day-year.");

    public static readonly LineFault BadAmount = new(LineCodes.BadAmount,
        "The amount is missing or no plain number; remove signs of currencies other than the draft's own, other letters, exponents, and marks "
        + "between thousands where no decimals follow. At most 18 digits.");

    public static readonly LineFault SignWithoutCurrency = new(LineCodes.BadAmount,
        "The amount has the sign of a currency; add ?currency= with the code of the currency that the accounts are in.");

    public static readonly LineFault TwoCurrencies = new(LineCodes.BadCurrency,
        "The code beside the amount is not that in the column of the currency.");

    public static readonly LineFault BothDirections = new(LineCodes.BadAmount,
        "Money in and money out are both filled; one line can only have one of them.");

    public static readonly LineFault NoDirection = new(LineCodes.BadAmount, "Neither money in nor money out is filled.");

    public static readonly LineFault Zero = new(LineCodes.Zero, "The amount is zero; nothing came in or went out.");

    public static readonly LineFault BadPlace = new(LineCodes.BadPlace,
        "To, cost kind, traced to, income kind or business share are no words or share that a reading rule takes, or do not go together.");

    public static readonly LineFault Total = new(LineCodes.Total, "It is a total or a balance of the sheet, not a transaction.");

    public static readonly LineFault BadCurrency = new(LineCodes.BadCurrency, "The currency is not an ISO 4217 code of three letters.");

    public static readonly LineFault TooManyCells = new(LineCodes.TooManyCells,
        "The line has more cells than the header; words or amounts that contain the separator need quotes around them.");

    public static readonly LineFault Quotes = new(LineCodes.BadQuotes,
        "A quote is never closed, something is between a closing quote and the separator, or the line has more than 1,000 cells.");

    public static readonly LineFault NotBooked = new(LineCodes.NotBooked, "The bank has not booked it yet; it will be in a later statement.");

    public static readonly LineFault NoSign = new(LineCodes.BadDirection, "It does not say whether it is a credit or a debit.");

    public static readonly LineFault UnknownDirection = new(LineCodes.BadDirection,
        "The direction is none of the words that are read, such as debit and credit, D and C, DR and CR, out and in, minus and plus.");

    public static readonly LineFault MinusIn = new(LineCodes.BadDirection, "The amount has a minus, but its direction is money in.");

    public static readonly LineFault Corrected = new(LineCodes.Corrected, "The bank replaced or deleted it later in the file.");

    public static readonly LineFault Deletion = new(LineCodes.Correction,
        "It is not a transaction: it deletes another one of this file, which is left out.");

    public static readonly LineFault CorrectsElsewhere = new(LineCodes.Correction,
        "It corrects a transaction that is not in this file; export a period that has both.");
}
