using System.Text.Json.Nodes;

namespace PriceFloor.Api.Changes;

/// <summary>JSON Merge Patch (RFC 7396).</summary>
public static class MergePatch
{
    /// <summary>What a patch makes of a value. Neither is changed.</summary>
    public static JsonNode? Of(JsonNode? target, JsonNode? patch)
    {
        if (patch is not JsonObject changes)
            return patch?.DeepClone();
        var result = target is JsonObject before ? (JsonObject)before.DeepClone() : [];
        foreach (var (name, value) in changes)
            if (value is null)
                result.Remove(name);
            else
                result[name] = Of(result[name], value);
        return result;
    }
}
