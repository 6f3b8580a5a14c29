using FluentValidation;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceChecks.Batches;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.OrderChecks;

/// <summary>One order of a batch, or why it cannot be read, and its place.</summary>
/// <param name="Request">The order; null with faults.</param>
/// <param name="Faults">Why it cannot be read; empty if it can.</param>
/// <param name="Pointer">Its place in a JSON array, such as <c>#/3</c>; <c>#</c> for a line of its own.</param>
/// <param name="Line">Line in the body, from 1.</param>
/// <param name="Column">Column in that line, from 1.</param>
internal sealed record OrderBatchLine(OrderCheckRequest? Request, IReadOnlyList<RequestFault> Faults, string Pointer, long Line, long Column)
{
    /// <summary>The channel that the order names, as sent; null if it cannot be read.</summary>
    public string? Channel { get; init; } = Request?.Channel;

    public static OrderBatchLine OfJson(byte[] text, string pointer, long line, long column, IValidator<OrderCheckRequest> validator)
    {
        var outcome = JsonBody<OrderCheckRequest>.Read(text, validator);
        if (outcome.Found is { } request)
            return new OrderBatchLine(request, [], pointer, line, column);
        var faults = outcome.Faults.Cast<RequestFault>()
            .Select(fault => fault with { Error = fault.Error!.In(pointer, line, column) }).ToList();
        return new OrderBatchLine(null, faults, pointer, line, column) { Channel = SentText.In(text, "channel") };
    }

    public static OrderBatchLine Of(NdjsonLine line, IValidator<OrderCheckRequest> validator) => line.Fault is { } fault
        ? new OrderBatchLine(null, [RequestFault.Unreadable(fault with { Pointer = "#" })], "#", line.Number, 1)
        : OfJson(line.Bytes.ToArray(), "#", line.Number, 1, validator);

    /// <summary>The order checked, or the faults with their place in the body.</summary>
    public Outcome<CheckedOrder> Checked(Catalogue catalogue, bool mayRead)
    {
        if (Faults.Count > 0)
            return Faults.ToList<Fault>();
        var outcome = CheckedIfSound(catalogue, mayRead);
        return outcome.Found is not null ? outcome
            : outcome.Faults.Select(RequestFault.Of).Select(fault => (Fault)(fault with { Error = Placed(fault) })).ToList();
    }

    private InputError Placed(RequestFault fault) => fault.Error is { } error
        ? error with { Line = Line, Column = Column }
        : new InputError { Pointer = Pointer, Code = fault.Reason ?? fault.Code, Detail = fault.Detail, Line = Line, Column = Column };

    /// <summary>A damaged document is a problem of the orders that need it, and of no others.</summary>
    private Outcome<CheckedOrder> CheckedIfSound(Catalogue catalogue, bool mayRead)
    {
        try
        {
            return CheckedOrder.Of(catalogue, Request!, Place.In(Pointer), mayRead);
        }
        catch (DamagedDocumentException damaged)
        {
            return RequestFault.Of(ProblemTypes.DamagedDocument, damaged.Message);
        }
    }
}
