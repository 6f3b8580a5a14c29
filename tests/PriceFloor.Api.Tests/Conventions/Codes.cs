using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.Http;
using PriceFloor.Api.Statements;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Statements;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>The closed lists of codes, by their place in an answer.</summary>
public static class Codes
{
    public static readonly IReadOnlyList<Type> Lists =
        [typeof(FaultCodes), typeof(FileCodes), typeof(InputCodes), typeof(ReasonCodes), typeof(WarningCodes), typeof(StatementWarningCodes),
            typeof(EvidenceWarningCodes), typeof(EvidenceReasonCodes),
            typeof(RemedyReasons), typeof(LineCodes), typeof(SheetLineCodes)];

    public static IReadOnlyList<Code> Faults =>
        [.. Of(typeof(FaultCodes), typeof(FileCodes), typeof(InputCodes), typeof(ReasonCodes), typeof(EvidenceReasonCodes)),
            .. Of(typeof(LineCodes)).Where(LineCodes.IsFailure),
            .. Of(typeof(SheetLineCodes))];

    public static IReadOnlyList<Code> Warnings => [.. Of(typeof(WarningCodes), typeof(StatementWarningCodes), typeof(EvidenceWarningCodes)),
        ReasonCodes.DamagedDocument];

    public static IReadOnlyList<Code> Remedies => Of(typeof(RemedyReasons));

    public static IReadOnlyList<Code> Lines => [.. Of(typeof(LineCodes)), FaultCodes.CurrencyMismatch];

    /// <summary>Why a line of the log is refused.</summary>
    public static IReadOnlyList<Code> LogLines =>
    [
        .. Of(typeof(SheetLineCodes)), LineCodes.BadDate, LineCodes.AmbiguousDate, LineCodes.BadAmount, LineCodes.BadCurrency, LineCodes.TooManyCells,
        LineCodes.BadQuotes, FaultCodes.Required, FaultCodes.OutOfRange, FaultCodes.CurrencyMismatch, InputCodes.UnknownReference,
    ];

    private static IReadOnlyList<Code> Of(params IEnumerable<Type> lists) => [.. lists.SelectMany(Code.In).Distinct()];
}
