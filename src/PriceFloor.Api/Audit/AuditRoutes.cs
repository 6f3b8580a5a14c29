using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.Audit;

/// <summary>The trail of changes. It is read from the revisions and not kept beside them.</summary>
public static class AuditRoutes
{
    public static async Task<JsonAnswer<AuditPage>> Get(FromQuery<AuditQuery> query, Store store, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (limit, after) = query.Value;
        var (entries, next) = await store.ReadAsync(snapshot => after.Before(snapshot, limit));
        if (next is not null)
            DocumentPage.LinkToNext(context.Request, next.Text);
        return JsonAnswer.Of(new AuditPage([.. entries.Select(AuditItemAnswer.Of)], next?.Text));
    }
}
