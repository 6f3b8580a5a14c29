using PriceFloor.Api.Access;
using PriceFloor.Api.AccessKeys;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.ManyStudios;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class StudioOperations
{
    private const string Tag = "Studios", KeyOfExample = "harbour";

    private static readonly ExampleFolder s_files = new(typeof(StudioOperations));

    private static readonly Noun s_noun = new("studio", "studios", "HostedStudio", Tag, typeof(HostedStudio),
        s_files["studio.limited.request.json"], s_files["studio.limited.answer.json"]);

    private static readonly Operation List = DocumentOperations.List(s_noun) with
    { Description = "The studios of the host in order of key, a page at a time. Scope: host." };

    private static readonly Operation Get = DocumentOperations.Get(s_noun) with
    { Description = "A studio of the host with its limits. The ETag is its revision. Scope: host.", KeyExample = KeyOfExample };

    private static readonly Operation Put = DocumentOperations.Put(s_noun) with
    {
        Description = "Makes the studio with a store of its own, or changes its name and limits; the same content again changes nothing. A limit "
            + "below what is there already deletes nothing. Its first key comes from POST /v1/studios/{key}/keys. Scope: host.",
        KeyExample = KeyOfExample,
        Problems = [ProblemTypes.StaleRevision],
    };

    private static readonly Operation Delete = new("deleteHostedStudio", Tag, "Forget a studio",
        "Deletes the studio with its documents, their histories, its log, its keys and the backups in its folder; nothing brings them back. repeat "
        + "is its key once more. Scope: host.")
    {
        Good = new Dictionary<int, string> { [204] = "Forgotten." },
        Problems = [ProblemTypes.StaleRevision],
        KeyExample = KeyOfExample,
    };

    private static readonly Operation MakeKey = new("createHostedStudioKey", Tag, "Make a key of a studio",
        "The key itself is in this answer and nowhere else. It opens this studio and no other, and cannot have the scope host. With the scope admin "
        + "it makes further ones, with POST /v1/keys. Scope: host.")
    {
        Answer = typeof(KeyAnswer),
        Good = new Dictionary<int, string> { [201] = "The key, shown only this once." },
        RequestExample = s_files["createHostedStudioKey.request.json"],
        AnswerExample = s_files["createHostedStudioKey.answer.json"],
        Problems = [ProblemTypes.InUse, ProblemTypes.Quota],
        KeyExample = KeyOfExample,
    };

    private static readonly Operation Export = new("exportHostedStudio", Tag, "Everything that a studio has stored",
        "Lines of JSON in order: the studio's life, every revision by position, its references, the hashes of its keys, its trail and its log; the "
        + "last line counts them and has their SHA-256. It is all of one moment. The import of another service takes it. Scope: host.")
    {
        OtherAnswers = [new(Format.Ndjson, null, s_files["exportHostedStudio.answer.ndjson"])],
        KeyExample = KeyOfExample,
    };

    private static readonly Operation Import = new("importHostedStudio", Tag, "Store an export in a new studio",
        "Takes what the export gave, unchanged, into a studio in which nothing was ever stored, as a whole or not at all. Its keys open it as "
        + "before, unless another studio here has them. It begins another life: cursors and ETags of before do not fit. Scope: host.")
    {
        Answer = typeof(StudioImportAnswer),
        Bodies = [new(Format.Ndjson, null, s_files["importHostedStudio.request.ndjson"])],
        BodyWords = "The lines of an export, the last included.",
        AnswerExample = s_files["importHostedStudio.answer.json"],
        Problems = [ProblemTypes.InUse, ProblemTypes.Quota],
        KeyExample = KeyOfExample,
    };

    public static void MapStudios(this RouteGroupBuilder v1)
    {
        v1.MapGet("/studios", DocumentRoutes.List<HostedStudio>).Needs(Scope.Host).Tell(List);
        v1.MapGet("/studios/{key}", DocumentRoutes.Get<HostedStudio>).Needs(Scope.Host).Tell(Get);
        v1.MapPut("/studios/{key}", StudioRoutes.Put).Needs(Scope.Host).Tell(Put);
        v1.MapDelete("/studios/{key}", StudioRoutes.Delete).Needs(Scope.Host).Tell(Delete);
        v1.MapGet("/studios/{key}/export", StudioRoutes.Export).Needs(Scope.Host).Offer(Format.Ndjson).Tell(Export);
        v1.MapPost("/studios/{key}/import", StudioRoutes.Import).Needs(Scope.Host).Tell(Import);
        v1.MapPost("/studios/{key}/keys", StudioRoutes.PostKey).Needs(Scope.Host).Tell(MakeKey);
    }
}
