using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Sheets;

public static class SheetQuery
{
    public static readonly QueryParameter Dialect = new("dialect", "\"semicolon\" for sheets with semicolons between columns and decimal commas.",
        "string", Example: "semicolon");

    /// <param name="values">The query.</param>
    /// <param name="prefix">What the parameter's name begins with, where a request has two sheets.</param>
    public static SheetDialect DialectOf(QueryValues values, string prefix = "") =>
        values.EnumValue<SheetHabit>(prefix + Dialect.Name) == SheetHabit.Semicolon ? SheetDialect.Semicolon : SheetDialect.Comma;
}

/// <summary>The two dialects of sheets, as the query spells them.</summary>
public enum SheetHabit { Comma, Semicolon }
