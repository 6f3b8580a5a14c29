using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.AccessKeys;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>Studios of a host: made, limited, given keys, forgotten. Their documents are not for the host.</summary>
public static class StudioRoutes
{
    /// <summary>The name of the host in a studio's trail; no key can have it.</summary>
    internal const string Host = "the host";

    public static async Task<IResult> Put(PathKey path, JsonBody<HostedStudio> body, Store store, DocumentKind<HostedStudio> kind, Studios studios,
        HttpContext context)
    {
        var answer = await DocumentRoutes.Put(path, body, store, kind, context);
        if (answer is IStatusCodeHttpResult { StatusCode: < 300 })
            await studios.Limit(path.Text);
        return answer;
    }

    /// <summary>Forgets a studio: its documents, their histories, its keys, its log and the backups in its folder.</summary>
    public static async Task<IResult> Delete(PathKey path, FromQuery<StudioDeleteQuery> query, Store store, DocumentKind<HostedStudio> kind,
        Studios studios, KeyRing ring, HttpContext context)
    {
        if (query.Value.Repeat != path.Text)
            return Problem.Invalid([new InputError
            {
                Parameter = "repeat",
                Code = InputCodes.BadKey,
                Detail = $"repeat is \"{query.Value.Repeat}\", but the address names the studio \"{path.Text}\"; nothing was forgotten.",
            }]);
        return await studios.Many!.WhileClosed(path.Text, async () =>
        {
            var answer = await DocumentRoutes.Delete(path, store, kind, context);
            if (answer is NoContent)
            {
                await ring.RefreshAsync();
                studios.Files!.Delete(path.Text);
            }

            return answer;
        });
    }

    public static async Task<Results<Created<KeyAnswer>, Problem>> PostKey(PathKey path, JsonBody<KeyRequest> body, Studios studios, TimeProvider clock,
        HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        using var use = await studios.Many!.Enter(path.Text);
        var (studio, store) = (use.Studio, use.Studio.Store);
        var outcome = await AccessKeyRoutes.Make(body.Value, isHosts: false,
            (store, studio.GetRequiredService<KeyRing>(), studio.GetRequiredService<KeyUses>()), make => store.WriteAsync(Host, make), clock);
        return outcome.Found is { } made
            ? TypedResults.Created((string?)null, made)
            : Problem.Of(outcome.Faults);
    }
}
