using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Patches;

namespace PriceFloor.Api.Profiles;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class CostProfileOperations
{
    private static readonly ExampleFolder s_files = new(typeof(CostProfileOperations));

    private static readonly Noun s_noun = new("cost profile", "cost profiles", "Profile", "Profiles", typeof(CostProfile),
        s_files["profile.few-figures.request.json"], s_files["profile.few-figures.answer.json"])
    {
        Cases = CostProfileCases.Profiles,
    };

    private static readonly Operation Requirement = new("getRequirement", "Profiles", "What the year must bring in",
        "What sales must bring in over the year, what bench time must recover of it, a week, a day and an hour, and the tax on it. "
        + "Computed with your own tables: not tax or legal advice. Scope: read.")
    { Answer = typeof(RequirementAnswer), AnswerExample = s_files["getRequirement.answer.json"], Problems = [ProblemTypes.CannotCompute] };

    public static void MapProfiles(this RouteGroupBuilder v1)
    {
        v1.MapGet("/profiles", DocumentRoutes.List<CostProfile>).Needs(Scope.Read).Tell(DocumentOperations.List(s_noun));
        v1.MapGet("/profiles/{key}", DocumentRoutes.Get<CostProfile>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_noun));
        v1.MapPut("/profiles/{key}", DocumentRoutes.Put<CostProfile>).Needs(Scope.Write).Tell(DocumentOperations.Put(s_noun));
        v1.MapPatch("/profiles/{key}", PatchRoutes.Patch<CostProfile>).Needs(Scope.Write)
            .Tell(PatchOperations.Patch(s_noun, s_files["patchProfile.request.json"], s_files["patchProfile.answer.json"]));
        v1.MapDelete("/profiles/{key}", DocumentRoutes.Delete<CostProfile>).Needs(Scope.Write).Tell(DocumentOperations.Delete(s_noun));
        v1.MapGet("/profiles/{key}/revisions", DocumentRoutes.Revisions<CostProfile>).Needs(Scope.Read).Tell(DocumentOperations.Revisions(s_noun));
        v1.MapGet("/profiles/{key}/revisions/{number}", DocumentRoutes.Revision<CostProfile>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revision(s_noun));
        v1.MapGet("/profiles/{key}/requirement", YearRequirement.Get).Needs(Scope.Read).Tell(Requirement);
    }
}
