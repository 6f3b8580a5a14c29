using PriceFloor.Api.Demands;
using PriceFloor.Api.Evidence;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Evidence.Prices;

namespace PriceFloor.Api.StockLists;

/// <summary>Which pieces on hand are asked about, and what could be done with them.</summary>
/// <param name="OlderThan">Older pieces are slow, in days.</param>
/// <param name="Profile">Key of the profile; null: all.</param>
/// <param name="Sku">Key of one design; null: all.</param>
/// <param name="Days">A mark-down has so many days.</param>
/// <param name="MaterialsKept">The share of the materials that a piece taken apart leaves; null: none is taken apart.</param>
/// <param name="ReworkMinutes">Bench minutes that it takes.</param>
/// <param name="Asked">The day, and how sure.</param>
/// <param name="AsOf">The moment; null: now.</param>
/// <param name="Workings">Whether to say how the figures came about.</param>
public sealed record StockQuery(int OlderThan, string? Profile, string? Sku, int Days, decimal? MaterialsKept, decimal ReworkMinutes,
    AskedOfLines Asked, DateTimeOffset? AsOf, bool Workings) : IQuery<StockQuery>
{
    private const int MostDays = 3650;

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("olderThan", "Pieces that are more than so many days old are slow.", "integer", Example: "365", Minimum: 0, Maximum: MostDays,
            Default: "365"),
        new("profile", "Key of a stored profile: its designs. If absent: those of all profiles.", "string", Example: "main"),
        new("sku", "Key of one design. If absent: all.", "string", Example: "RB-014"),
        new("days", "A mark-down has so many days, from the day after to, to sell the pieces.", "integer", Example: "56", Minimum: 1,
            Maximum: MostDays, Default: "90"),
        new("materialsKept", "The share of a piece's materials that taking it apart leaves. If absent: rework is not among the ways.", "number",
            "decimal", "0.6", Minimum: 0, Maximum: 1),
        new("reworkMinutes", "Bench minutes that taking a piece apart takes; with materialsKept.", "number", "decimal", "4", Default: "0"),
        .. AskedOfLines.Parameters.Where(parameter => parameter.Name != "from"), // what is on hand is known from all lines only
        QueryParameters.AsOf,
        QueryParameters.Workings,
    ];

    public static StockQuery Read(QueryValues values)
    {
        var read = new StockQuery(values.Integer("olderThan", 0, MostDays, SlowStock.OldDays), values.Text("profile"), values.Text("sku"),
            values.Integer("days", 1, MostDays, DemandQuery.UsualDays), values.Number("materialsKept", new ShareAttribute()),
            values.Number("reworkMinutes", new QuantityAttribute()) ?? 0, AskedOfLines.Of(values, withLearning: false), values.Time("asOf"),
            values.Boolean("workings"));
        if (read is { ReworkMinutes: > 0, MaterialsKept: null })
            values.Add("materialsKept", FaultCodes.Required, "materialsKept is missing: say what taking a piece apart leaves.");
        return read;
    }
}
