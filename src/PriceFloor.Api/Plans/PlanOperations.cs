using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Patches;

namespace PriceFloor.Api.Plans;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class PlanOperations
{
    private static readonly ExampleFolder s_files = new(typeof(PlanOperations));

    private static readonly Noun s_noun = new("plan", "plans", "Plan", "Plans", typeof(Plan),
        s_files["plan.request.json"], s_files["plan.answer.json"]);

    private static readonly Operation PlanMonths = new("getPlanMonths", "Plans", "A planned year month by month",
        "Hours, making ahead, receipts, bills, tax that is set aside and cash of each month, the lowest point, what the year would have to begin "
        + "with, and the bridge from the year's profit to the change of its cash. As image/svg+xml bars of free cash and of hours, as text/html a "
        + "page to print. A plan never moves a floor. Scope: read.")
    {
        Answer = typeof(PlanMonthsAnswer),
        AnswerExample = s_files["getPlanMonths.answer.json"],
        OtherAnswers = [FormatExample.Drawing, new(Format.Html, null, s_files["getPlanMonths.answer.html"])],
        Problems = [ProblemTypes.NotFound, ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    private static readonly Operation InlineMonths = new("computePlanMonths", "Plans", "The months of a plan that is not stored",
        "The same for a plan in the request, or for a stored one with another profile; nothing is stored. Scope: read.")
    {
        Answer = typeof(PlanMonthsAnswer),
        Cases = [new("inline", "A plan for Christmas, sent with its request.",
            s_files["computePlanMonths.inline.request.json"], s_files["computePlanMonths.inline.answer.json"])],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    private static readonly Operation Progress = new("computePlanProgress", "Plans", "Is the year on its way?",
        "From what was sold through a day: what was planned by then, the pace, what the year will have brought at it, and what each week and bench "
        + "hour that is left must bring, with three ways to bring it. What an hour must bring is no floor. Nothing is stored. Scope: read.")
    {
        Answer = typeof(PlanProgressAnswer),
        RequestExample = s_files["computePlanProgress.request.json"],
        AnswerExample = s_files["computePlanProgress.answer.json"],
        Problems = [ProblemTypes.NotFound, ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    private static readonly Operation LoggedProgress = new("getPlanProgress", "Plans", "Is the year on its way, by the log?",
        "The same from the sales of the log: what good pieces brought that were sold in the profile's year through the day, as recorded, less what "
        + "came back, and the finished pieces that lie ready. basis names the log. Scope: read.")
    {
        Answer = typeof(PlanProgressAnswer),
        Cases =
        [
            new("end-of-august", "Two thirds of the year have passed; the log has three pieces of one order.", null,
                s_files["getPlanProgress.end-of-august.answer.json"])
            {
                At = new Dictionary<string, string> { ["through"] = "2027-08-31" },
            },
        ],
        Problems = [ProblemTypes.NotFound, ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapPlans(this RouteGroupBuilder v1)
    {
        v1.MapGet("/plans", DocumentRoutes.List<Plan>).Needs(Scope.Read).Tell(DocumentOperations.List(s_noun));
        v1.MapGet("/plans/{key}", DocumentRoutes.Get<Plan>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_noun));
        v1.MapPut("/plans/{key}", DocumentRoutes.Put<Plan>).Needs(Scope.Write).Tell(DocumentOperations.Put(s_noun));
        v1.MapPatch("/plans/{key}", PatchRoutes.Patch<Plan>).Needs(Scope.Write)
            .Tell(PatchOperations.Patch(s_noun, s_files["patchPlan.request.json"], s_files["patchPlan.answer.json"]));
        v1.MapDelete("/plans/{key}", DocumentRoutes.Delete<Plan>).Needs(Scope.Write).Tell(DocumentOperations.Delete(s_noun));
        v1.MapGet("/plans/{key}/revisions", DocumentRoutes.Revisions<Plan>).Needs(Scope.Read).Tell(DocumentOperations.Revisions(s_noun));
        v1.MapGet("/plans/{key}/revisions/{number}", DocumentRoutes.Revision<Plan>).Needs(Scope.Read).Tell(DocumentOperations.Revision(s_noun));
        v1.MapGet("/plans/{key}/months", PlanMonthsRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Svg, Format.Html).Tell(PlanMonths);
        v1.MapGet("/plans/{key}/months.svg", PlanMonthsRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(PlanMonths.As(Format.Svg));
        v1.MapGet("/plans/{key}/months.html", PlanMonthsRoutes.Get).Needs(Scope.Read).Always(Format.Html).Tell(PlanMonths.As(Format.Html));
        v1.MapGet("/plans/{key}/progress", PlanProgressRoutes.Get).Needs(Scope.Read).Tell(LoggedProgress);
        v1.MapPost("/plans/{key}/progress", PlanProgressRoutes.Post).Needs(Scope.Read).Tell(Progress);
        v1.MapPost("/plan-months", PlanMonthsRoutes.Post).Needs(Scope.Read).Tell(InlineMonths);
    }
}
