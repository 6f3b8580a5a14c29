using PriceFloor.Api.Access;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Audit;

/// <summary>The addresses of this folder, and how the contract describes them.</summary>
public static class AuditOperations
{
    private static readonly Operation Audit = new("listAudit", "Keys", "Who changed what",
        "Every change of a document and of a key, and every backup, restore and forgotten document, the newest first: when, "
        + "by the key of which name or by what else, and to what. Never what stands in it. Scope: admin.")
    { Answer = typeof(AuditPage), Cases = AuditCases.Audit };

    public static void MapAudit(this RouteGroupBuilder v1)
    {
        v1.MapGet("/audit", AuditRoutes.Get).Needs(Scope.Admin).Tell(Audit);
    }
}
