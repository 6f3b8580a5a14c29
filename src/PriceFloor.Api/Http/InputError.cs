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

    /// <summary>In a workbook: the sheet.</summary>
    /// <example>expenses</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Sheet { get; init; }

    /// <summary>In a workbook: the cell, as the spreadsheet names it.</summary>
    /// <example>C7</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Cell { get; init; }

    /// <summary>Line in the body, from 1; in a workbook the row.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? Line { get; init; }

    /// <summary>The position in the line, from 1: the byte in JSON, the character in a sheet, the column in a workbook.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? Column { get; init; }

    /// <summary>A fault of a text that stands in a larger one, placed in that.</summary>
    /// <param name="pointer">Where the text is, such as <c>#/3</c>.</param>
    /// <param name="line">The line in which it begins, from 1.</param>
    /// <param name="column">Where it begins in that line, from 1.</param>
    public InputError In(string pointer, long line, long column) => this with
    {
        Pointer = pointer + Pointer?[1..],
        Line = line + (Line ?? 1) - 1,
        Column = Line is null or 1 ? column + (Column ?? 1) - 1 : Column,
    };

    /// <summary>A fault of the model, somewhere in the body.</summary>
    public static InputError At(Fault fault, string prefix = "") =>
        new() { Pointer = $"#{prefix}{fault.Pointer}", Code = fault.Code, Detail = fault.Detail };
}
