using System.Globalization;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.LogLines;

/// <summary>Which lines of the log to list.</summary>
public sealed record LogListQuery : IQuery<LogListQuery>
{
    public string? Sku { get; private init; }

    public string? Channel { get; private init; }

    public string? Source { get; private init; }

    public DateOnly? From { get; private init; }

    public DateOnly? To { get; private init; }

    public int Limit { get; private init; }

    /// <summary>Only lines after this position.</summary>
    public long After { get; private init; }

    public DateTimeOffset? AsOf { get; private init; }

    /// <summary>The moment as the store counts time; null for now.</summary>
    public long? Moment => AsOf is { } time ? Storage.Moment.Of(time) : null;

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("sku", "Only lines of this design: its key or an alias.", "string", Example: "RB-014"),
        new("channel", "Only lines on this channel.", "string", Example: "web"),
        new("source", "Only lines of this source.", "string", Example: "web-shop"),
        new("from", "Only lines of this day and later.", "string", "date", "2027-03-01"),
        new("to", "Only lines of this day and earlier.", "string", "date", "2027-03-31"),
        QueryParameters.Limit, QueryParameters.After with { Example = "100" }, QueryParameters.AsOf,
    ];

    public static LogListQuery Read(QueryValues values)
    {
        var after = values.Text("after");
        var position = 0L;
        if (after is not null && !long.TryParse(after, NumberStyles.None, CultureInfo.InvariantCulture, out position))
            values.Add("after", InputCodes.UnknownCursor, "after must be the next of an earlier answer.");
        return new LogListQuery
        {
            Sku = values.Text("sku", Limits.AliasLength),
            Channel = values.Text("channel"),
            Source = values.Text("source"),
            From = values.Date("from"),
            To = values.Date("to"),
            Limit = values.Integer("limit", 1, 1000, 100),
            After = position,
            AsOf = values.Time("asOf"),
        };
    }

    /// <summary>The question to the store: one line more than asked for says whether there is a next page.</summary>
    internal LogQuestion Question(Catalogue catalogue, ProfileAccess access, long upTo) => new()
    {
        UpTo = upTo,
        After = After,
        Limit = Limit + 1,
        Source = Source,
        Design = Sku is null ? null : catalogue.DesignNamed(Sku)?.Key ?? Sku,
        Place = Channel,
        From = From?.DayNumber,
        To = To?.DayNumber,
        Designs = LogRequest.DesignsOf(catalogue, access),
    };
}

/// <summary>The same for bench entries, which have no channel.</summary>
public sealed record BenchListQuery(LogListQuery List) : IQuery<BenchListQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [.. LogListQuery.Parameters.Where(parameter => parameter.Name != "channel")];

    public static BenchListQuery Read(QueryValues values) => new(LogListQuery.Read(values));
}
