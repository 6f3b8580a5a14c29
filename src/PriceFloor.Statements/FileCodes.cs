namespace PriceFloor.Statements;

/// <summary>Why a statement file, or a reading rule's pattern, cannot be read at all.</summary>
public static class FileCodes
{
    public static readonly Code UnknownFormat = new("unknown-format",
        "The file is neither CSV with named columns, nor OFX, nor ISO 20022 camt.053.",
        "Export it from the bank in one of these formats, or name the columns of a sheet with other headings; the detail says which it has.");

    public static readonly Code Malformed = new("malformed",
        "The body or file breaks its own format (JSON, CSV, XML, OFX), perhaps because it was cut off or edited.",
        "Correct it at the line and column, or export it again.");

    public static readonly Code Doctype = new("doctype",
        "The XML declares a document type, which no statement needs and which can be used to attack.",
        "Export it again, or remove the declaration.");

    public static readonly Code NoStatement = new("no-statement",
        "The file has no bank or card statement in it.",
        "Export the account's transactions.");

    public static readonly Code TooMany = new("too-many",
        "There are more lines or items than are read at once.",
        "Send it in parts, such as a year each.");

    public static readonly Code UnsignedAmount = new("unsigned-amount",
        "The amounts have no sign, and no column is named that says which way the money went.",
        "Name the columns for money in and out, or the one that says the direction.");

    public static readonly Code Dialect = new("dialect",
        "The separator or the decimal mark of the file is not the one that was asked for.",
        "Add ?dialect=semicolon, or leave it out; the detail says which.");

    public static readonly Code MissingColumn = new("missing-column",
        "The sheet lacks a required column.",
        "Rename yours, or give its name in the query; the detail says which parameter.");

    public static readonly Code DuplicateColumn = new("duplicate-column",
        "Two columns of the sheet have the same name.",
        "Rename or delete one of them.");

    public static readonly Code BadPattern = new("bad-pattern",
        "The pattern is not a regular expression that can be matched in bounded time.",
        "Correct it; look-around and back references are not supported.");
}
