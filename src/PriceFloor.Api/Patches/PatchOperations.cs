using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Patches;

/// <summary>The description of PATCH, for the kinds of documents that have it.</summary>
public static class PatchOperations
{
    public static Operation Patch(Noun noun, Example request, Example answer) => new($"patch{noun.Id}", noun.Tag, $"Change a part of a {noun.One}",
        $"A JSON Merge Patch (RFC 7396): members that it has replace those of the {noun.One}, null gives the default back, objects are merged, and a "
        + $"list is replaced whole. The result is checked like a whole {noun.One} and appended as a revision; nothing changes if it is the same. "
        + $"Scope: {(noun.Type == typeof(ListedPrice) ? "prices" : "write")}.")
    {
        Answer = noun.Type,
        HasRevision = true,
        Bodies = [new FormatExample(Format.MergePatch, null, request)],
        BodyWords = "The members that change.",
        AnswerExample = answer,
        Good = new Dictionary<int, string> { [200] = "Stored, or the same as before.", [204] = "The same for a key that may not read." },
        Problems =
            [ProblemTypes.NotFound, ProblemTypes.InUse, ProblemTypes.StaleRevision, ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch],
    };
}
