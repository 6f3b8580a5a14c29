using System.Text.Json;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Changes;

/// <summary>The range that a change has in place of a number.</summary>
public static class ChangeRange
{
    private static readonly BodySchema s_schema = BodySchema.Of(typeof(NumberRange));

    /// <summary>The range; null if the change has a plain value.</summary>
    public static NumberRange? Of(DocumentChange change) => change.By?.Other ?? change.Plus?.Other ?? (IsInTo(change)
        ? JsonSerializer.Deserialize<NumberRange>(change.To!.Utf8, WireJson.Options)
        : null);

    /// <summary>The value if nobody says one: 1 for a factor, 0 for an amount; null under <c>to</c>, where it is what is stored.</summary>
    public static decimal? Neutral(DocumentChange change) => change.By is not null ? 1 : change.Plus is not null ? 0 : null;

    /// <summary>What is wrong with it, with pointers into the change.</summary>
    public static IEnumerable<Fault> Faults(DocumentChange change)
    {
        if (IsInTo(change) && FaultsOfTo(change.To!.Utf8) is { Count: > 0 } unread)
            return unread;
        if (Of(change) is not { } range)
            return WithoutRange(change);
        var at = change.By is not null ? "/by" : change.Plus is not null ? "/plus" : "/to";
        var likely = range.Likely ?? Neutral(change);
        return range.Low > range.High || range.Low > likely || likely > range.High
            ? [new Fault(at, FaultCodes.OutOfOrder, "A range goes from low by likely to high: low is at most likely, and likely at most high.")]
            : [];
    }

    /// <summary>No document has an object with low or high, so such a value is a range.</summary>
    private static bool IsInTo(DocumentChange change) => change.To?.Value is { ValueKind: JsonValueKind.Object } value
        && (value.TryGetProperty("low", out _) || value.TryGetProperty("high", out _));

    private static List<Fault> FaultsOfTo(byte[] range)
    {
        try
        {
            return [.. BodyReader.Check(range, s_schema).Select(error => new Fault("/to" + error.Pointer![1..], error.Code, error.Detail))];
        }
        catch (UnreadableException e)
        {
            return [new Fault("/to" + e.Error.Pointer![1..], e.Error.Code, e.Error.Detail)];
        }
    }

    private static IEnumerable<Fault> WithoutRange(DocumentChange change)
    {
        if (change.Ends is not null)
            yield return new Fault("/ends", FaultCodes.Unexpected, "ends says something of a range; give low and high, or leave it out.");
        if (change.Together is not null)
            yield return new Fault("/together", FaultCodes.Unexpected, "together joins ranges; give low and high, or leave it out.");
    }
}
