using Microsoft.Net.Http.Headers;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Documents;

/// <summary>If-Match and If-None-Match (RFC 9110): the ETag is the revision's number in quotes.</summary>
public sealed class Preconditions
{
    private readonly IReadOnlyList<EntityTagHeaderValue> _match;
    private readonly IReadOnlyList<EntityTagHeaderValue> _noneMatch;

    private Preconditions(IReadOnlyList<EntityTagHeaderValue> match, IReadOnlyList<EntityTagHeaderValue> noneMatch) =>
        (_match, _noneMatch) = (match, noneMatch);

    public static string TagOf(long revision) => $"\"{revision.ToString(System.Globalization.CultureInfo.InvariantCulture)}\"";

    /// <summary>Reads the headers; a malformed header is a problem, not an unconditional write.</summary>
    public static Outcome<Preconditions> Of(HttpRequest request) =>
        !TryTags(request.Headers.IfMatch, out var match) ? Unreadable("If-Match")
        : !TryTags(request.Headers.IfNoneMatch, out var noneMatch) ? Unreadable("If-None-Match")
        : new Preconditions(match, noneMatch);

    /// <summary>Whether a write must be refused. If-Match compares strongly: a weak tag never matches.</summary>
    public bool Forbid(long? revision) =>
        (_match.Count > 0 && !_match.Any(tag => Matches(tag, revision) && !tag.IsWeak)) || _noneMatch.Any(tag => Matches(tag, revision));

    /// <summary>Whether the caller of a GET asks for another revision than this one, and so must not get it.</summary>
    public bool IsStale(long revision) => IsStale(TagOf(revision));

    /// <summary>Whether the caller of a GET asks for an answer with another tag. If-Match compares strongly: a weak tag never matches.</summary>
    public bool IsStale(string tag) => _match.Count > 0 && !_match.Any(wanted => wanted.Tag == "*" || (wanted.Tag == tag && !wanted.IsWeak));

    /// <summary>Whether the caller of a GET already has that revision.</summary>
    public bool IsKnown(long revision) => _noneMatch.Any(tag => Matches(tag, revision));

    /// <summary>Whether the caller of a GET already has the answer with that tag; If-None-Match compares weakly.</summary>
    public bool IsKnown(string tag) => _noneMatch.Any(known => known.Tag == "*" || known.Tag == tag);

    private static bool Matches(EntityTagHeaderValue tag, long? revision) =>
        revision is { } number && (tag.Tag == "*" || tag.Tag == TagOf(number));

    private static bool TryTags(Microsoft.Extensions.Primitives.StringValues header, out IReadOnlyList<EntityTagHeaderValue> tags)
    {
        var isRead = EntityTagHeaderValue.TryParseList(header, out var found) && found.Count > 0;
        tags = isRead ? [.. found!] : [];
        return isRead || header.Count == 0;
    }

    private static RequestFault Unreadable(string name) =>
        RequestFault.Unreadable(new InputError
        {
            Parameter = name,
            Code = InputCodes.Malformed,
            Detail = $"{name} must be * or entity tags in double quotes, such as \"7\".",
        });
}
