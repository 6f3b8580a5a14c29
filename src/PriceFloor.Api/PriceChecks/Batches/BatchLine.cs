using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>One line of a batch: its question, or why it cannot be read, and its place.</summary>
/// <param name="Request">The question; null with faults.</param>
/// <param name="Faults">Why it cannot be read; empty if it can.</param>
/// <param name="Pointer">Its place in a JSON array, such as <c>#/3</c>; <c>#</c> for a line of its own; null for a row of a sheet.</param>
/// <param name="Line">Line in the body, from 1.</param>
/// <param name="Column">Column in that line, from 1.</param>
public sealed record BatchLine(PriceCheckRequest? Request, IReadOnlyList<RequestFault> Faults, string? Pointer, long Line, long Column)
{
    /// <summary>The design that the line names, as sent; null if it cannot be read.</summary>
    public string? Sku { get; init; } = Request?.Sku;

    /// <summary>The channel that the line names, as sent; null if it cannot be read.</summary>
    public string? Channel { get; init; } = Request?.Channel;

    public static BatchLine OfJson(byte[] text, string pointer, long line, long column, FluentValidation.IValidator<PriceCheckRequest> validator)
    {
        var outcome = JsonBody<PriceCheckRequest>.Read(text, validator);
        return outcome.Found is { } request ? new BatchLine(request, [], pointer, line, column)
            : new BatchLine(null,
                [.. outcome.Faults.Cast<RequestFault>().Select(fault => fault with { Error = fault.Error!.In(pointer, line, column) })],
                pointer, line, column)
            { Sku = SentText.In(text, "sku"), Channel = SentText.In(text, "channel") };
    }

    public static BatchLine Of(NdjsonLine line, FluentValidation.IValidator<PriceCheckRequest> validator) => line.Fault is { } fault
        ? new BatchLine(null, [RequestFault.Unreadable(fault with { Pointer = "#" })], "#", line.Number, 1)
        : OfJson(line.Bytes.ToArray(), "#", line.Number, 1, validator);

    /// <summary>The answer, or the faults with their place in the body.</summary>
    public Outcome<CheckedPrice> Checked(Catalogue catalogue, bool mayRead)
    {
        if (Faults.Count > 0)
            return Faults.ToList<Fault>();
        var outcome = Checked(catalogue, Request!, Place.In(Pointer ?? "#"), mayRead);
        return outcome.Found is not null ? outcome
            : outcome.Faults.Select(RequestFault.Of).Select(fault => (Fault)(fault with { Error = Placed(fault) })).ToList();
    }

    /// <summary>The first fault as a cell of a sheet: its place, and what is wrong.</summary>
    public string InASheet(IReadOnlyList<Fault> faults)
    {
        var (error, detail) = (RequestFault.Of(faults[0]).Error, faults[0].Detail);
        return FormattableString.Invariant($"Line {error?.Line ?? Line}, column {error?.Column ?? Column}: {error?.Detail ?? detail}");
    }

    private InputError Placed(RequestFault fault) => fault.Error is { } error
        ? error with { Pointer = Pointer is null ? null : error.Pointer, Line = Line, Column = Column }
        : new InputError { Pointer = Pointer, Code = fault.Reason ?? fault.Code, Detail = fault.Detail, Line = Line, Column = Column };

    /// <summary>A damaged document is a problem of the lines that need it, and of no others.</summary>
    private static Outcome<CheckedPrice> Checked(Catalogue catalogue, PriceCheckRequest request, Place place, bool mayRead)
    {
        try
        {
            return CheckedPrice.ForAnswer(catalogue, request, place, mayRead);
        }
        catch (Documents.DamagedDocumentException damaged)
        {
            return RequestFault.Of(ProblemTypes.DamagedDocument, damaged.Message);
        }
    }
}
