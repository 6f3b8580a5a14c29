using PriceFloor.Api.Evidence;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Evidence.Demand;

namespace PriceFloor.Api.Demands;

/// <summary>What is asked of the demand for a design.</summary>
/// <param name="Channel">The channel; null: that of most orders.</param>
/// <param name="Price">A price to look at; null: what is asked.</param>
/// <param name="Pieces">Pieces that are left; null: more can be made.</param>
/// <param name="Days">How many days from the last on.</param>
/// <param name="Aim">What a bench hour is worth.</param>
/// <param name="Asked">Which lines, and how sure.</param>
/// <param name="AsOf">The moment; null: now.</param>
/// <param name="Workings">Whether to say how the figures came about.</param>
public sealed record DemandQuery(string? Channel, decimal? Price, int? Pieces, int Days, Aim Aim, AskedOfLines Asked, DateTimeOffset? AsOf,
    bool Workings) : IQuery<DemandQuery>
{
    public const int UsualDays = 90;

    private const int MostPieces = 100_000, MostDays = 3650;

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of the channel. If absent: the one on which the design has most orders.", "string", Example: "web"),
        new("price", "What sales at this price would bring. If absent: at the price that is asked.", "number", "decimal", "62.00"),
        new("pieces", "So many pieces are left and no more will be made: best is the price of the last ones. If absent: more can be made.",
            "integer", Example: "6", Minimum: 1, Maximum: MostPieces),
        new("days", "How many days, from the day after to, are looked at.", "integer", Example: "56", Minimum: 1, Maximum: MostDays,
            Default: "90"),
        new("aim", "What a bench hour is worth: with scarce-hours each must earn its share of the year; with idle-hours it costs nothing more.",
            "string", Example: "idle-hours", Default: "\"scarce-hours\""),
        .. AskedOfLines.Parameters,
        QueryParameters.AsOf,
        QueryParameters.Workings,
    ];

    public static DemandQuery Read(QueryValues values) => new(values.Text("channel"), values.Number("price", new PriceAttribute { Above = true }),
        values.IntegerOrNull("pieces", 1, MostPieces), values.Integer("days", 1, MostDays, UsualDays),
        values.EnumValue<Aim>("aim") ?? Aim.ScarceHours, AskedOfLines.Of(values, withLearning: false), values.Time("asOf"),
        values.Boolean("workings"));
}
