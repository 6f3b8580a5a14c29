using PriceFloor.Api.Access;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Patches;

namespace PriceFloor.Api.Scenarios;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class ScenarioOperations
{
    private static readonly ExampleFolder s_files = new(typeof(ScenarioOperations));

    private static readonly Noun s_noun = new("scenario", "scenarios", "Scenario", "Scenarios", typeof(Scenario),
        s_files["scenario.request.json"], s_files["scenario.answer.json"]);

    public static void MapScenarios(this RouteGroupBuilder v1)
    {
        v1.MapGet("/scenarios", DocumentRoutes.List<Scenario>).Needs(Scope.Read).Tell(DocumentOperations.List(s_noun));
        v1.MapGet("/scenarios/{key}", DocumentRoutes.Get<Scenario>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_noun));
        v1.MapPut("/scenarios/{key}", DocumentRoutes.Put<Scenario>).Needs(Scope.Write).Tell(DocumentOperations.Put(s_noun));
        v1.MapPatch("/scenarios/{key}", PatchRoutes.Patch<Scenario>).Needs(Scope.Write)
            .Tell(PatchOperations.Patch(s_noun, s_files["patchScenario.request.json"], s_files["patchScenario.answer.json"]));
        v1.MapDelete("/scenarios/{key}", DocumentRoutes.Delete<Scenario>).Needs(Scope.Write).Tell(DocumentOperations.Delete(s_noun));
        v1.MapGet("/scenarios/{key}/revisions", DocumentRoutes.Revisions<Scenario>).Needs(Scope.Read).Tell(DocumentOperations.Revisions(s_noun));
        v1.MapGet("/scenarios/{key}/revisions/{number}", DocumentRoutes.Revision<Scenario>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revision(s_noun));
    }
}
