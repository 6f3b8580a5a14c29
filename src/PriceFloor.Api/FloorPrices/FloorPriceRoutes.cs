using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.FloorPrices;

public static class FloorPriceRoutes
{
    public static ValueTask<Results<JsonAnswer<FloorPriceAnswer>, Problem>> Get(PathKey path, FromQuery<FloorPriceQuery> query,
        CatalogueReader reader, HttpContext context)
    {
        var (otherProfile, asOf, workings) = query.Value;
        Answers.ForThisCallerOnly(context);
        return reader.ReadDesign<Results<JsonAnswer<FloorPriceAnswer>, Problem>>(path.Text, asOf, catalogue =>
        {
            if (catalogue.Design(path.Text) is not { } design)
                return Problem.Of(ProblemTypes.NotFound, $"There is no design \"{path.Text}\"{(asOf is null ? "" : " at that time")}.");
            if (catalogue.Profile(otherProfile ?? design.Document.Profile) is not { } profile)
                return Problem.UnknownReference([new InputError
                {
                    Parameter = "profile",
                    Code = InputCodes.UnknownProfile,
                    Detail = $"There is no profile \"{otherProfile ?? design.Document.Profile}\"{(asOf is null ? "" : " at that time")}.",
                }]);
            return Answer(catalogue, profile, design, floor => floor.AnswerOnAll(catalogue, workings), Place.Query);
        });
    }

    public static ValueTask<Results<JsonAnswer<FloorPriceAnswer>, Problem>> Post(JsonBody<FloorPriceRequest> body, FromQuery<ComputeQuery> query,
        CatalogueReader reader, HttpContext context)
    {
        var ((asOf, workings), request) = (query.Value, body.Value);
        Answers.ForThisCallerOnly(context);
        return reader.Read<Results<JsonAnswer<FloorPriceAnswer>, Problem>>(asOf, catalogue =>
        {
            var unknown = new List<InputError>();
            var design = Resolve(request.Design, catalogue.Design, "design", InputCodes.UnknownDesign, unknown);
            var profile = Resolve(request.Profile ?? new KeyOr<CostProfile>(design?.Document.Profile ?? "", null), catalogue.Profile, "profile",
                InputCodes.UnknownProfile, design is null && request.Profile is null ? [] : unknown);
            var channels = request.Channels.Select((channel, index) =>
                Resolve(channel, catalogue.Channel, $"channels/{index}", InputCodes.UnknownChannel, unknown)).ToList();
            return unknown.Count > 0
                ? Problem.UnknownReference(unknown)
                : Answer(catalogue, profile!, design!, floor => floor.AnswerOn(catalogue, channels!, workings), Place.Body);
        });
    }

    private static Results<JsonAnswer<FloorPriceAnswer>, Problem> Answer(Catalogue catalogue, Stored<CostProfile> profile, Stored<Design> design,
        Func<DesignFloor, FloorPriceAnswer> answer, Place place)
    {
        var outcome = catalogue.Floor(profile, design);
        return outcome.Found is { } floor ? JsonAnswer.Of(answer(floor)) : Problem.Of(FloorAnswers.FaultsOf(outcome.Faults, profile, design, place));
    }

    private static Stored<T>? Resolve<T>(KeyOr<T> given, Func<string, Stored<T>?> find, string at, Code code, List<InputError> unknown)
        where T : class
    {
        if (given.Document is { } document)
            return Stored<T>.Inline(document);
        if (find(given.Key!) is { } stored)
            return stored;
        var kind = code.Word["unknown-".Length..];
        unknown.Add(new InputError
        {
            Pointer = "#/" + at,
            Code = code,
            Detail = $"There is no {kind} \"{given.Key}\"; store it first, send it inline, or correct the key (case counts).",
        });
        return null;
    }
}
