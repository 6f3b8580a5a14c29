using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Findings;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The evidence of single designs from their stored lines, kept until a line or a document of them changes.</summary>
public sealed class LoggedDesigns(LoggedShelves shelves)
{
    private const int MostQuestions = 8;

    private readonly KeptDesigns<StoredDesignEvidenceAnswer> _answers = new(MostQuestions);

    internal async ValueTask<Outcome<StoredDesignEvidenceAnswer>> OfAsync(LoggedQuestion question, Stored<Design> design, DesignEvidenceQuery asked)
    {
        var catalogue = question.Catalogue;
        var profile = catalogue.Profile(design.Document.Profile)!;
        var floor = catalogue.Floor(profile, design);
        if (floor.Found is not { } found)
            return FloorAnswers.FaultsOf(floor.Faults, profile, design, Place.Query);
        var good = await shelves.Good(question, profile);
        var (choices, key, stamp) = (question.Log.Choices, (question.Log.Choices, asked.Workings, good.ToString()), question.StampOf(design.Key));
        var kept = _answers.Find(key, stamp, catalogue, found, question.Log.SaidOfSources);
        if (kept is null)
        {
            var answer = await AnswerOf(question, profile, found, good, asked.Workings);
            if (answer.Found is not { } made)
                return answer.Faults.ToList();
            kept = made.Answer;
            if (stamp is { } same)
                _answers.Keep(key, new RestsOn(same, found, made.Channels, question.Log.SaidOfSources), kept);
        }

        var newest = question.SeesAll ? await question.Log.NewestDay() : null;
        var line = (await shelves.OfAsync(question.About(OfShelf(choices)), profile, good))
            .Line(design.Key);
        return kept with
        {
            Decision = line is null ? null : DecisionAnswer.Of(line),
            Assumed = [.. kept.Assumed, .. line is null ? [] : DecisionAnswer.AssumedBy([line])],
            Basis = kept.Basis with { Log = question.Log.Basis },
            Warnings =
            [
                .. kept.Warnings, .. WarningAnswer.Of(EvidenceWarnings.OfAge(newest, choices.To)),
                .. WarningAnswer.Of(line is null ? [] : line.Decision.Warnings("/decision")),
            ],
        };
    }

    /// <summary>What the lines of a design say; null if it has no floor or no line.</summary>
    internal async ValueTask<DesignEvidence?> FoundAsync(LoggedQuestion question, Stored<Design> design)
    {
        var profile = question.Catalogue.Profile(design.Document.Profile)!;
        if (question.Catalogue.Floor(profile, design).Found is not { } floor)
            return null;
        var (studio, _, _) = await question.EvidenceOf(floor, await shelves.Good(question, profile));
        return studio.Designs.SingleOrDefault();
    }

    /// <summary>The evidence as an answer, or why there is none.</summary>
    private async ValueTask<Outcome<FoundDesign>> AnswerOf(LoggedQuestion question, Stored<CostProfile> profile, DesignFloor floor, GoodPriors good,
        bool workings)
    {
        var (studio, channels, history) = await question.EvidenceOf(floor, good);
        var sku = floor.Design.Key;
        if (studio.Designs.SingleOrDefault() is not { } evidence)
            return RequestFault.CannotCompute(EvidenceReasonCodes.NothingLogged, $"The log has no line of \"{sku}\" within these days.");
        if (evidence is { Take: null, Shelf.Made: 0, Log.Bench.Count: 0, Log.LeftOut: 0 })
            return RequestFault.CannotCompute(EvidenceReasonCodes.NothingMade,
                $"The log has no piece of \"{sku}\" that was begun, made or sold within these days.");
        var basis = new EvidenceBasisAnswer
        {
            Profile = floor.Profile.Basis,
            Design = floor.Design.Basis,
            Channels = [.. evidence.Log.Sold.Select(line => line.Order.Channel).Distinct().Order(StringComparer.Ordinal)
                .Select(key => question.Catalogue.Channel(key)!.Basis)],
            Log = question.Log.Basis,
        };
        var answer = StoredDesignEvidenceAnswer.Of(evidence, studio, basis, workings);
        if (question.Log.Choices == OfShelf(question.Log.Choices))
            await shelves.Keep(question, profile, good, (floor, evidence, channels, history)); // the shelf asks the same next
        return new FoundDesign(answer, channels);
    }

    /// <summary>The question of the whole shelf, which is asked of no channel and no piece to come.</summary>
    private static EvidenceChoices OfShelf(EvidenceChoices choices) => choices with { Channel = null, At = null, Run = EvidenceChoices.UsualRun };

    /// <summary>An answer and the channels that its lines name.</summary>
    private sealed record FoundDesign(StoredDesignEvidenceAnswer Answer, IReadOnlyList<NamedChannel> Channels);
}
