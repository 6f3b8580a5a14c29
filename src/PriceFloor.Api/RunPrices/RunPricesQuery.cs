using System.Globalization;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.RunPrices;

/// <summary>One design on one channel, made to order in several quantities.</summary>
public sealed record RunPricesQuery(string Channel, IReadOnlyList<int> Quantities, decimal? Sure, DateTimeOffset? AsOf, bool Workings)
    : IQuery<RunPricesQuery>
{
    private const int MostQuantities = 12, MostPieces = 10_000;
    private const string Usual = "1,2,6,12,24,48";

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel.", "string", Example: "web", Required: true),
        new("quantities", "1 to 12 whole quantities of 1 to 10,000 pieces, with commas between.", "string", Default: $"\"{Usual}\"",
            Example: Usual),
        new("sure", "The chance, 0.5 to 0.999, with which enough pieces must come out good: so many are started and paid for. If absent, as many as "
            + "are lost on average.", "number", "decimal", "0.9", Minimum: 0, Maximum: 0.999m),
        QueryParameters.AsOf, QueryParameters.Workings,
    ];

    public static RunPricesQuery Read(QueryValues values) => new(values.RequiredText("channel"), QuantitiesOf(values),
        values.Number("sure", new ShareAttribute { Minimum = "0.5", Maximum = "0.999" }), values.Time("asOf"), values.Boolean("workings"));

    private static List<int> QuantitiesOf(QueryValues values)
    {
        var parts = (values.Text("quantities", 200) ?? Usual).Split(',');
        var quantities = new List<int>();
        foreach (var part in parts)
            if (int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var pieces) && pieces is >= 1 and <= MostPieces)
                quantities.Add(pieces);
        if (quantities.Count == parts.Length && parts.Length <= MostQuantities)
            return quantities;
        values.Add("quantities", parts.Length > MostQuantities ? FaultCodes.OutOfRange : InputCodes.NotAList, string.Create(
            CultureInfo.InvariantCulture, $"quantities must be 1 to {MostQuantities} whole numbers from 1 to {MostPieces}, such as {Usual}."));
        return [1];
    }
}
