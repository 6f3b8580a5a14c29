using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Sheets;

public static class SheetQuery
{
    public static readonly QueryParameter Dialect = new("dialect", "\"semicolon\" for sheets with semicolons between columns and decimal commas.",
        "string", Example: "semicolon");

    public static SheetDialect DialectOf(QueryValues values) =>
        values.EnumValue<SheetHabit>("dialect") == SheetHabit.Semicolon ? SheetDialect.Semicolon : SheetDialect.Comma;
}

/// <summary>The two dialects of sheets, as the query spells them.</summary>
public enum SheetHabit { Comma, Semicolon }
