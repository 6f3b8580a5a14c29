using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http;

/// <summary>One fault in a request.</summary>
public sealed record InputError
{
    /// <summary>JSON pointer into the body, such as <c>#/calendar/weeksPerYear</c>.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Pointer { get; init; }

    /// <summary>Name of the query parameter, path segment or header.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Parameter { get; init; }

    /// <summary>A stable word for programs; docs/reference/codes.md has the meaning of each and what to do.</summary>
    [JsonConverter(typeof(CodeText))]
    public required Code Code { get; init; }

    /// <summary>What is wrong and how to fix it.</summary>
    public required string Detail { get; init; }

    /// <summary>Line in the body, from 1.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? Line { get; init; }

    /// <summary>The position in the line, from 1: the byte in JSON, the character in a sheet.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? Column { get; init; }

    /// <summary>A fault of the model, somewhere in the body.</summary>
    public static InputError At(Fault fault, string prefix = "") =>
        new() { Pointer = $"#{prefix}{fault.Pointer}", Code = fault.Code, Detail = fault.Detail };
}
