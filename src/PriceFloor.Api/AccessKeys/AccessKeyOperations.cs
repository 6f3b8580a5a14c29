using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.AccessKeys;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class AccessKeyOperations
{
    private static readonly ExampleFolder s_files = new(typeof(AccessKeyOperations));

    private static readonly Operation MakeKey = new("createKey", "Keys", "Make a key", "The key itself is in this answer and nowhere else. "
        + "With profiles it sees only those cost profiles, the designs that use them and their listed prices. Scope: admin.")
    {
        Answer = typeof(KeyAnswer),
        Good = new Dictionary<int, string> { [201] = "The key, shown only this once." },
        Cases = AccessKeyCases.Keys,
        Problems = [ProblemTypes.InUse],
    };

    private static readonly Operation ListKeys = new("listKeys", "Keys", "The keys",
        "Names, scopes and when each key was last used, never the keys themselves. Scope: admin.")
    { Answer = typeof(KeyPage), AnswerExample = s_files["listKeys.answer.json"] };

    private static readonly Operation GetKey = new("getKey", "Keys", "A key",
        "Name, scopes and when it was last used, never the key itself. Scope: admin.")
    { Answer = typeof(KeyAnswer), AnswerExample = s_files["getKey.answer.json"] };

    private static readonly Operation RotateKey = new("rotateKey", "Keys", "Give a key a new secret",
        "The same name, scopes, profiles and expiry with a new secret, shown in this answer and nowhere else. The present secret works for another "
        + "overlapHours, so callers can change over; a secret that an earlier rotation left stops working. Scope: admin.")
    {
        Answer = typeof(KeyAnswer),
        Good = new Dictionary<int, string> { [201] = "The new key, shown only this once." },
        AnswerExample = s_files["rotateKey.answer.json"],
    };

    private static readonly Operation DeleteKey = new("deleteKey", "Keys", "Delete a key",
        "The key stops working at once. The last key with the scope admin that does not expire cannot be deleted. Scope: admin.")
    { Good = new Dictionary<int, string> { [204] = "Deleted." }, Problems = [ProblemTypes.InUse] };

    public static void MapAccessKeys(this RouteGroupBuilder v1)
    {
        v1.MapPost("/keys", AccessKeyRoutes.Post).Needs(Scope.Admin).Tell(MakeKey);
        v1.MapGet("/keys", AccessKeyRoutes.List).Needs(Scope.Admin).Tell(ListKeys);
        v1.MapGet("/keys/{name}", AccessKeyRoutes.Get).Needs(Scope.Admin).Tell(GetKey);
        v1.MapPost("/keys/{name}/rotation", AccessKeyRoutes.Rotate).Needs(Scope.Admin).Tell(RotateKey);
        v1.MapDelete("/keys/{name}", AccessKeyRoutes.Delete).Needs(Scope.Admin).Tell(DeleteKey);
    }
}
