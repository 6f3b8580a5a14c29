using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>How to read the statements, and the purpose of the draft.</summary>
public sealed record StatementQuery : IQuery<StatementQuery>
{
    /// <summary>The life of equipment in years if none is given. Common practice, without a source.</summary>
    private const decimal UsualLife = 5;

    private const string DefaultRules = "main";
    private const int ColumnName = StatementLayout.ColumnLength;

    public DateTimeOffset? AsOf { get; private init; }

    /// <summary>The key of the reading rules.</summary>
    public string Rules { get; private init; } = DefaultRules;

    /// <summary>Whether the caller named the rules: then they must exist.</summary>
    public bool NamesRules { get; private init; }

    /// <summary>The key of the stored profile to compare with.</summary>
    public string? Against { get; private init; }

    public string? Currency { get; private init; }

    public DateOnly? From { get; private init; }

    public DateOnly? To { get; private init; }

    public DateOnly? YearStart { get; private init; }

    public decimal? EquipmentFrom { get; private init; }

    public decimal LifeYears { get; private init; } = UsualLife;

    /// <summary>The account's name for a file that is the whole body.</summary>
    public string? Account { get; private init; }

    /// <summary>Whether to list every line with its outcome.</summary>
    public bool Lines { get; private init; }

    /// <summary>Whether to answer the draft alone, as it is stored.</summary>
    public bool OnlyDraft { get; private init; }

    /// <summary>How the year's sales are spread over its months; null: evenly over its days.</summary>
    public Season? Season { get; private init; }

    /// <summary>Key of a plan that says so.</summary>
    public string? Plan { get; private init; }

