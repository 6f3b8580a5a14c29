using System.Text.Json;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>One line of a batch: what it asks, or why that cannot be read, and where it stands.</summary>
/// <param name="Request">What is asked; null with a problem.</param>
/// <param name="Problem">Why it cannot be read.</param>
/// <param name="Pointer">Where it stands in a JSON array, such as <c>#/3</c>; <c>#</c> for a line of its own; null for a row of a sheet.</param>
/// <param name="Line">Line in the body, from 1.</param>
/// <param name="Column">Column in that line, from 1.</param>
public sealed record BatchLine(PriceCheckRequest? Request, Problem? Problem, string? Pointer, long Line, long Column)
{
    /// <summary>The design that the line names, as sent; null where that cannot be read.</summary>
    public string? Sku { get; init; } = Request?.Sku;

    /// <summary>The channel that the line names, as sent; null where that cannot be read.</summary>
    public string? Channel { get; init; } = Request?.Channel;

    public static BatchLine OfJson(byte[] text, string pointer, long line, long column, FluentValidation.IValidator<PriceCheckRequest> validator)
    {
        var body = JsonBody<PriceCheckRequest>.Parse(text, validator);
        return body.Problem is { } problem
            ? new BatchLine(null, problem.Placed(error => error with
            {
                Pointer = pointer + error.Pointer?[1..],
                Line = line + (error.Line ?? 1) - 1,
                Column = error.Line is null or 1 ? column + (error.Column ?? 1) - 1 : error.Column,
            }), pointer, line, column)
            { Sku = TextIn(text, "sku"), Channel = TextIn(text, "channel") }
            : new BatchLine(body.Value, null, pointer, line, column);
    }

    /// <summary>A text of a line that is refused, so that its caller sees which line it was; null where it is not there or not whole.</summary>
    private static string? TextIn(byte[] text, string property)
    {
        try
        {
            using var json = JsonDocument.Parse(text);
            return json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty(property, out var value) && value.ValueKind == JsonValueKind.String && value.GetString() is { Length: <= Limits.AliasLength } found ? found : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException) // no JSON, or half a surrogate
        {
            return null;
        }
    }

    public static BatchLine Of(NdjsonLine line, FluentValidation.IValidator<PriceCheckRequest> validator) => line.Fault is { } fault
        ? new BatchLine(null, Problem.Unreadable(fault with { Pointer = "#" }), "#", line.Number, 1)
        : OfJson(line.Bytes.ToArray(), "#", line.Number, 1, validator);

    /// <summary>The answer, or the problem with its place in the body.</summary>
    public (CheckedPrice? Found, Problem? Problem) Checked(Catalogue catalogue, bool mayRead)
    {
        if (Problem is { } unreadable)
            return (null, unreadable);
        var (found, problem) = Checked(catalogue, Request!, Pointer ?? "#", mayRead);
        return found is not null ? (found, null) : (null, problem!.Errors is { Count: > 0 }
            ? problem.Placed(error => error with { Pointer = Pointer is null ? null : error.Pointer, Line = Line, Column = Column })
            : problem.WithErrors([new InputError { Pointer = Pointer, Code = problem.Code, Detail = problem.Detail, Line = Line, Column = Column }]));
    }

    /// <summary>A damaged document is the problem of the lines that need it, and of no other.</summary>
    private static (CheckedPrice? Found, Problem? Problem) Checked(Catalogue catalogue, PriceCheckRequest request, string at, bool mayRead)
    {
        try
        {
            return CheckedPrice.ForAnswer(catalogue, request, at, mayRead);
        }
        catch (Documents.DamagedDocumentException damaged)
        {
            return (null, Problem.Of(ProblemTypes.DamagedDocument, damaged.Message));
        }
    }
}
