using System.Globalization;
using System.Text.Json.Serialization;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Http;

/// <summary>The body of every error: application/problem+json (RFC 9457). This file is the only one that writes it.</summary>
public sealed class Problem : IResult, IStatusCodeHttpResult
{
    private readonly ProblemType _type;
    private readonly string _detail;

    private Problem(ProblemType type, string detail) => (_type, _detail) = (type, detail);

    public ProblemType Type => _type;

    public string Detail => _detail;

    public IReadOnlyList<InputError>? Errors { get; private init; }

    public Code? Reason { get; private init; }

    /// <summary>The code for one item of many: the reason, else the kind of problem.</summary>
    public Code Code => Reason ?? _type.Code;

    public IReadOnlyList<Usage>? UsedBy { get; private init; }

    public long? CurrentRevision { get; private init; }

    /// <summary>With quota: the limit, and how much there is.</summary>
    public (long Limit, long Used)? Reached { get; private init; }

    public int? RetryAfter { get; private init; }

    /// <summary>True if the body's Content-Encoding is not supported.</summary>
    public bool IsOfCoding { get; private init; }

    int? IStatusCodeHttpResult.StatusCode => _type.Status;

    public static Problem Of(ProblemType type, string? detail = null) => new(type, detail ?? type.Meaning);

    public static Problem Unreadable(InputError error) => new(ProblemTypes.UnreadableRequest, error.Detail) { Errors = [error] };

    /// <summary>All faults at once, in order of pointer, then of parameter.</summary>
    public static Problem Invalid(IEnumerable<InputError> errors)
    {
        var sorted = errors.Distinct()
            .OrderBy(error => error.Pointer ?? "", StringComparer.Ordinal).ThenBy(error => error.Parameter, StringComparer.Ordinal).ToList();
        return new(ProblemTypes.InvalidInput, sorted.Count == 1
            ? sorted[0].Detail
            : string.Create(CultureInfo.InvariantCulture, $"{sorted.Count} values break a rule; errors lists each."))
        {
            Errors = sorted,
        };
    }

    /// <summary>All of them at once, each once, in order of pointer.</summary>
    public static Problem UnknownReference(IReadOnlyList<InputError> errors) => new(ProblemTypes.UnknownReference, errors[0].Detail)
    {
        Errors = [.. errors.Distinct().OrderBy(error => error.Pointer ?? error.Parameter, StringComparer.Ordinal)],
    };

    /// <summary>The same problem with each fault at its place in a larger body.</summary>
    public Problem Placed(Func<InputError, InputError> place) => WithErrors([.. (Errors ?? []).Select(place)]);

    public Problem WithErrors(IReadOnlyList<InputError> errors) =>
        new(_type, _detail) { Errors = errors, Reason = Reason, UsedBy = UsedBy, CurrentRevision = CurrentRevision, RetryAfter = RetryAfter };

    public static Problem CannotCompute(Code reason, string detail) => new(ProblemTypes.CannotCompute, detail) { Reason = reason };

    public static Problem OfCoding(string coding) =>
        new(ProblemTypes.MediaType, $"The body has the Content-Encoding \"{coding}\"; send it without one.") { IsOfCoding = true };

    public static Problem TooManyRequests(int retryAfter, string why = "") => new(ProblemTypes.TooManyRequests,
        string.Create(CultureInfo.InvariantCulture, $"{why}Wait {retryAfter} seconds."))
    { RetryAfter = retryAfter };

    public static Problem Quota(string what, long limit, long used) => new(ProblemTypes.Quota, string.Create(CultureInfo.InvariantCulture,
        $"This studio may store {limit} {what}, and has {used}, so nothing was stored."))
    { Reached = (limit, used) };

    /// <summary>The store went away while it was to keep what was written.</summary>
    public static Problem Unknown() => new(ProblemTypes.Busy, "The store stopped answering while it was to keep what you sent. "
        + "It may have been kept: read it again before you send it again.")
    { RetryAfter = 2 };

    public static Problem Busy() => new(ProblemTypes.Busy, ProblemTypes.Busy.Meaning) { RetryAfter = 2 };

