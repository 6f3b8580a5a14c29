using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.AccessKeys;

/// <summary>Keys: made and shown once, listed without their secrets, rotated, deleted.</summary>
public static class AccessKeyRoutes
{
    public static async Task<Results<Created<KeyAnswer>, Problem>> Post(JsonBody<KeyRequest> body, Store store, KeyRing ring, KeyUses uses,
        TimeProvider clock, HttpContext context)
    {
        NotKept(context);
        var request = body.Value;
        var secret = KeyText.New();
        var stored = await store.WriteAsync<StoredKey?>(Caller.Of(context), async writing =>
        {
            if ((await writing.Keys).Any(key => key.Name == request.Name))
                return null;
            var key = KeyRing.Stored(request.Name, secret, request.Scopes, writing.Now, request.Expires, request.Profiles);
            await writing.AddKey(key);
            return key;
        });
        if (stored is null)
            return Problem.Of([RequestFault.InUse($"There is a key named \"{request.Name}\" already; delete it first, or choose another name.",
                [new Usage("key", request.Name)])]);
        return Shown(KeyAnswer.Of(stored, secret, uses.Of(stored.Name), Moment.Of(clock.GetUtcNow())), ring, context);
    }

    public static async Task<JsonAnswer<KeyPage>> List(FromQuery<KeyListQuery> query, Store store, KeyUses uses, TimeProvider clock,
        HttpContext context)
    {
        NotKept(context);
        var (limit, after) = query.Value;
        var now = Moment.Of(clock.GetUtcNow());
        var keys = (await store.ReadAsync(snapshot => snapshot.Keys)).Where(key => string.CompareOrdinal(key.Name, after ?? "") > 0)
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
            : Shown(KeyAnswer.Of(stored, secret, uses.Of(stored.Name), Moment.Of(clock.GetUtcNow())), ring, context);
    }

    public static async Task<Results<NoContent, Problem>> Delete(string name, Store store, KeyRing ring, KeyUses uses, HttpContext context)
    {
        NotKept(context);
        var problem = await store.WriteAsync<Problem?>(Caller.Of(context), async writing =>
        {
            // A key that expires would one day leave nobody who can make keys, so it does not count.
            var lasting = (await writing.Keys).Where(key => KeyRing.ScopesOf(key).Contains(Scope.Admin) && key.ExpiresAt is null).ToList();
            if (lasting is [var last] && last.Name == name)
                return Problem.Of([RequestFault.InUse(
                    "This is the last key with the scope \"admin\" that does not expire; make another first, or one day nobody could make keys.",
                    [new Usage("key", name)])]);
            return await writing.DeleteKey(name) ? null : Problem.Of(ProblemTypes.NotFound, $"There is no key named \"{name}\".");
        });
        if (problem is not null)
            return problem;
        ring.Refresh();
        uses.Forget(name);
        return TypedResults.NoContent();
    }

    private static Created<KeyAnswer> Shown(KeyAnswer answer, KeyRing ring, HttpContext context)
    {
        ring.Refresh();
        return TypedResults.Created($"{context.Request.PathBase}/v1/keys/{answer.Name}", answer);
    }

    private static void NotKept(HttpContext context) => context.Response.Headers.CacheControl = "no-store";
}
