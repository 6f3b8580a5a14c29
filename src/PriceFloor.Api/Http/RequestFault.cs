namespace PriceFloor.Api.Http;

/// <summary>
/// Why a request has no answer, if there is more to say than the model can: the kind of problem, and the field of the request at fault.
/// </summary>
public sealed record RequestFault : Fault
{
    private RequestFault(ProblemType type, InputError? error, string detail) : base(error?.Pointer ?? "", error?.Code ?? type.Code, detail) =>
        (Type, Error) = (type, error);

    public ProblemType Type { get; }

    /// <summary>The fault at its field; null if it is about the whole request.</summary>
    public InputError? Error { get; init; }

    /// <summary>The same among those of a batch, where each fault has a place.</summary>
    public InputError InBatch => Error ?? new InputError { Code = Code, Detail = Detail, Pointer = PartOfKey is null ? null : "#/" + PartOfKey };

    /// <summary>With cannot-compute: the reason.</summary>
    public Code? Reason { get; private init; }

    /// <summary>With in-use: what depends on it.</summary>
    public IReadOnlyList<Usage>? UsedBy { get; private init; }

    /// <summary>With not-found: the part of the key that names nothing. In an address that is clear; a sheet has a column for each part.</summary>
    public string? PartOfKey { get; private init; }

    /// <summary>With stale-revision: the present revision.</summary>
    public long? CurrentRevision { get; private init; }

    public static RequestFault Of(ProblemType type, string detail) => new(type, null, detail);

    /// <summary>A fault of the model, as a fault of the request that led to it.</summary>
    public static RequestFault Of(Fault fault) => fault as RequestFault
        ?? (fault.Code == FaultCodes.CurrencyMismatch ? Of(ProblemTypes.CurrencyMismatch, fault.Detail)
        : fault.Code == FaultCodes.UnknownMaterial ? Unknown(InputError.At(fault, "/design"))
        : CannotCompute(fault.Code, fault.Detail));

    public static RequestFault CannotCompute(Code reason, string detail) => new(ProblemTypes.CannotCompute, null, detail) { Reason = reason };

    /// <summary>A value that breaks a rule.</summary>
    public static RequestFault Invalid(InputError error) => new(ProblemTypes.InvalidInput, error, error.Detail);

    /// <summary>An unknown name.</summary>
    public static RequestFault Unknown(InputError error) => new(ProblemTypes.UnknownReference, error, error.Detail);

    /// <summary>Text that cannot be read at all.</summary>
    public static RequestFault Unreadable(InputError error) => new(ProblemTypes.UnreadableRequest, error, error.Detail);

    /// <param name="detail">What is not there.</param>
    /// <param name="partOfKey">Which part of the key names nothing, such as <c>channel</c>; null: the whole key.</param>
    public static RequestFault NotFound(string detail, string? partOfKey = null) =>
        new(ProblemTypes.NotFound, null, detail) { PartOfKey = partOfKey };

    public static RequestFault InUse(string detail, IReadOnlyList<Usage> usedBy) => new(ProblemTypes.InUse, null, detail) { UsedBy = usedBy };

    public static RequestFault Stale(long? current) => new(ProblemTypes.StaleRevision, null, current is null
        ? "Nothing is stored under this key now, so If-Match cannot be met."
        : FormattableString.Invariant($"The present revision is {current}."))
    { CurrentRevision = current };
}
