using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Evidence.Findings;

namespace PriceFloor.Api.Sureness;

/// <summary>
/// Ranges that the stored log gives: the profile and the design in question as their drafts have them, and each number that was found with the range
/// of its finding. The range holds eight times in ten, so its ends are those that a typed range has: one time in ten it is lower, one time in ten
/// higher.
/// </summary>
/// <param name="Changes">The drafts, then the ranges.</param>
/// <param name="Log">How far the log had come.</param>
internal sealed record LoggedRanges(IReadOnlyList<DocumentChange> Changes, string Log)
{
    /// <summary>How often a finding's range holds whose ends are those of a typed range.</summary>
    public const decimal Level = 0.8m;

    public static async ValueTask<Outcome<LoggedRanges>> OfAsync(LoggedQuestion question, LoggedDesigns designs, Stored<CostProfile> profile,
        Stored<Design>? design, ProfileAccess access)
    {
        var changes = new List<DocumentChange>();
        if ((await LoggedProfile.FoundAsync(question.Log, question.Catalogue, profile, access)).Found is { } ofProfile)
            changes.AddRange(Of($"{Kinds.Profile}:{profile.Key}", ofProfile.Draft, profile.Document.Currency, ofProfile.Doubts));
        if (design is not null && await designs.FoundAsync(question, design) is { } ofDesign)
            changes.AddRange(Of($"{Kinds.Design}:{design.Key}", ofDesign.Draft, profile.Document.Currency, ofDesign.Doubts));
        return changes.Count > 0 ? new LoggedRanges(changes, question.Log.Basis) : RequestFault.CannotCompute(EvidenceReasonCodes.NothingLogged,
            $"The log has too few lines for any finding about the profile \"{profile.Key}\"{(design is null ? "" : $" or \"{design.Key}\"")}.");
    }

    private static IEnumerable<DocumentChange> Of<T>(string of, T draft, string currency, IEnumerable<DoubtedNumber> doubts) where T : class
    {
        var ranges = doubts.Select(doubt => new DocumentChange
        {
            Of = of,
            At = doubt.At,
            To = Json(new NumberRange { Low = doubt.Low, Likely = doubt.Likely, High = doubt.High }),
            Together = doubt.Together,
        }).ToList();
        return ranges.Count == 0 ? [] : [new DocumentChange { Of = of, At = "", To = Whole(draft, currency) }, .. ranges];
    }

    private static AnyJson Whole<T>(T draft, string currency) =>
        new(JsonDocument.Parse(WireJson.WriteDocument(draft, Currency.Of(currency))).RootElement);

    private static AnyJson Json<T>(T value) => new(JsonSerializer.SerializeToElement(value, WireJson.Options));
}