    /// <summary>
    /// The problem of a request that has no answer. What cannot be read comes first, then unknown names, then values that break a rule; all faults of
    /// that kind are in it. Of other faults it has the first.
    /// </summary>
    public static Problem Of(IReadOnlyList<Fault> faults)
    {
        // A fault of the model is reported by its first one, but all missing materials are reported together.
        var told = faults[0] is RequestFault ? faults.OfType<RequestFault>()
            : faults.Where(fault => fault.Code == faults[0].Code && fault.Code == FaultCodes.UnknownMaterial).Select(RequestFault.Of);
        var ofFields = told.Where(fault => fault.Error is not null).ToLookup(fault => fault.Type, fault => fault.Error!);
        if (ofFields.Contains(ProblemTypes.UnreadableRequest))
            return Unreadable(ofFields[ProblemTypes.UnreadableRequest].First()).WithErrors([.. ofFields[ProblemTypes.UnreadableRequest]]);
        if (ofFields.Contains(ProblemTypes.UnknownReference))
            return UnknownReference([.. ofFields[ProblemTypes.UnknownReference]]);
        if (ofFields.Contains(ProblemTypes.InvalidInput))
            return Invalid(ofFields[ProblemTypes.InvalidInput]);
        var first = RequestFault.Of(faults[0]);
        return new Problem(first.Type, first.Detail)
        {
            Errors = ofFields.Contains(first.Type) ? [.. ofFields[first.Type]] : null,
            Reason = first.Reason,
            UsedBy = first.UsedBy,
            CurrentRevision = first.CurrentRevision,
        };
    }

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.StatusCode = _type.Status;
        response.ContentType = "application/problem+json";
        response.Headers.CacheControl = "no-store";
        if (RetryAfter is { } seconds)
            response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
        if (IsOfCoding)
            response.Headers.AcceptEncoding = ContentCoding.Identity;
        if (_type == ProblemTypes.NoKey)
            response.Headers.WWWAuthenticate = "Bearer realm=\"PriceFloor\"";

        return WireJson.WriteAsync(response, BodyFor(httpContext), httpContext.RequestAborted);
    }

    private static InputError WithoutKeys(InputError error) => error with
    {
        Detail = KeyText.Hide(error.Detail),
        Pointer = error.Pointer is { } pointer ? KeyText.Hide(pointer) : null,
        Parameter = error.Parameter is { } parameter ? KeyText.Hide(parameter) : null,
    };

    /// <summary>The problem as it is sent in answer to a request.</summary>
    public ProblemBody BodyFor(HttpContext context) =>
        new(context.Request.PathBase + _type.Address, _type.Title, _type.Status, KeyText.Hide(_detail), Reason, Errors?.Select(WithoutKeys).ToList(),
            UsedBy, CurrentRevision, context.TraceIdentifier)
        {
            Limit = Reached?.Limit,
            Used = Reached?.Used,
        };
}

/// <summary>A document that depends on it.</summary>
/// <param name="Kind">What kind of document it is.</param>
/// <param name="Key">Its key.</param>
public sealed record Usage(string Kind, string Key);

/// <summary>A problem as it is sent (RFC 9457).</summary>
/// <param name="Type">The address of a page that says what it means and how to fix it.</param>
/// <param name="Title">A short phrase, the same every time.</param>
/// <param name="Status">The HTTP status.</param>
/// <param name="Detail">What is wrong in this request.</param>
/// <param name="Reason">With cannot-compute: the reason.</param>
/// <param name="Errors">Each fault in the request, in order of pointer.</param>
/// <param name="UsedBy">With in-use: what depends on it.</param>
/// <param name="CurrentRevision">With stale-revision: the present revision.</param>
/// <param name="RequestId">The request's id, which the log has too.</param>
/// <param name="Sku" example="RB-014">In a batch: the design as it was sent, as far as it can be read.</param>
/// <param name="Channel" example="web">In a batch: the channel as it was sent, as far as it can be read.</param>
public sealed record ProblemBody(
    string Type, string Title, int Status, string Detail,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Reason,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<InputError>? Errors,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<Usage>? UsedBy,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] long? CurrentRevision,
    string RequestId,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Sku = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Channel = null)
{
    /// <summary>With quota: how much the studio may store.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? Limit { get; init; }

    /// <summary>With quota: how much it has.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? Used { get; init; }
}
