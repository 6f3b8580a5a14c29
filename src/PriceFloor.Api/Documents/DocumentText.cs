using System.Globalization;
using System.Text;
using System.Text.Json;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>A stored document as answers have it: its text with its names, revision and time in front.</summary>
public sealed class DocumentText : IResult, IStatusCodeHttpResult
{
    private readonly byte[] _body;
    private readonly long _revision;
    private readonly bool _known;
    private readonly string? _location;

    private DocumentText(byte[] body, long revision, bool known, string? location) =>
        (_body, _revision, _known, _location) = (body, revision, known, location);

    public int? StatusCode =>
        _known ? StatusCodes.Status304NotModified : _location is not null ? StatusCodes.Status201Created : StatusCodes.Status200OK;

    public static IResult Answer(Revision revision, IEnumerable<(string, string)> names, HttpRequest request, bool created = false,
        bool isSettled = true, string? createdAt = null)
    {
        var known = false;
        if (HttpMethods.IsGet(request.Method))
        {
            var read = Preconditions.Of(request);
            if (read.Found is not { } preconditions)
                return Problem.Of(read.Faults);
            if (preconditions.IsStale(revision.Number))
                return Problem.Of([RequestFault.Stale(revision.Number)]);
            known = isSettled && preconditions.IsKnown(revision.Number);
        }

        return new DocumentText(Encoding.UTF8.GetBytes(Of(revision, names)), revision.Number, known,
            created || createdAt is not null ? request.PathBase + (createdAt ?? request.Path.ToUriComponent()) : null);
    }

    /// <summary>The text of a revision; for a deletion it says so in place of a document.</summary>
    public static string Of(Revision revision, IEnumerable<(string Property, string Value)> names)
    {
        var text = new StringBuilder("{");
        foreach (var (property, value) in names)
            text.Append(CultureInfo.InvariantCulture, $"\"{property}\":{JsonSerializer.Serialize(value, WireJson.Options)},");
        text.Append(CultureInfo.InvariantCulture, $"\"revision\":{revision.Number},\"savedAt\":\"{TimeText.Write(revision.SavedAtTime)}\"");
        return text.Append(revision.Body switch { null => ",\"deleted\":true}", "{}" => "}", var body => $",{body.AsSpan(1)}" }).ToString();
    }

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.StatusCode = StatusCode!.Value;
        response.Headers.ETag = Preconditions.TagOf(_revision);
        response.Headers.CacheControl = "private, no-cache";
        if (_location is not null)
            response.Headers.Location = _location;
        if (_known)
            return;
        response.ContentType = "application/json";
        response.ContentLength = _body.Length;
        await AnswerBlocks.WriteAsync(response, _body, httpContext.RequestAborted);
    }
}
