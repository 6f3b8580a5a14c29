using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.AccessKeys;

/// <summary>Keys: made and shown once, listed without their secrets, rotated, deleted.</summary>
public static class AccessKeyRoutes
{
    public static async Task<Results<Created<KeyAnswer>, Problem>> Post(JsonBody<KeyRequest> body, Store store, KeyRing ring, KeyUses uses,
        Settings settings, TimeProvider clock, HttpContext context)
    {
        NotKept(context);
        var caller = Caller.Of(context);
        var isHosts = settings.HasManyStudios && caller.Studio is null;
        var outcome = await Make(body.Value, isHosts, (store, ring, uses), make => store.WriteAsync(caller, make), clock);
        return outcome.Found is { } made
            ? TypedResults.Created($"{context.Request.PathBase}/v1/keys/{made.Name}", made)
            : Problem.Of(outcome.Faults);
    }

    /// <summary>Makes a key in a store.</summary>
    /// <param name="request">The key.</param>
    /// <param name="isHosts">True for a key of the host, false for one of a studio.</param>
    /// <param name="of">The store, and what is known of its keys.</param>
    /// <param name="write">Writes to the store.</param>
    /// <param name="clock">The time of the answer.</param>
    public static async Task<Outcome<KeyAnswer>> Make(KeyRequest request, bool isHosts, (Store Store, KeyRing Ring, KeyUses Uses) of,
        Func<Func<Writing, ValueTask<StoredKey?>>, Task<StoredKey?>> write, TimeProvider clock)
    {
        var may = isHosts ? ScopeConventions.OfHosts : ScopeConventions.OfStudios;
        if (request.Scopes.FirstOrDefault(scope => !may.Contains(scope), may[0]) is var other && !may.Contains(other))
            return RequestFault.Invalid(new InputError
            {
                Pointer = "#/scopes",
                Code = FaultCodes.Unexpected,
                Detail = $"A key of {(isHosts ? "the host" : "a studio")} cannot have the scope \"{KeyRing.NameOf(other)}\"; "
                    + $"it may have {string.Join(", ", may.Select(KeyRing.NameOf))}.",
            });
        var secret = KeyText.New();
        var stored = await write(async writing =>
        {
            if ((await writing.Keys).Any(key => key.Name == request.Name))
                return null;
            if (of.Store.Limits is { } limits)
                await limits.CheckKeys(writing);
            var key = KeyRing.Stored(request.Name, secret, request.Scopes, writing.Now, request.Expires, request.Profiles);
            await writing.AddKey(key);
            return key;
        });
        if (stored is null)
            return RequestFault.InUse($"There is a key named \"{request.Name}\" already; delete it first, or choose another name.",
                [new Usage("key", request.Name)]);
        await of.Ring.RefreshAsync();
        return KeyAnswer.Of(stored, secret, of.Uses.Of(stored.Name), Moment.Of(clock.GetUtcNow()));
    }

    public static async Task<JsonAnswer<KeyPage>> List(FromQuery<KeyListQuery> query, Store store, KeyUses uses, TimeProvider clock,
        HttpContext context)
    {
        NotKept(context);
        var (limit, after) = query.Value;
        var now = Moment.Of(clock.GetUtcNow());
        var keys = (await store.ReadAsync(snapshot => snapshot.Keys)).Where(IsOwn).Where(key => string.CompareOrdinal(key.Name, after ?? "") > 0)
            .Take(limit + 1).ToList();
        if (keys.Count > limit)
            DocumentPage.LinkToNext(context.Request, keys[limit - 1].Name);
        return JsonAnswer.Of(new KeyPage([.. keys.Take(limit).Select(key => KeyAnswer.Of(key, null, uses.Of(key.Name), now))],
            keys.Count > limit ? keys[limit - 1].Name : null));
    }

    public static async Task<Results<JsonAnswer<KeyAnswer>, Problem>> Get(string name, Store store, KeyUses uses, TimeProvider clock,
        HttpContext context)
    {
        NotKept(context);
        return (await store.ReadAsync(snapshot => snapshot.Keys)).FirstOrDefault(key => key.Name == name) is { } key
            ? JsonAnswer.Of(KeyAnswer.Of(key, null, uses.Of(name), Moment.Of(clock.GetUtcNow())))
            : Problem.Of(ProblemTypes.NotFound, $"There is no key named \"{name}\".");
    }

    /// <summary>A new secret under the same name. The present one works until the overlap is over; an earlier one stops working.</summary>
    public static async Task<Results<Created<KeyAnswer>, Problem>> Rotate(string name, FromQuery<KeyRotationQuery> query, Store store, KeyRing ring,
        KeyUses uses, TimeProvider clock, HttpContext context)
    {
        NotKept(context);
        var secret = KeyText.New();
        var stored = await store.WriteAsync(Caller.Of(context), async writing =>
        {
            var now = Moment.Of(writing.Now);
            if (!(await writing.Keys).Any(key => key.Name == name && !(key.ExpiresAt <= now)))
                return null;
            await writing.RotateKey(name, KeyRing.HashOf(secret), Moment.Of(writing.Now.AddHours(query.Value.OverlapHours)));
            return (await writing.Keys).Single(key => key.Name == name);
        });
        return stored is null
            ? Problem.Of(ProblemTypes.NotFound, $"There is no key named \"{name}\", or it has expired.")
            : await Shown(KeyAnswer.Of(stored, secret, uses.Of(stored.Name), Moment.Of(clock.GetUtcNow())), ring, context);
    }

    public static async Task<Results<NoContent, Problem>> Delete(string name, Store store, KeyRing ring, KeyUses uses, HttpContext context)
    {
        NotKept(context);
        var problem = await store.WriteAsync<Problem?>(Caller.Of(context), async writing =>
        {
            // A key that expires would one day leave nobody who can make keys, so it does not count.
            var lasting = (await writing.Keys).Where(IsOwn)
                .Where(key => KeyRing.ScopesOf(key).Contains(Scope.Admin) && key.ExpiresAt is null).ToList();
            if (lasting is [var last] && last.Name == name)
                return Problem.Of([RequestFault.InUse(
                    "This is the last key with the scope \"admin\" that does not expire; make another first, or one day nobody could make keys.",
                    [new Usage("key", name)])]);
            return await writing.DeleteKey(name) ? null : Problem.Of(ProblemTypes.NotFound, $"There is no key named \"{name}\".");
        });
        if (problem is not null)
            return problem;
        await ring.RefreshAsync();
        uses.Forget(name);
        return TypedResults.NoContent();
    }

    /// <summary>The store of a host also knows the keys of its studios, each behind its studio's key.</summary>
    private static bool IsOwn(StoredKey key) => !key.Name.Contains('/', StringComparison.Ordinal);

    private static async Task<Created<KeyAnswer>> Shown(KeyAnswer answer, KeyRing ring, HttpContext context)
    {
        await ring.RefreshAsync();
        return TypedResults.Created($"{context.Request.PathBase}/v1/keys/{answer.Name}", answer);
    }

    private static void NotKept(HttpContext context) => context.Response.Headers.CacheControl = "no-store";
}
