using PriceFloor.Api.Access;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Audit;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class AuditOperations
{
    private static readonly Operation Audit = new("listAudit", "Keys", "Who changed what",
        "Every change of a document and of a key, and every backup, restore and forgotten document, newest first: when, by "
        + "which key or other means, and to what. Never the contents. Scope: admin.")
    { Answer = typeof(AuditPage), Cases = AuditCases.Audit };

    public static void MapAudit(this RouteGroupBuilder v1)
    {
        v1.MapGet("/audit", AuditRoutes.Get).Needs(Scope.Admin).Tell(Audit);
    }
}
