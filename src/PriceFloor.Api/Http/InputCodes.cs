using PriceFloor.Statements;

namespace PriceFloor.Api.Http;

/// <summary>Faults that a request can have, beside those of documents themselves.</summary>
public static class InputCodes
{
    public static readonly Code AboveMaximum = new("above-maximum",
        "A minimum is above its maximum.",
        "Lower the minimum, or raise the maximum.");

    public static readonly Code AnswerColumn = new("answer-column",
        "The column to read is one that the answer fills.",
        "Rename the column to read.");

    public static readonly Code BadKey = new("bad-key",
        "The key cannot name a document.",
        "Use 1 to 64 letters, digits and . _ ~ : + -, and neither \"batch\" nor \".\" nor \"..\".");

    public static readonly Code CellWithoutValue = new("cell-without-value",
        "A cell of a workbook shows an error, is a formula without a result, or is a date where a number belongs.",
        "Type the value, or correct the formula and save the workbook in the spreadsheet.");

    public static readonly Code ControlCharacter = new("control-character",
        "A text has a control character, such as a line break or a tab.",
        "Take it out.");

    public static readonly Code DuplicateParameter = new("duplicate-parameter",
        "A query parameter is given twice.",
        "Leave one out.");

    public static readonly Code DuplicateProperty = new("duplicate-property",
        "A property is given twice.",
        "Leave one out.");

    public static readonly Code Empty = new("empty",
        "The body, sheet or value is empty.",
        "Send a body in a format that the address reads.");

    public static readonly Code Exponent = new("exponent",
        "A number is written with an exponent.",
        "Write its digits out.");

    public static readonly Code KeyInAddress = new("key-in-address",
        "The address has an access key, which logs and histories would keep.",
        "Send it as the header Authorization, and replace that key.");

    public static readonly Code LongRow = new("long-row",
        "The row has more cells than the heading.",
        "Put text that has separators into quotes.");

    public static readonly Code ShortRow = new("short-row",
        "The row has fewer cells than the heading.",
        "Add the separators of the empty cells.");

    public static readonly Code NotADate = new("not-a-date",
        "The text is not a date that exists.",
        "Write it as 2027-02-28.");

    public static readonly Code NotAList = new("not-a-list",
        "The text is not a list of numbers.",
        "Write numbers with commas between.");

    public static readonly Code NotANumber = new("not-a-number",
        "The text is not a plain number, or a change multiplies or adds to what is no number.",
        "Write digits with at most one decimal point, without currency signs, spaces or thousands marks; give what is no number with to.");

    public static readonly Code NotASeason = FaultCodes.NotASeason;

    public static readonly Code NotATime = new("not-a-time",
        "The text is not a time with its offset.",
        "Write it as 2027-03-01T00:00:00Z; in a query, write + as %2B.");

    public static readonly Code NotAnArray = new("not-an-array",
        "The body is not a JSON array.",
        "Send an array, lines of JSON, or a sheet.");

    public static readonly Code NotOneOf = new("not-one-of",
        "The word is not one of those that the field takes.",
        "Use one of the words in the detail; case counts.");

    public static readonly Code NotUtf8 = new("not-utf-8",
        "A character is not UTF-8.",
        "Save and send it as UTF-8.");

    public static readonly Code Null = new("null",
        "A value is null but must not be.",
        "Give a value, or leave the property out if it is optional.");

    public static readonly Code TooLong = new("too-long",
        "A text, line or row is longer than the limit.",
        "Shorten it.");

    public static readonly Code TooManyDigits = new("too-many-digits",
        "A number has more than 18 digits.",
        "Shorten it; that is finer than any price.");

    public static readonly Code UnknownChannel = new("unknown-channel",
        "There is no channel of that key (or was none at that time).",
        "Store it first, or correct the key; case counts.");

    public static readonly Code UnknownColumn = new("unknown-column",
        "The sheet has an unknown column.",
        "Correct its name, or delete it; the detail lists the known ones.");

    public static readonly Code UnknownCursor = new("unknown-cursor",
        "The cursor is not of this store's history: the store was restored, or a document was forgotten.",
        "Begin again without since, and keep the new cursor.");

    public static readonly Code UnknownDesign = new("unknown-design",
        "There is no design of that key or alias (or was none at that time).",
        "Store it first, or correct the name; case counts.");

    public static readonly Code UnknownParameter = new("unknown-parameter",
        "The address does not take that query parameter.",
        "Correct its name, or leave it out.");

    public static readonly Code UnknownPlan = new("unknown-plan",
        "There is no plan of that key.",
        "Store it first, or correct the key; case counts.");

    public static readonly Code UnknownProfile = new("unknown-profile",
        "There is no profile of that key (or was none at that time).",
        "Store it first, or correct the key; case counts.");

    public static readonly Code UnknownProperty = new("unknown-property",
        "The object does not have that property.",
        "Correct its name, or leave it out; nothing is ignored silently.");

    public static readonly Code UnknownQuote = new("unknown-quote",
        "There is no quote of that key for the profile.",
        "Store it first, or correct the key (case counts).");

    public static readonly Code UnknownReadingRules = new("unknown-reading-rules",
        "There are no reading rules of that key.",
        "Store them first, or correct the key; case counts.");

    public static readonly Code UnknownScenario = new("unknown-scenario",
        "There is no scenario of that key for the profile (or was none at that time).",
        "Store it first, or correct the key; case counts.");

    public static readonly Code UnknownReference = new("unknown-reference",
        "A change names a document that the request does not have: another profile, a design of another profile, or nothing.",
        "Name the request's profile, one of its designs or their prices, or a channel; case counts.");

    public static readonly Code UnknownSheet = new("unknown-sheet",
        "The workbook has a sheet of another name than those of a studio.",
        "Correct its name, or let the name of a sheet of your own begin with an underscore.");

    public static readonly Code WrongType = new("wrong-type",
        "The value has the wrong JSON type.",
        "Send the type that the detail names.");

    public static readonly Code Malformed = FileCodes.Malformed;

    public static readonly Code TooMany = FileCodes.TooMany;

    public static readonly Code Dialect = FileCodes.Dialect;

    public static readonly Code MissingColumn = FileCodes.MissingColumn;

    public static readonly Code DuplicateColumn = FileCodes.DuplicateColumn;

    /// <summary>Validators have codes as words; this gives back the code.</summary>
    public static Code Named(string word) => s_named.Value[word];

    private static readonly Lazy<Dictionary<string, Code>> s_named =
        new(() => Code.In(typeof(FaultCodes)).Concat(Code.In(typeof(FileCodes))).Concat(Code.In(typeof(InputCodes))).DistinctBy(code => code.Word)
            .ToDictionary(code => code.Word));
}
