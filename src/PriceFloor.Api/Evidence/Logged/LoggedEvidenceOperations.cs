using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class LoggedEvidenceOperations
{
    private const string Found = "numbers taken from the log, each with its range and with what is stored there. The draft is the stored document "
        + "with all that was found, ready to be stored; nothing is changed by itself. ";

    private static readonly Operation Design = new("getDesignEvidence", "Evidence", "What the log says of a design",
        "Findings: " + Found + "Also the floor as stored and as found, what its pieces really brought an hour, how the work got quicker, and how "
        + "fast it sells. The same lines as sheets (POST /v1/evidence) have the same findings. Scope: read.")
    { Answer = typeof(StoredDesignEvidenceAnswer), Cases = LoggedEvidenceCases.Design, HasTag = true, Good = Tagged, Problems = Refused };

    private static readonly Operation Channel = new("getChannelEvidence", "Evidence", "What the log says of a channel",
        "Findings (pieces an order, returns, a stall's pieces, the usual discount, fees): " + Found + "Scope: read.")
    { Answer = typeof(StoredChannelEvidenceAnswer), Cases = LoggedEvidenceCases.Channel, HasTag = true, Good = Tagged, Problems = Refused };

    private static readonly Operation Profile = new("getProfileEvidence", "Evidence", "What the log says of a profile",
        "Findings (the share of finished pieces that sells, over all designs; the bench's share of whole days): " + Found + "Scope: read.")
    { Answer = typeof(StoredProfileEvidenceAnswer), Cases = LoggedEvidenceCases.Profile, HasTag = true, Good = Tagged, Problems = Refused };

    private static readonly Operation Learning = new("getDesignLearning", "Evidence", "How the work on a design got quicker",
        "Each timed entry of the bench log as a dot, by how many pieces had been begun; the learning curve through them if there is one; what a "
        + "piece takes today, and the minutes that nobody can hurry. Scope: read.")
    { OtherAnswers = [FormatExample.Drawing], HasTag = true, Problems = Refused };

    private static Dictionary<int, string> Tagged => new() { [200] = "The answer.", [304] = "The caller already has it." };

    private static IReadOnlyList<ProblemType> Refused => [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute];

    public static void MapLoggedEvidence(this RouteGroupBuilder v1)
    {
        v1.MapGet("/designs/{sku}/evidence", LoggedEvidenceRoutes.Design).Needs(Scope.Read).Tell(Design);
        v1.MapGet("/designs/{sku}/learning.svg", LoggedEvidenceRoutes.Learning).Needs(Scope.Read).Always(Format.Svg).Tell(Learning.As(Format.Svg));
        v1.MapGet("/channels/{key}/evidence", LoggedEvidenceRoutes.Channel).Needs(Scope.Read).Tell(Channel);
        v1.MapGet("/profiles/{key}/evidence", LoggedEvidenceRoutes.Profile).Needs(Scope.Read).Tell(Profile);
    }
}
