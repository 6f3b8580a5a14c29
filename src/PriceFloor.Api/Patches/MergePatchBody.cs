using System.Reflection;
using System.Text.Json.Nodes;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Patches;

/// <summary>The body of a PATCH: a JSON Merge Patch (RFC 7396) of a document, which is an object.</summary>
public sealed class MergePatchBody : IInput
{
    private readonly JsonObject? _value;

    private MergePatchBody(JsonObject? value, Problem? problem) => (_value, Problem) = (value, problem);

    public Problem? Problem { get; }

    public JsonObject Value => _value ?? throw new InvalidOperationException("A body with a problem reached its handler.");

    public static async ValueTask<MergePatchBody?> BindAsync(HttpContext context, ParameterInfo parameter)
    {
        if (ContentCoding.Against(context.Request) is { } coded)
            return new(null, coded);
        if (!Format.MergePatch.IsSentBy(context.Request))
        {
            context.Response.Headers["Accept-Patch"] = Format.MergePatch.MediaType;
            return new(null, Problem.Of(ProblemTypes.MediaType, $"Send a merge patch as {Format.MergePatch.MediaType}, as UTF-8."));
        }

        var most = context.RequestServices.GetRequiredService<Settings>().BodyBytes;
        if (await RequestBytes.ReadAllAsync(context, most) is not { } body)
            return new(null, Problem.Of(ProblemTypes.TooLarge, FormattableString.Invariant($"The body is larger than {most} bytes.")));
        try
        {
            return Read(body);
        }
        catch (UnreadableException e)
        {
            return new(null, Problem.Of([RequestFault.Unreadable(e.Error)]));
        }
    }

    private static MergePatchBody Read(byte[] body)
    {
        body = body.AsSpan().StartsWith("\uFEFF"u8) ? JsonText.WithoutMark(body).ToArray() : body;
        if (body.AsSpan().IndexOfAnyExcept(" \t\r\n"u8) < 0)
            return Refused(InputCodes.Empty, "The body is empty; send the members of the document that change.");
        BodyReader.Check(body, new BodySchema.Any());
        return JsonNode.Parse(body) is JsonObject patch
            ? new(patch, null)
            : Refused(InputCodes.WrongType, "A merge patch of a document is an object with the members that change.");
    }

    private static MergePatchBody Refused(Code code, string detail) =>
        new(null, Problem.Of([RequestFault.Unreadable(new InputError { Pointer = "#", Code = code, Detail = detail, Line = 1, Column = 1 })]));
}
