using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>The hours that accepted quotes still take: what a plan keeps back.</summary>
public static class QuoteLoadRoutes
{
    public static async Task<Results<JsonAnswer<QuoteLoadAnswer>, Problem>> Get(FromQuery<QuoteLoadQuery> query, Store store, CatalogueReader reader,
        TimeProvider clock, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (profile, asOf) = query.Value;
        if (profile is not null && await reader.Read(asOf, catalogue => catalogue.Profile(profile)) is null)
            return Problem.UnknownReference([Place.Query.Error("profile", InputCodes.UnknownProfile,
                $"There is no profile \"{profile}\"{(asOf is null ? "" : " at that time")}; case counts.")]);
        var (access, today) = (Caller.Of(context).Access, StoredQuote.DayOf(asOf, clock));
        var quotes = await store.ReadAsync(snapshot => QuoteLoad.Of(snapshot, access, profile, asOf, today));
        return JsonAnswer.Of(new QuoteLoadAnswer
        {
            Hours = Answers.Hours(quotes.Sum(quote => quote.Text.Issued!.BenchHours)),
            Quotes = [.. quotes.Select(quote => new QuoteLoadItemAnswer(quote.Key, quote.Document.Profile,
                Answers.Hours(quote.Text.Issued!.BenchHours), quote.Outcome!.On!.Value, quote.Document.Promised))],
        });
    }
}

/// <summary>Whose accepted quotes.</summary>
public sealed record QuoteLoadQuery(string? Profile, DateTimeOffset? AsOf) : IQuery<QuoteLoadQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
        [new("profile", "Only quotes of this cost profile.", "string", Example: "main"), QueryParameters.AsOf];

    public static QuoteLoadQuery Read(QueryValues values) => new(values.Text("profile"), values.Time("asOf"));
}

/// <summary>The hours of accepted quotes that are not done.</summary>
public sealed record QuoteLoadAnswer
{
    /// <summary>All of them together, as they were quoted; up to four decimals.</summary>
    public required decimal Hours { get; init; }

    /// <summary>The quotes in order of key.</summary>
    public required IReadOnlyList<QuoteLoadItemAnswer> Quotes { get; init; }
}

/// <summary>One accepted quote.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Profile">Its cost profile.</param>
/// <param name="BenchHours">All hours of it, as they were quoted.</param>
/// <param name="AcceptedOn">The day on which it was accepted.</param>
/// <param name="Promised">The promised day; null if none is.</param>
public sealed record QuoteLoadItemAnswer(string Key, string Profile, decimal BenchHours, DateOnly AcceptedOn, DateOnly? Promised);
