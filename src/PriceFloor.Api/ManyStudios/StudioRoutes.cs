using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.AccessKeys;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
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
                await studios.Files!.DeleteAsync(path.Text);
            }

            return answer;
        });
    }

    /// <summary>Everything that the studio has stored, as lines.</summary>
    public static async Task<IResult> Export(PathKey path, Studios studios, Settings settings, PutBy putBy)
    {
        using var use = await studios.Enter(path.Text);
        return await StudioExport.Of(use.Studio.Store, settings.DataFolder, putBy);
    }

    /// <summary>Stores an export in a studio in which nothing was stored before, as a whole or not at all.</summary>
    public static async Task<IResult> Import(PathKey path, Studios studios, Settings settings, PutBy putBy, HttpContext context)
    {
        if (ContentCoding.Against(context.Request) is { } coding)
            return coding;
        if (!Format.Ndjson.IsSentBy(context.Request))
            return Problem.Of(ProblemTypes.MediaType, "Send application/x-ndjson, as UTF-8: what the export gave.");
        await using var sent = await StudioImport.ReadAsync(context, settings.DataFolder, putBy);
        if (sent.Broken() is { } broken)
            return Problem.Of([broken]);
        try
        {
            long documents;
            using (var use = await studios.Enter(path.Text))
                documents = await sent.StoreAsync(use.Studio.Store);
            await studios.Many!.WhileClosed(path.Text, () => Task.FromResult(true)); // opened again, it knows all that is in it now
            await studios.Limit(path.Text);
            context.Response.Headers.CacheControl = "no-store";
            return JsonAnswer.Of(new StudioImportAnswer { Lines = sent.Lines, Documents = documents });
        }
        catch (NotEmptyException e)
        {
            return Problem.Of([RequestFault.InUse($"{e.Message} Import into a new one.", [new Usage("studio", path.Text)])]);
        }
        catch (ImportException e)
        {
            return Problem.Of([StudioImport.Refused(long.Max(e.Line, 1), e.Message)]);
        }
    }

    public static async Task<Results<Created<KeyAnswer>, Problem>> PostKey(PathKey path, JsonBody<KeyRequest> body, Studios studios,
        TimeProvider clock, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        using var use = await studios.Enter(path.Text);
        var (studio, store) = (use.Studio, use.Studio.Store);
        var outcome = await AccessKeyRoutes.Make(body.Value, isHosts: false,
            (store, studio.GetRequiredService<KeyRing>(), studio.GetRequiredService<KeyUses>()), make => store.WriteAsync(Host, make), clock);
        return outcome.Found is { } made
            ? TypedResults.Created((string?)null, made)
            : Problem.Of(outcome.Faults);
    }
}
