using System.Text.Json;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorChanges;

/// <summary>Where two revisions of a document differ, as JSON pointers without the first slash: <c>expenses/3/amount</c>.</summary>
public static class FieldsThatDiffer
{
    /// <summary>What moved, for each document: <c>main@8: expenses/3/amount</c>. A document that was created or deleted is named as such.</summary>
    public static IEnumerable<string> Between(Change change)
    {
        var was = change.Before is { IsDeletion: false } before ? before : null;
        var name = FormattableString.Invariant($"{change.Document.Key}@{(change.After ?? change.Before)!.Number}");
        if (change.After is null or { IsDeletion: true })
            return [$"{name}: deleted"];
        if (was is null)
            return [$"{name}: created"];
        try
        {
            using var one = JsonDocument.Parse(was.Body!);
            using var other = JsonDocument.Parse(change.After.Body!);
            return [.. Between(one.RootElement, other.RootElement, "").Select(pointer => $"{name}: {pointer}")];
        }
        catch (JsonException)
        {
            return [$"{name}: damaged"];
        }
    }

    private static IEnumerable<string> Between(JsonElement one, JsonElement other, string at)
    {
        if (one.ValueKind == JsonValueKind.Object && other.ValueKind == JsonValueKind.Object)
        {
            var names = one.EnumerateObject().Concat(other.EnumerateObject()).Select(property => property.Name).Distinct();
            return names.SelectMany(name => Between(Member(one, name), Member(other, name),
                Below(at, name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal))));
        }

        if (one.ValueKind == JsonValueKind.Array && other.ValueKind == JsonValueKind.Array)
        {
            var (before, after) = (one.EnumerateArray().ToList(), other.EnumerateArray().ToList());
            return Enumerable.Range(0, int.Max(before.Count, after.Count)).SelectMany(i =>
                Between(i < before.Count ? before[i] : default, i < after.Count ? after[i] : default,
                    Below(at, i.ToString(System.Globalization.CultureInfo.InvariantCulture))));
        }

        return Same(one, other) ? [] : [at];
    }

    private static bool Same(JsonElement one, JsonElement other) => one.ValueKind == other.ValueKind
        && (one.ValueKind == JsonValueKind.Undefined || JsonElement.DeepEquals(one, other));

    private static JsonElement Member(JsonElement parent, string name) => parent.TryGetProperty(name, out var member) ? member : default;

    private static string Below(string at, string part) => at.Length == 0 ? part : $"{at}/{part}";
}
