using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using System.Text.Json;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Pictures;
using PriceFloor.Api.Sheets;

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
    private static readonly ConditionalWeakTable<IDocuments, ConcurrentDictionary<(PriceListQuery, Format, DateOnly), TaggedBody>> s_kept = [];

    public static async Task<IResult> Get(FromQuery<PriceListQuery> query, RecordKeeper keeper, HttpContext context)
    {
        var (asked, format) = (query.Value, Offers.Of(context).Wanted(context.Request)!);
        var records = keeper.Whole(asked.AsOf);
        if (format == Format.Svg && asked.Channel is null)
            return Problem.Invalid([new InputError { Parameter = "channel", Code = "required", Detail = "A picture is of one channel; name it." }]);
        if (Unknown(records, asked) is { Count: > 0 } unknown)
            return Problem.UnknownReference(unknown);
        return (await Kept(records, asked, format, context.RequestAborted)).Answer(context, format);
    }

    private static async Task<TaggedBody> Kept(Records records, PriceListQuery asked, Format format, CancellationToken cancel)
    {
        var lists = s_kept.GetOrCreateValue(records.Documents);
        if (lists.TryGetValue((asked, format, records.Today), out var kept))
            return kept;
        if (lists.Count >= KeptLists)
            lists.Clear();
        var list = Of(records, asked);
        return lists[(asked, format, records.Today)] = TaggedBody.Of(
            format == Format.Csv ? await PriceListSheet.Of(list, asked.Dialect, cancel)
            : format == Format.Svg && records.Channel(asked.Channel!) is { } channel ? PriceLadderPicture.Of(list, InWords.Named(channel.Document.Name, channel.Key), channel.Document.Currency)
            : format == Format.Html ? PricePage.Of(list, records.Channels.ToDictionary(one => one.Key, one => one.Document.Name), records.Today)
            : JsonSerializer.SerializeToUtf8Bytes(list, WireJson.Options));
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
        var wanted = asked.Channel is { } key ? [records.Channel(key)!] : records.Channels;
        var channels = wanted.Where(channel => channel.Sound is not null).ToList();
        var items = new List<PriceListItemAnswer>();
        var warnings = wanted.Except(channels).Select(channel => new Warning(DamagedDocumentException.Code, $"The channel \"{channel.Key}\" is damaged as it is stored, so the list leaves it out; PUT it again.", "/basis/channels")).ToList();
        var designs = records.Documents.Designs.Where(design => asked.Profile is null || design.Sound?.Profile == asked.Profile).ToList();
        // Right after a profile has changed every price is reckoned anew: on all processors.
        foreach (var (design, prices) in designs.AsParallel().AsOrdered().Select(design => (design, channels.Select(channel => PricedDesign.Of(records, design, channel)).ToList())))
            foreach (var (channel, priced) in channels.Zip(prices))
            {
                if (asked.Verdict is { } verdict && priced.Verdict != verdict)
                    continue;
                if (priced.NotAllowed)
                    warnings.Add(Warnings.NotAllowed($"/items/{items.Count}/listedPrice"));
                items.Add(PriceListItemAnswer.Of(design, channel, priced));
            }

        var profiles = designs.Select(design => design.Sound?.Profile).OfType<string>().Distinct().Order(StringComparer.Ordinal).Select(records.Profile);
        return new PriceListAnswer
        {
            Items = items,
            Basis = new PriceListBasisAnswer([.. profiles.Where(profile => profile is not null).Select(profile => profile!.Basis)], [.. channels.Select(channel => channel.Basis)]),
            Warnings = WarningAnswer.Of(warnings),
        };
    }
}
