using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Patches;
using PriceFloor.Statements;

namespace PriceFloor.Api.ReadingRuleSets;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class ReadingRulesOperations
{
    private static readonly ExampleFolder s_files = new(typeof(ReadingRulesOperations));

    private static readonly Noun s_noun = new("set of reading rules", "sets of reading rules", "ReadingRules", "Statements", typeof(ReadingRules),
        s_files["readingRules.request.json"], s_files["readingRules.answer.json"]);

    private static readonly Operation Starter = new("getStarterRules", "Statements", "Get reading rules to begin with",
        "Rules in general words of five languages, without anyone's name: PUT them to /v1/reading-rules/main, and put rules for your own payees "
        + "before them. The same for everyone, and nothing of yours. Scope: read.")
    {
        Answer = typeof(ReadingRules),
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The rules.", [304] = "The caller already has them." },
        AnswerExample = s_files["getStarterRules.answer.json"],
    };

    public static void MapReadingRules(this RouteGroupBuilder v1)
    {
        v1.MapGet("/starter-rules", StarterRules.Get).Needs(Scope.Read).Tell(Starter);
        v1.MapGet("/reading-rules", DocumentRoutes.List<ReadingRules>).Needs(Scope.Read).Tell(DocumentOperations.List(s_noun));
        v1.MapGet("/reading-rules/{key}", DocumentRoutes.Get<ReadingRules>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_noun));
        v1.MapPut("/reading-rules/{key}", DocumentRoutes.Put<ReadingRules>).Needs(Scope.Write).Tell(DocumentOperations.Put(s_noun));
        v1.MapPatch("/reading-rules/{key}", PatchRoutes.Patch<ReadingRules>).Needs(Scope.Write)
            .Tell(PatchOperations.Patch(s_noun, s_files["patchReadingRules.request.json"], s_files["patchReadingRules.answer.json"]));
        v1.MapDelete("/reading-rules/{key}", DocumentRoutes.Delete<ReadingRules>).Needs(Scope.Write).Tell(DocumentOperations.Delete(s_noun));
        v1.MapGet("/reading-rules/{key}/revisions", DocumentRoutes.Revisions<ReadingRules>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revisions(s_noun));
        v1.MapGet("/reading-rules/{key}/revisions/{number}", DocumentRoutes.Revision<ReadingRules>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revision(s_noun));
    }
}
