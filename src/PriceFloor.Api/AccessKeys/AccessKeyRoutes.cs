using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.AccessKeys;

/// <summary>Keys: made and shown once, listed without their secret, deleted.</summary>
public static class AccessKeyRoutes
{
    public static Results<Created<KeyAnswer>, Problem> Post(JsonBody<KeyRequest> body, Store store, KeyRing ring, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        var request = body.Value;
        var secret = KeyText.New();
        var stored = store.Write<StoredKey?>(Caller.Of(context).Name, writing =>
        {
            if (writing.Keys.Any(key => key.Name == request.Name))
                return null;
            var key = KeyRing.Stored(request.Name, secret, request.Scopes, writing.Now, request.Expires);
            writing.AddKey(key);
            return key;
        });
        if (stored is null)
            return Problem.InUse($"There is a key named \"{request.Name}\" already; delete it first, or choose another name.", [new Usage("key", request.Name)]);
        ring.Refresh();
        return TypedResults.Created($"{context.Request.PathBase}/v1/keys/{request.Name}", KeyAnswer.Of(stored, secret));
    }

    public static Ok<KeyPage> List(FromQuery<KeyListQuery> query, Store store, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        var (limit, after) = query.Value;
        var keys = store.Read(snapshot => snapshot.Keys).Where(key => string.CompareOrdinal(key.Name, after ?? "") > 0).Take(limit + 1).ToList();
        if (keys.Count > limit)
            DocumentPage.LinkToNext(context.Request, keys[limit - 1].Name);
        return TypedResults.Ok(new KeyPage([.. keys.Take(limit).Select(key => KeyAnswer.Of(key))], keys.Count > limit ? keys[limit - 1].Name : null));
    }

    public static Results<NoContent, Problem> Delete(string name, Store store, KeyRing ring, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        var problem = store.Write<Problem?>(Caller.Of(context).Name, writing =>
        {
            var admins = writing.Keys.Where(key => KeyRing.ScopesOf(key).Contains(Scope.Admin) && !(key.ExpiresAt <= Moment.Of(writing.Now))).ToList();
            if (admins is [var last] && last.Name == name)
                return Problem.InUse("This is the last key with the scope \"admin\"; make another first, or nobody could make keys.", [new Usage("key", name)]);
            return writing.DeleteKey(name) ? null : Problem.Of(ProblemTypes.NotFound, $"There is no key named \"{name}\".");
        });
        if (problem is not null)
            return problem;
        ring.Refresh();
        return TypedResults.NoContent();
    }
}
