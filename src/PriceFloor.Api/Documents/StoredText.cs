using System.Text;
using System.Text.Json;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>
/// Reads what is stored as strictly as what is sent: a number that is none, a word that is not of its list or a figure out of range is damage, never
/// a zero or a default. A floor that is too low is the one way in which this service must not fail.
/// </summary>
public static class StoredText<T> where T : class
{
    private static readonly Shape s_shape = Shape.Of(typeof(T));

    /// <summary>The document, or what is wrong with its text.</summary>
    public static (T? Document, string? Fault) Read(string body)
    {
        try
        {
            var bytes = Encoding.UTF8.GetBytes(body);
            if (BodyReader.Check(bytes, s_shape, isStored: true) is [var first, ..])
                return (null, $"{first.Pointer}: {first.Detail}");
            var document = JsonSerializer.Deserialize<T>(bytes, WireJson.Options)!;
            return CurrencyOf(document) is { } code && Currency.Find(code) is null ? (null, $"#/currency: there is no currency {code}.") : (document, null);
        }
        catch (UnreadableException e)
        {
            return (null, $"{e.Error.Pointer}: {e.Error.Detail}");
        }
    }

    private static string? CurrencyOf(T document) => document switch
    {
        CostProfile profile => profile.Currency,
        Channel channel => channel.Currency,
        ListedPrice price => price.Currency,
        _ => null,
    };

    /// <summary>The document of a revision that is no deletion. Throws <see cref="DamagedDocumentException"/>.</summary>
    public static T Of(Revision revision) => Read(revision.Body!) is ({ } document, _) ? document : throw new DamagedDocumentException(revision.Kind, revision.Key, revision.Number);
}

/// <summary>A stored document is damaged: what needs it has no answer, and everything else goes on.</summary>
public sealed class DamagedDocumentException(string kind, string key, long revision)
    : Exception(FormattableString.Invariant($"The stored {kind} \"{key}\" (revision {revision}) is damaged, so nothing is computed from it."))
{
    /// <summary>What answers call it where they leave one document out.</summary>
    public const string Code = "damaged-document";
}
