using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class LoggedEvidenceCases
{
    private static readonly ExampleFolder s_files = new(typeof(LoggedEvidenceCases));

    private static readonly Dictionary<string, string> s_year = new() { ["to"] = "2027-03-31" };

    public static readonly IReadOnlyList<MainCase> Design =
    [
        new("year", "A design whose pieces were logged.", null, s_files["getDesignEvidence.year.answer.json"]) { At = s_year },
    ];

    public static readonly IReadOnlyList<MainCase> Channel =
    [
        new("year", "A channel whose orders were logged.", null, s_files["getChannelEvidence.year.answer.json"]) { At = s_year },
    ];

    public static readonly IReadOnlyList<MainCase> Profile =
    [
        new("year", "A profile with whole days at the bench.", null, s_files["getProfileEvidence.year.answer.json"]) { At = s_year },
    ];
}
