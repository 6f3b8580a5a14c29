using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Audit;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class AuditCases
{
    private static readonly ExampleFolder s_files = new(typeof(AuditCases));

    /// <summary>A page of one.</summary>
    public static readonly IReadOnlyList<MainCase> Audit =
    [
        new("newest", "Only the newest change.", null, s_files["listAudit.newest.answer.json"])
        {
            At = new Dictionary<string, string> { ["limit"] = "1" },
        },
    ];
}
