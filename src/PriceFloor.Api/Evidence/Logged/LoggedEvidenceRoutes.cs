using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Pictures;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>From the stored log to the numbers that are guessed.</summary>
public static class LoggedEvidenceRoutes
{
    public static async Task<IResult> Design(PathKey path, FromQuery<DesignEvidenceQuery> query, CatalogueReader reader, Store store,
        LogWatch watch, LoggedDesigns designs, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        var catalogue = await reader.Whole(asked.AsOf);
        if (catalogue.Design(path.Text) is not { } design)
            return Problem.Of(ProblemTypes.NotFound, $"There is no design \"{path.Text}\" (or there was none at that time).");
        if (asked.Channel is { } channel && catalogue.Channel(channel) is null)
            return Problem.UnknownReference(
                [Place.Query.Error("channel", InputCodes.UnknownChannel, $"There is no channel \"{channel}\"; case counts.")]);
        var choices = asked.Asked.Choices(catalogue.Today, asked.Channel);
        return await Answered(context, catalogue, asked.AsOf, () => store.ReadAsync(async snapshot => await designs.OfAsync(
            await LoggedQuestion.OfAsync(snapshot, watch, catalogue, choices, (asked.AsOf, Caller.Of(context).Access)), design, asked)));
    }

    public static async Task<IResult> Learning(PathKey path, FromQuery<LoggedEvidenceQuery> query, CatalogueReader reader, Store store,
        LogWatch watch, LoggedDesigns designs, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (asked, asOf) = (query.Value.Asked, query.Value.AsOf);
        var catalogue = await reader.Whole(asOf);
        if (catalogue.Design(path.Text) is not { } design)
            return Problem.Of(ProblemTypes.NotFound, $"There is no design \"{path.Text}\" (or there was none at that time).");
        var choices = asked.Choices(catalogue.Today);
        return await Answered(context, Format.Svg, catalogue, asOf, async () => await store.ReadAsync(async snapshot => await designs.FoundAsync(
            await LoggedQuestion.OfAsync(snapshot, watch, catalogue, choices, (asOf, Caller.Of(context).Access)), design)) is { Timed: { } timed }
                ? LearningPicture.Of(timed, DisplayText.Named(design.Document.Name, design.Key))
                : RequestFault.CannotCompute(EvidenceReasonCodes.NothingLogged,
                    $"The bench log has no minutes of \"{path.Text}\" within these days."));
    }

    public static async Task<IResult> Channel(PathKey path, FromQuery<LoggedEvidenceQuery> query, CatalogueReader reader, Store store,
        LogWatch watch, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var catalogue = await reader.Whole(query.Value.AsOf);
        if (catalogue.Channel(path.Text) is not { } channel)
            return Problem.Of(ProblemTypes.NotFound, $"There is no channel \"{path.Text}\" (or there was none at that time).");
        return await Answered(context, catalogue, query.Value.AsOf, () => store.ReadAsync(snapshot =>
            LoggedChannel.OfAsync(snapshot, watch, catalogue, channel, query.Value, Caller.Of(context).Access)));
    }

    public static async Task<IResult> Profile(PathKey path, FromQuery<LoggedEvidenceQuery> query, CatalogueReader reader, Store store,
        LogWatch watch, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var catalogue = await reader.Whole(query.Value.AsOf);
        if (catalogue.Profile(path.Text) is not { } profile)
            return Problem.Of(ProblemTypes.NotFound, $"There is no profile \"{path.Text}\" (or there was none at that time).");
        return await Answered(context, catalogue, query.Value.AsOf, () => store.ReadAsync(snapshot =>
            LoggedProfile.OfAsync(snapshot, watch, catalogue, profile, query.Value, Caller.Of(context).Access)));
    }

    /// <summary>A problem if lines add up to more than can be exact.</summary>
    internal static async Task<IResult> Guarded(Func<Task<IResult>> answer)
    {
        try
        {
            return await answer();
        }
        catch (Exception e) when (e is OverflowException or DivideByZeroException)
        {
            return Problem.CannotCompute(FaultCodes.TooLarge,
                "The lines add up to more than can be exact; look for one whose pieces or amounts are not what they are named for.");
        }
    }

    /// <summary>An answer with its ETag, or why there is none. It may be kept from before.</summary>
    internal static Task<IResult> Answered<T>(HttpContext context, WholeCatalogue documents, DateTimeOffset? asOf, Func<ValueTask<Outcome<T>>> answer)
        where T : class => Answered(context, Format.Json, documents, asOf, async () =>
    {
        var outcome = await answer();
        return outcome.Found is { } found ? System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(found, WireJson.Options) : outcome.Faults.ToList();
    });

    /// <summary>The same in any format.</summary>
    internal static Task<IResult> Answered(HttpContext context, Format format, WholeCatalogue documents, DateTimeOffset? asOf,
        Func<ValueTask<Outcome<byte[]>>> answer) => Guarded(() =>
            context.RequestServices.GetRequiredService<KeptLogAnswers>().Answer(context, format, documents, asOf, answer));
}
