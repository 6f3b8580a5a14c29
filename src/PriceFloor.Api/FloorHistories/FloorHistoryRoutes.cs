using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Pictures;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorHistories;

public static class FloorHistoryRoutes
{
    public static async Task<IResult> Get(PathKey path, FromQuery<FloorHistoryQuery> query, Store store, TimeProvider clock, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        var access = Caller.Of(context).Access;
        return await store.ReadAsync<IResult>(async snapshot =>
        {
            long? asOf = asked.AsOf is { } time ? Moment.Of(time) : null;
            if (await access.Seen(snapshot, snapshot.Find(Kinds.Design, path.Text, asOf)) is not { } design)
                return Problem.Of(ProblemTypes.NotFound, $"There is no design \"{path.Text}\" (or there was none at that time).");
            if (await snapshot.Find(Kinds.Channel, asked.Channel, asOf) is not { } channel)
                return Problem.UnknownReference(
                    [Place.Query.Error("channel", InputCodes.UnknownChannel, $"There is no channel \"{asked.Channel}\"; case counts.")]);
            var (moments, earlier) = await PricedMoments.Of(snapshot, path.Text, asked.Channel, asOf ?? long.MaxValue, asked.Limit, access);
            var on = Stored<Channel>.Of(channel).Document;
            var answer = new FloorHistoryAnswer
            {
                Sku = path.Text,
                Name = Stored<Design>.Of(design).Document.Name,
                Channel = asked.Channel,
                Currency = on.Currency,
                Items = Moves(moments, Currency.Of(on.Currency)),
                Earlier = earlier is { } before ? Moment.ToTime(before) : null,
            };
            return Offers.Of(context).Wanted(context.Request) == Format.Svg
                ? TaggedBody.Of(FloorHistoryPicture.Of(answer, DisplayText.Named(on.Name, asked.Channel), DayOf(asked.AsOf ?? clock.GetUtcNow())))
                    .Answer(context, Format.Svg)
                : JsonAnswer.Of(answer);
        });
    }

    private static DateTimeOffset DayOf(DateTimeOffset time) => new(time.UtcDateTime.Date, TimeSpan.Zero);

    /// <summary>Only moments at which a figure moved, and not before the design existed.</summary>
    private static List<FloorMomentAnswer> Moves(IReadOnlyList<PricedMoment> moments, Currency money)
    {
        var items = new List<FloorMomentAnswer>();
        foreach (var moment in moments)
        {
            var priced = moment.Currency == money.Code ? moment.Priced : null; // a price in another currency cannot share a scale with this one
            decimal? Price(decimal? price) => price is { } exact ? Rounding.WithDecimals(exact, money.Decimals) : null;
            var item = new FloorMomentAnswer
            {
                At = Moment.ToTime(moment.At),
                FloorPrice = Price(priced?.FloorPrice),
                TargetPrice = Price(priced?.TargetPrice),
                ListedPrice = Price(priced?.ListedPrice),
                Verdict = priced?.Verdict,
                Reason = moment.Priced is null ? ReasonCodes.NotStored
                    : priced is null ? moment.Priced.Reason ?? FaultCodes.CurrencyMismatch
                    : priced.Reason,
                MovedBy = moment.Written,
                Changed = moment.Changed,
                Basis = moment.Basis,
            };
            if (items.Count == 0 ? moment.Priced is not null : IsAnother(item, items[^1]))
                items.Add(item);
        }

        return items;
    }

    private static bool IsAnother(FloorMomentAnswer one, FloorMomentAnswer other) =>
        (one.FloorPrice, one.TargetPrice, one.ListedPrice, one.Verdict, one.Reason) != (other.FloorPrice, other.TargetPrice, other.ListedPrice,
            other.Verdict, other.Reason);
}

/// <summary>The channel, and how far back.</summary>
public sealed record FloorHistoryQuery(string Channel, int Limit, DateTimeOffset? AsOf) : IQuery<FloorHistoryQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel.", "string", Example: "web", Required: true),
        new("limit", "How many of the newest writes of documents behind the floor to examine.", "integer", Example: "20", Minimum: 1,
            Maximum: 1000, Default: "100"),
        new("asOf", "The history up to then: a time with its offset. The previous answer's earlier leads further back.", "string", "date-time",
            "2027-03-01T00:00:00Z"),
    ];

    public static FloorHistoryQuery Read(QueryValues values) =>
        new(values.RequiredText("channel"), values.Integer("limit", 1, 1000, 100), values.Time("asOf"));
}