    /// <summary>How sheets are written whose account has no layout of its own.</summary>
    public StatementLayout Layout { get; private init; } = new();

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("rules", "Key of the reading rules. Naming them needs the scope read; for a key that may not read, none are used.", "string",
            Example: "main", Default: "\"main\""),
        new("against", "Key of a stored profile: it supplies what no bank knows, and the answer shows the difference for each kind of cost. "
            + "Needs the scope read.", "string", Example: "main"),
        new("currency", "ISO 4217 code of the draft. If absent: that of the profile to compare with, else the first in a file.",
            "string", Example: "USD"),
        new("from", "Lines before this day are left out.", "string", "date", "2026-01-01"),
        new("to", "Lines after this day are left out.", "string", "date", "2026-12-31"),
        new("yearStart", "First day of the drafted year. If absent: that of the profile to compare with, else the first month covered.", "string",
            "date", "2027-01-01"),
        new("equipmentFrom", "A single purchase of at least this amount becomes equipment. If absent: 1,000 of a currency with cents, "
            + "100,000 of one without (our own choice).", "number", "decimal", "1000", Minimum: 0, Maximum: Limits.HighestPrice),
        new("lifeYears", "The life of such equipment in years (common practice, no source): whole months.", "number", "decimal", "5", Minimum: 1,
            Maximum: 100, Default: "5"),
        new("season", "Twelve weights, one for each month of the profile's year, with commas between: how sales are spread, for the pace. "
            + "Only proportions count. Absent: even.", "string", Example: "4,5,6,6,8,6,5,5,7,10,19,19"),
        new("plan", "In place of season: key of a stored plan, whose receipts of each month are the weights. Needs the scope read.", "string",
            Example: "2027"),
        new("account", "With one file as the body: its account's name if the file does not give one.", "string", Example: "current"),
        new("lines", "With true, the answer lists every line with its outcome and the rule that took it.", "boolean", Default: "false"),
        new("only", "With draft, the answer is the drafted profile alone, ready to PUT to /v1/profiles/{key}.", "string", Example: "draft"),
        new("dateOrder", "How sheets write their dates. If absent: as a line of the file proves that has only one reading; ISO 8601 and "
            + "English month names are always read.", "string",
            Example: "day-month-year"),
        .. ColumnParameters,
        SheetQuery.Dialect,
        QueryParameters.AsOf,
    ];

    private static IEnumerable<QueryParameter> ColumnParameters =>
    [
        new("dateColumn", "Heading of a sheet's column with the day.", "string", Example: "Booked"),
        new("amountColumn", "Heading of the column with signed amounts: positive came in.", "string", Example: "Amount"),
        new("directionColumn", "Heading of the column that says which way the money went (debit and credit, D and C, out and in, ...), if the "
            + "amounts have no signs.", "string", Example: "Direction"),
        new("positiveIsOut", "True if a positive amount is money that went out, as on the statements of some cards.", "boolean", Default: "false"),
        new("inColumn", "Heading of the column with money in, if in and out have a column each.", "string", Example: "Paid in"),
        new("outColumn", "Heading of the column with money out.", "string", Example: "Paid out"),
        new("textColumn", "Heading of the column with the text.", "string", Example: "Details"),
        new("idColumn", "Heading of the column with the bank's own id.", "string", Example: "Reference"),
        new("currencyColumn", "Heading of the column with the currency.", "string", Example: "Currency"),
        new("accountColumn", "Heading of the column with the account.", "string", Example: "Account"),
    ];

    public static StatementQuery Read(QueryValues values)
    {
        var rules = values.Text("rules");
        var read = new StatementQuery
        {
            AsOf = values.Time("asOf"),
            Rules = rules ?? DefaultRules,
            NamesRules = rules is not null,
            Against = values.Text("against"),
            Currency = values.Text("currency", 3),
            From = values.Date("from"),
            To = values.Date("to"),
            YearStart = values.Date("yearStart"),
            EquipmentFrom = values.Number("equipmentFrom", new MoneyAttribute()),
            LifeYears = values.Number("lifeYears", new QuantityAttribute { Minimum = "1", Maximum = "100" }) ?? UsualLife,
            Account = values.Text("account"),
            Lines = values.Boolean("lines"),
            OnlyDraft = values.EnumValue<StatementPart>("only") is not null,
            Season = SeasonOf(values),
            Plan = values.Text("plan"),
            Layout = LayoutOf(values),
        };
        if (read.Currency is { } code && Pricing.Numbers.Currency.Find(code) is null)
            values.Add("currency", FaultCodes.UnknownCurrency, "currency must be an ISO 4217 code in capitals, such as USD.");
        foreach (var fault in read.Layout.Faults().Where(fault => fault.Pointer is "/directionColumn" or "/positiveIsOut"))
            values.Add(fault.Pointer[1..], fault.Code, fault.Detail);
        if (read is { Plan: not null, Season: not null })
            values.Add("plan", FaultCodes.Unexpected, "Give season or plan, not both.");
        if (read.To < read.From)
            values.Add("to", FaultCodes.OutOfOrder, "to must not be before from.");
        if (read.LifeYears * 12 % 1 != 0)
            values.Add("lifeYears", FaultCodes.OutOfRange, "lifeYears must be whole months: twelve times it is a whole number, such as 7.5.");
        return read;
    }

    private static Season? SeasonOf(QueryValues values)
    {
        if (values.Text("season", 400) is not { } text)
            return null;
        var weights = text.Trim('[', ']').Split(',').Select(weight => NumberText.Read(weight.Trim(), "season", new QuantityAttribute())).ToList();
        var season = weights.TrueForAll(weight => weight.Code is null)
            ? Pricing.Planning.Season.Of([.. weights.Select(weight => weight.Value)])
            : null;
        if (season is null)
            values.Add("season", InputCodes.NotASeason,
                "season must be twelve numbers of at least 0 with commas between, one of them above 0, such as 4,5,6,6,8,6,5,5,7,10,19,19.");
        return season;
    }

    private static StatementLayout LayoutOf(QueryValues values) => new()
    {
        Dialect = values.EnumValue<StatementDialect>("dialect"),
        DateOrder = values.EnumValue<DateOrder>("dateOrder"),
        DateColumn = values.Text("dateColumn", ColumnName),
        AmountColumn = values.Text("amountColumn", ColumnName),
        DirectionColumn = values.Text("directionColumn", ColumnName),
        PositiveIsOut = values.Boolean("positiveIsOut") ? true : null,
        InColumn = values.Text("inColumn", ColumnName),
        OutColumn = values.Text("outColumn", ColumnName),
        TextColumn = values.Text("textColumn", ColumnName),
        IdColumn = values.Text("idColumn", ColumnName),
        CurrencyColumn = values.Text("currencyColumn", ColumnName),
        AccountColumn = values.Text("accountColumn", ColumnName),
    };
}

/// <summary>A part of the answer that can be asked for alone.</summary>
public enum StatementPart
{
    /// <summary>The drafted profile.</summary>
    Draft,
}
