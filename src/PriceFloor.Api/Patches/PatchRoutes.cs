using System.Text;
using System.Text.Json.Nodes;
using PriceFloor.Api.Access;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.Patches;

/// <summary>PATCH of a stored document: some members change, the others stay.</summary>
public static class PatchRoutes
{
    public static async Task<IResult> Patch<T>(PathKey path, MergePatchBody body, Store store, DocumentKind<T> kind, HttpContext context)
        where T : class
    {
        var read = Preconditions.Of(context.Request);
        if (read.Found is not { } preconditions)
            return Problem.Of(read.Faults);
        if (UnknownNames(body.Value, BodySchema.Of(typeof(T)), "#").ToList() is { Count: > 0 } unknown)
            return Problem.Of(unknown);

        var caller = Caller.Of(context);
        var outcome = await store.WriteAsync<Outcome<Saved>>(caller, async writing =>
        {
            if (await caller.Access.Seen(writing, writing.Find(kind.Name, path.Text)) is not { Body: not null } stored)
                return RequestFault.NotFound($"There is no {kind.Name} \"{path.Text}\"; PUT creates one.");
            if (await caller.Access.Against(writing, kind.Name, path.Text) is { } shared)
                return shared;
            if (preconditions.Forbid(stored.Number))
                return RequestFault.Stale(stored.Number);
            var patched = Patched(kind, stored, body.Value);
            if (patched.Found is not { } document)
                return patched.Faults.Select(WithoutLine).ToList();
            var saving = await kind.Save(writing, path.Text, document, caller.Access, stored);
            return saving.Found is { } done ? done with { Revision = (await kind.Shown(writing, done.Revision, null)).Revision } : saving;
        });
        return outcome.Found is { } saved ? Answer(saved.Revision, kind.NamesOf(path.Text), caller, context) : Problem.Of(outcome.Faults);
    }

    /// <summary>A key that may not read learns the new revision and not what the members are that it did not send.</summary>
    private static IResult Answer(Revision revision, IEnumerable<(string, string)> names, Caller caller, HttpContext context)
    {
        if (caller.May(Scope.Read))
            return DocumentText.Answer(revision, names, context.Request);
        context.Response.Headers.ETag = Preconditions.TagOf(revision.Number);
        return TypedResults.NoContent();
    }

    private static Outcome<T> Patched<T>(DocumentKind<T> kind, Revision stored, JsonObject patch) where T : class =>
        JsonBody<T>.Read(Encoding.UTF8.GetBytes(
            MergePatch.Of(JsonNode.Parse(kind.DocumentIn(kind.Sound(stored).Body!)), patch)!.ToJsonString()), kind.Validator);

    /// <summary>
    /// Names that no document has, so that a slip in a name that is to be removed is no silent success. Names that are to be set are checked with the
    /// document.
    /// </summary>
    private static IEnumerable<Fault> UnknownNames(JsonObject patch, BodySchema schema, string pointer)
    {
        if (schema is not BodySchema.Members members)
            yield break;
        foreach (var (name, value) in patch)
            if (members.Named(Encoding.UTF8.GetBytes(name)) is { } member)
                foreach (var fault in value is JsonObject below ? UnknownNames(below, member.BodySchema(), $"{pointer}/{name}") : [])
                    yield return fault;
            else if (value is null && !members.ReadOnly.Contains(name))
                yield return RequestFault.Unreadable(new InputError
                {
                    Pointer = $"{pointer}/{name}",
                    Code = InputCodes.UnknownProperty,
                    Detail = $"\"{name}\" is not a property here, so it cannot be removed; they are "
                        + $"{string.Join(", ", members.All.Select(one => one.Name))}.",
                });
    }

    /// <summary>The line is one of the whole document, which the caller did not send.</summary>
    private static Fault WithoutLine(Fault fault) =>
        fault is RequestFault { Error: { } error } request ? request with { Error = error with { Line = null, Column = null } } : fault;
}
