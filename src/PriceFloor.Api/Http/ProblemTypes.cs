namespace PriceFloor.Api.Http;

/// <summary>Every problem that the service can answer with.</summary>
public static class ProblemTypes
{
    public static readonly ProblemType UnreadableRequest = new("unreadable-request", 400, "The request cannot be read",
        "The body is not JSON, a value has the wrong JSON type, a value is null but must not be, "
        + "or a property or query parameter is unknown or given twice. Only the first such fault is reported.",
        "Look at errors[0]: pointer (or parameter), line and column say where. Correct it and send the request again.");

    public static readonly ProblemType NoKey = new("no-key", 401, "A key is needed",
        "The request has no key, or one that this service does not know or that has expired.",
        "Send the header \"Authorization: Bearer pf_...\". The first key is in the file first-admin-key in the data folder; "
        + "further ones are made with POST /v1/keys.");

    public static readonly ProblemType KeyNotAllowed = new("key-not-allowed", 403, "The key does not allow this",
        "The key is right, but it lacks the scope that this call needs.",
        "Use a key with the scope that the detail names, or ask whoever runs the server for one.");

    public static readonly ProblemType NotFound = new("not-found", 404, "Nothing is there",
        "No such address, or nothing with that key (or not at the time that asOf names).",
        "Check the address and the key; case counts. A deleted document's history is still at its /revisions.");

    public static readonly ProblemType MethodNotAllowed = new("method-not-allowed", 405, "The address does not take this method",
        "The address exists, but not with this HTTP method.", "Use one of the methods in the Allow header.");

    public static readonly ProblemType NotAcceptable = new("not-acceptable", 406, "No answer in that format",
        "The Accept header asks for a format that this address does not give.", "Accept application/json, or leave the header out.");

    public static readonly ProblemType InUse = new("in-use", 409, "Something else depends on it",
        "Deleting or narrowing this would leave other documents with broken references, or the name is already in use.",
        "Change or delete what usedBy lists first, or choose another name.");

    public static readonly ProblemType Issued = new("issued", 409, "The quote is issued",
        "An issued quote is what the client was offered, so it can be neither changed nor deleted, and it is superseded only once.",
        "POST /v1/quotes/{key}/revise makes a draft of a new quote from it; the verb forget erases it.");

    public static readonly ProblemType NotIssued = new("not-issued", 409, "The quote is not issued",
        "A draft has no outcome, no actual figures and nothing to supersede.",
        "Issue it first with POST /v1/quotes/{key}/issue, or change the draft with PUT.");

    public static readonly ProblemType StaleRevision = new("stale-revision", 412, "It has changed meanwhile",
        "If-Match or If-None-Match does not fit the present revision, so nothing was written, or nothing was sent.",
        "GET the document, make the change again on its present content, and send its ETag as If-Match.");

    public static readonly ProblemType TooLarge = new("too-large", 413, "The body is too large",
        "The body is larger than this address reads.", "Send less at a time.");

    public static readonly ProblemType MediaType = new("media-type", 415, "The body's format is not supported here",
        "The Content-Type is missing or is not one that this address reads.",
        "Send JSON with the header \"Content-Type: application/json\" (UTF-8).");

    public static readonly ProblemType InvalidInput = new("invalid-input", 422, "A value breaks a rule",
        "The request can be read, but values in it break rules. All of them are listed in errors, each with pointer (or parameter), "
        + "code and how to fix it. Nothing was stored.",
        "Correct each value that errors names and send the request again.");

    public static readonly ProblemType UnknownReference = new("unknown-reference", 422, "It names something that does not exist",
        "The request names a profile, material, channel or design that is not stored (or was not at the time that asOf names).",
        "Store it first, or correct the name; case counts.");

    public static readonly ProblemType CurrencyMismatch = new("currency-mismatch", 422, "Two currencies meet",
        "Amounts in two currencies would have to be compared. Nothing is ever converted.",
        "Use a profile and a channel of the same currency, or leave the currency out of the request.");

    public static readonly ProblemType CannotCompute = new("cannot-compute", 422, "There is no answer",
        "Each document is valid, but together they have no answer; reason says why: no-price (no price up to 10^12 is enough), no-bench-time, "
        + "too-large (a figure is too large to be exact), ...",
        "The detail says which figure to look at.");

    public static readonly ProblemType Quota = new("quota", 422, "The studio has reached a limit",
        "Whoever hosts this studio has limited how much it may store: documents, bytes or keys; limit and used say which and how much. "
        + "Nothing was stored.",
        "Delete documents or keys that are not needed, or ask the host for a higher limit. Bytes count histories, so deleting frees none.");

    public static readonly ProblemType TooManyRequests = new("too-many-requests", 429, "Too many requests",
        "The key (or, without a key, the address) has used up its requests for now.",
        "Wait as many seconds as Retry-After says. The RateLimit header has what is left.");

    public static readonly ProblemType Busy = new("busy", 503, "The store cannot be used at the moment",
        "The store is locked, read-only, full, damaged, or being upgraded. Nothing was half done.",
        "Try again after Retry-After seconds. If it stays this way, "
        + "whoever runs the server should look at the log and at the data folder's space and permissions.");

    public static readonly ProblemType DamagedDocument = new("damaged-document", 503, "A stored document is damaged",
        "A document that the answer needs is not as it was stored: it was damaged on the disk or edited by hand. Nothing is computed from it, "
        + "since a guess could be a floor that is too low.",
        "PUT the document again, which replaces it, or restore a backup. The verb check-store lists every damaged document.");

    public static readonly ProblemType Internal = new("internal", 500, "A fault of the service",
        "Something went wrong that should not. The caller is not at fault; nothing was half done.",
        "Report the requestId to whoever runs the server: the log has it too.");

    public static IReadOnlyList<ProblemType> All { get; } =
    [
        UnreadableRequest, NoKey, KeyNotAllowed, NotFound, MethodNotAllowed, NotAcceptable, InUse, StaleRevision, TooLarge, MediaType,
        Issued, NotIssued,
        InvalidInput, UnknownReference, CurrencyMismatch, CannotCompute, Quota, TooManyRequests, Busy, DamagedDocument, Internal,
    ];
}

/// <summary>A kind of problem: stable for programs, with a page for people.</summary>
/// <param name="Slug">The last part of <c>/problems/{slug}</c>.</param>
/// <param name="Status">The HTTP status.</param>
/// <param name="Title">The same short phrase every time.</param>
/// <param name="Meaning">What has happened.</param>
/// <param name="Cure">What the caller can do about it.</param>
public sealed record ProblemType(string Slug, int Status, string Title, string Meaning, string Cure)
{
    /// <summary>The code for the fault of one item of many.</summary>
    public Code Code { get; } = new(Slug, Meaning, Cure);

    public string Address => $"/problems/{Slug}";
}
