using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Patches;
using PriceFloor.Statements;

namespace PriceFloor.Api.StatementLayouts;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class StatementLayoutOperations
{
    private static readonly ExampleFolder s_files = new(typeof(StatementLayoutOperations));

    private static readonly Noun s_noun = new("statement layout", "statement layouts", "StatementLayout", "Statements", typeof(StatementLayout),
        s_files["statementLayout.request.json"], s_files["statementLayout.answer.json"]);

    public static void MapStatementLayouts(this RouteGroupBuilder v1)
    {
        v1.MapGet("/statement-layouts", DocumentRoutes.List<StatementLayout>).Needs(Scope.Read).Tell(DocumentOperations.List(s_noun));
        v1.MapGet("/statement-layouts/{key}", DocumentRoutes.Get<StatementLayout>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_noun));
        v1.MapPut("/statement-layouts/{key}", DocumentRoutes.Put<StatementLayout>).Needs(Scope.Write).Tell(DocumentOperations.Put(s_noun));
        v1.MapPatch("/statement-layouts/{key}", PatchRoutes.Patch<StatementLayout>).Needs(Scope.Write)
            .Tell(PatchOperations.Patch(s_noun, s_files["patchStatementLayout.request.json"], s_files["patchStatementLayout.answer.json"]));
        v1.MapDelete("/statement-layouts/{key}", DocumentRoutes.Delete<StatementLayout>).Needs(Scope.Write).Tell(DocumentOperations.Delete(s_noun));
        v1.MapGet("/statement-layouts/{key}/revisions", DocumentRoutes.Revisions<StatementLayout>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revisions(s_noun));
        v1.MapGet("/statement-layouts/{key}/revisions/{number}", DocumentRoutes.Revision<StatementLayout>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revision(s_noun));
    }
}
