using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using System.Text.Json;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;
using PriceFloor.Pricing;

namespace PriceFloor.Api.PriceLists;

/// <summary>Which part of the price list.</summary>
public sealed record PriceListQuery(string? Channel, string? Profile, Verdict? Verdict, SheetDialect Dialect, DateTimeOffset? AsOf) : IQuery<PriceListQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel; absent: every channel.", "string", Example: "web"),
        new("profile", "Only designs of this cost profile.", "string", Example: "main"),
        new("verdict", "Only listed prices with this verdict: below-floor, below-target or meets-target.", "string", Example: "below-floor"),
        SheetQuery.Dialect, QueryParameters.AsOf,
    ];

    public static PriceListQuery Read(QueryValues values) => new(values.Text("channel"), values.Text("profile"), values.Word<Verdict>("verdict"), SheetQuery.DialectOf(values), values.Time("asOf"));
}

public static class PriceListRoutes
{
    private const int KeptLists = 16;

    /// <summary>Lists of the present documents, made once for the same documents and the same question.</summary>
    private static readonly ConditionalWeakTable<IDocuments, ConcurrentDictionary<(PriceListQuery, Format), TaggedBody>> s_kept = [];

    public static async Task<IResult> Get(FromQuery<PriceListQuery> query, RecordKeeper keeper, HttpContext context)
    {
        var (asked, format) = (query.Value, Offers.Of(context).Wanted(context.Request)!);
        var (preconditions, unreadable) = Preconditions.Of(context.Request);
        if (unreadable is not null)
            return unreadable;
        var records = keeper.Whole(asked.AsOf);
        if (Unknown(records, asked) is { Count: > 0 } unknown)
            return Problem.UnknownReference(unknown);
        var body = await Kept(records, asked, format, context.RequestAborted);
        return body.Answer(format, known: preconditions!.IsKnown(body.Tag));
    }

    private static async Task<TaggedBody> Kept(Records records, PriceListQuery asked, Format format, CancellationToken cancel)
    {
        var lists = s_kept.GetOrCreateValue(records.Documents);
        if (lists.TryGetValue((asked, format), out var kept))
            return kept;
        if (lists.Count >= KeptLists)
            lists.Clear();
        var list = Of(records, asked);
        return lists[(asked, format)] = TaggedBody.Of(format == Format.Csv ? await PriceListSheet.Of(list, asked.Dialect, cancel) : JsonSerializer.SerializeToUtf8Bytes(list, WireJson.Options));
    }

    private static List<InputError> Unknown(Records records, PriceListQuery asked)
    {
        var unknown = new List<InputError>();
        if (asked.Channel is { } channel && records.Channel(channel) is null)
            unknown.Add(new InputError { Parameter = "channel", Code = "unknown-channel", Detail = $"There is no channel \"{channel}\"; case counts." });
        if (asked.Profile is { } profile && records.Profile(profile) is null)
            unknown.Add(new InputError { Parameter = "profile", Code = "unknown-profile", Detail = $"There is no profile \"{profile}\"; case counts." });
        return unknown;
    }

    private static PriceListAnswer Of(Records records, PriceListQuery asked)
    {
        var channels = asked.Channel is { } key ? [records.Channel(key)!] : records.Channels;
        var items = new List<PriceListItemAnswer>();
        var warnings = new List<Warning>();
        var designs = records.Documents.Designs.Where(design => asked.Profile is null || design.Document.Profile == asked.Profile).ToList();
        foreach (var design in designs)
            foreach (var channel in channels)
            {
                var priced = PricedDesign.Of(records, design, channel);
                if (asked.Verdict is { } verdict && priced.Verdict != verdict)
                    continue;
                if (priced.OffGrid)
                    warnings.Add(Warnings.OffGrid($"/items/{items.Count}/listedPrice"));
                items.Add(PriceListItemAnswer.Of(design, channel, priced));
            }

        var profiles = designs.Select(design => design.Document.Profile).Distinct().Order(StringComparer.Ordinal).Select(records.Profile);
        return new PriceListAnswer
        {
            Items = items,
            Basis = new PriceListBasisAnswer([.. profiles.Where(profile => profile is not null).Select(profile => profile!.Basis)], [.. channels.Select(channel => channel.Basis)]),
            Warnings = WarningAnswer.Of(warnings),
        };
    }
}

/// <summary>A body with an ETag that is the same exactly as long as the body is.</summary>
public sealed record TaggedBody(byte[] Body, string Tag)
{
    public static TaggedBody Of(byte[] body) => new(body, $"\"{Convert.ToHexStringLower(SHA256.HashData(body).AsSpan(0, 16))}\"");

    public IResult Answer(Format format, bool known) => new Sent(this, format, known);

    private sealed class Sent(TaggedBody tagged, Format format, bool known) : IResult
    {
        public async Task ExecuteAsync(HttpContext httpContext)
        {
            var response = httpContext.Response;
            response.StatusCode = known ? StatusCodes.Status304NotModified : StatusCodes.Status200OK;
            response.Headers.ETag = tagged.Tag;
            response.Headers.CacheControl = "private, no-cache";
            response.Headers.Vary = "Accept";
            if (known)
                return;
            response.ContentType = format.ContentType;
            response.ContentLength = tagged.Body.Length;
            await response.Body.WriteAsync(tagged.Body, httpContext.RequestAborted);
        }
    }
}
