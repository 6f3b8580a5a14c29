using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Evidence;

/// <summary>The address of this folder, and its description in the contract.</summary>
public static class EvidenceOperations
{
    private static readonly Operation Evidence = new("findEvidence", "Evidence", "Compare what was sold and made with what is stored",
        "Two sheets as multipart/form-data: movements (what was made, sold, sent, given: any shop's export) and bench (how many were begun, how "
        + "many came out good, how many minutes); or movements alone as a CSV body. Columns are named by parameters, those of the bench book "
        + "with bench. before them. The answer has findings (numbers taken from the lines, with their range, what is stored there, and the floor "
        + "with each), a draft of each design, of each channel and of the profile, ready to be stored, and what pieces really brought an hour. "
        + "Nothing is changed, and no line is kept or logged. Scope: read.")
    {
        Answer = typeof(EvidenceAnswer),
        Cases = EvidenceCases.Evidence,
        Bodies = [new(Format.Csv, null), new(Format.Files, null)],
        BodyWords = "The sheets: a form with the fields movements and bench, or one of them; or the movements as the whole body.",
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute],
    };

    public static void MapEvidence(this RouteGroupBuilder v1, BatchSlots slots)
    {
        v1.MapPost("/evidence", EvidenceRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Read).Tell(Evidence);
    }
}
