using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>The operations that every kind of document has.</summary>
public static class DocumentOperations
{
    public static Operation List(Noun noun) => new($"list{noun.Id.TrimEnd('s')}s", noun.Tag, $"The {noun.Many}",
        $"The {noun.Many} in order of key, a page at a time. Scope: read.")
    { Answer = noun.Type, IsPage = true, AnswerExample = noun.StoredExample.OnAPage() };

    public static Operation Get(Noun noun) => new($"get{noun.Id}", noun.Tag, $"A {noun.One}",
        $"The {noun.One} with its defaults filled in. The ETag is its revision. Scope: read.")
    {
        Answer = noun.Type,
        HasRevision = true,
        AnswerExample = noun.StoredExample,
        Good = new Dictionary<int, string> { [200] = "The document.", [304] = "The caller already has this revision." },
    };

    public static Operation Put(Noun noun) => new($"put{noun.Id}", noun.Tag, $"Store a {noun.One}",
        $"Creates the {noun.One} or appends a revision to it; the same content again changes nothing. You can PUT back what GET gave: key, "
        + $"revision and savedAt are ignored. Scope: {(noun.Type == typeof(ListedPrice) ? "prices" : "write")}.")
    {
        Answer = noun.Type,
        HasRevision = true,
        HasLocation = true,
        RequestExample = noun.Example,
        AnswerExample = noun.StoredExample,
        Cases = noun.Cases,
        Good = new Dictionary<int, string> { [200] = "Stored, or the same as before.", [201] = "Created." },
        Problems = [ProblemTypes.InUse, ProblemTypes.StaleRevision, ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch],
    };

    public static Operation Delete(Noun noun) => new($"delete{noun.Id}", noun.Tag, $"Delete a {noun.One}",
        $"Hides the {noun.One} and keeps its history; a PUT brings it back. Scope: {(noun.Type == typeof(ListedPrice) ? "prices" : "write")}.")
    { Good = new Dictionary<int, string> { [204] = "Deleted." }, Problems = [ProblemTypes.InUse, ProblemTypes.StaleRevision] };

    public static Operation Revisions(Noun noun) => new($"list{noun.Id}Revisions", noun.Tag, $"The history of a {noun.One}",
        "Every revision in order, also after a delete; a delete is a revision with deleted true. Scope: read.")
    { Answer = noun.Type, TellsDeletions = true, IsPage = true, AnswerExample = noun.StoredExample.OnAPage() };

    public static Operation Revision(Noun noun) => new($"get{noun.Id}Revision", noun.Tag, $"One revision of a {noun.One}",
        "The document as it was in that revision; it never changes. Scope: read.")
    {
        Answer = noun.Type,
        TellsDeletions = true,
        HasRevision = true,
        AnswerExample = noun.StoredExample,
        Good = new Dictionary<int, string> { [200] = "The document.", [304] = "The caller already has this revision." },
    };
}
