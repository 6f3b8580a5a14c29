using FluentValidation;
using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Channels;
using PriceFloor.Api.Designs;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Profiles;
using PriceFloor.Pricing;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorPrices;

/// <summary>A floor, perhaps with another profile than the design's own.</summary>
public sealed record FloorPriceQuery(string? Profile, DateTimeOffset? AsOf, bool Workings) : IQuery<FloorPriceQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
        [new("profile", "Key of another profile to try.", "string", Example: "main"), QueryParameters.AsOf, QueryParameters.Workings];

    public static FloorPriceQuery Read(QueryValues values) => new(values.Text("profile"), values.Time("asOf"), values.Truth("workings"));
}

/// <summary>What if: a floor from stored documents, from inline ones, or from some of each. Nothing is stored.</summary>
public sealed record FloorPriceRequest
{
    /// <summary>The cost profile or the key of a stored one. Absent: the design's own.</summary>
    public KeyOr<CostProfile>? Profile { get; init; }

    /// <summary>The design or the key of a stored one. An inline design needs no profile of its own where profile is given.</summary>
    public required KeyOr<Design> Design { get; init; }

    /// <summary>Channels or keys of stored ones; none where absent.</summary>
    [System.ComponentModel.DataAnnotations.MaxLength(100)]
    public IReadOnlyList<KeyOr<Channel>> Channels { get; init; } = [];
}

/// <summary>Inline documents keep the rules of stored ones.</summary>
public sealed class FloorPriceRequestValidator : AbstractValidator<FloorPriceRequest>
{
    public FloorPriceRequestValidator(IValidator<CostProfile> profile, IValidator<Design> design, IValidator<Channel> channel)
    {
        RuleFor(request => request.Profile).NotNull().When(request => request.Design is { Key: null, Document: not { Profile: not null } })
            .WithErrorCode("required").WithMessage("Give a profile, inline or by key; the inline design names none.");
        RuleFor(request => request.Profile).Custom((given, context) => Inline(given, profile, "profile", context));
        RuleFor(request => request.Design).Custom((given, context) => Inline(given, design, "design", context));
        RuleFor(request => request.Channels).Custom((given, context) =>
        {
            foreach (var (index, one) in given.Index())
                Inline(one, channel, $"channels/{index}", context);
        });
    }

    private static void Inline<T>(KeyOr<T>? given, IValidator<T> validator, string at, ValidationContext<FloorPriceRequest> context) where T : class
    {
        if (given?.Document is null)
            return;
        foreach (var fault in Rules.Below(validator, given.Document, at, context))
            context.Add(fault);
    }
}

public static class FloorPriceRoutes
{
    public static Results<Ok<FloorPriceAnswer>, Problem> Get(PathKey path, FromQuery<FloorPriceQuery> query, Store store, TimeProvider clock, HttpContext context)
    {
        var (otherProfile, asOf, workings) = query.Value;
        Answers.ForThisCallerOnly(context);
        return store.Read<Results<Ok<FloorPriceAnswer>, Problem>>(snapshot =>
        {
            var records = new Records(snapshot, asOf, clock.GetUtcNow());
            if (records.Design(path.Text) is not { } design)
                return Problem.Of(ProblemTypes.NotFound, $"There is no design \"{path.Text}\"{(asOf is null ? "" : " at that time")}.");
            if (records.Profile(otherProfile ?? design.Document.Profile) is not { } profile)
                return Problem.UnknownReference([new InputError { Parameter = "profile", Code = "unknown-profile", Detail = $"There is no profile \"{otherProfile ?? design.Document.Profile}\"{(asOf is null ? "" : " at that time")}." }]);
            return Answer(records, profile, design, records.Channels(), workings);
        });
    }

    public static Results<Ok<FloorPriceAnswer>, Problem> Post(JsonBody<FloorPriceRequest> body, FromQuery<ComputeQuery> query, Store store, TimeProvider clock, HttpContext context)
    {
        var ((asOf, workings), request) = (query.Value, body.Value);
        Answers.ForThisCallerOnly(context);
        return store.Read<Results<Ok<FloorPriceAnswer>, Problem>>(snapshot =>
        {
            var records = new Records(snapshot, asOf, clock.GetUtcNow());
            var unknown = new List<InputError>();
            var design = Resolve(request.Design, records.Design, "design", unknown);
            var profile = Resolve(request.Profile ?? new KeyOr<CostProfile>(design?.Document.Profile ?? "", null), records.Profile, "profile", design is null && request.Profile is null ? [] : unknown);
            var channels = request.Channels.Select((channel, index) => Resolve(channel, records.Channel, $"channels/{index}", unknown)).ToList();
            return unknown.Count > 0 ? Problem.UnknownReference(unknown) : Answer(records, profile!, design!, channels!, workings);
        });
    }

    private static Results<Ok<FloorPriceAnswer>, Problem> Answer(Records records, Stored<CostProfile> profile, Stored<Design> design, IReadOnlyList<Stored<Channel>> channels, bool workings)
    {
        var (floor, problem) = FloorOfDesign.Of(records, profile, design);
        return floor is null ? problem! : TypedResults.Ok(floor.Answer(channels, workings));
    }

    private static Stored<T>? Resolve<T>(KeyOr<T> given, Func<string, Stored<T>?> find, string at, List<InputError> unknown) where T : class
    {
        if (given.Document is { } document)
            return new Stored<T>("inline", null, document);
        if (find(given.Key!) is { } stored)
            return stored;
        unknown.Add(new InputError { Pointer = "#/" + at, Code = "unknown-" + at.Split('/')[0].TrimEnd('s'), Detail = $"There is no {at.Split('/')[0].TrimEnd('s')} \"{given.Key}\"; store it first, send it inline, or correct the key (case counts)." });
        return null;
    }
}
