using System.Globalization;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>What may make a draft wrong without making it impossible.</summary>
public static class StatementWarnings
{
    /// <summary>With fewer months, payments by the quarter or the year cannot be recognised.</summary>
    private const int ShortMonths = 3;

    public static IEnumerable<Warning> In(IReadOnlyList<SentFile> sent, ProfileDraft draft, YearToDate? pace,
        bool hasRules, CostProfile? against)
    {
        var sorting = draft.Sorting;
        if (!hasRules)
            yield return new(StatementWarningCodes.NoReadingRules,
                "No reading rules that this key may read are stored there, so every line is unplaced; PUT some to /v1/reading-rules/main first, "
                + "such as those that GET /v1/starter-rules answers.",
                "/unplaced");
        if (sorting.Duplicates.ByLikeness is > 0 and var alike)
            yield return new(StatementWarningCodes.DuplicatesByLikeness,
                Text($"{alike} lines without a bank's id were counted once because another file has the same date, amount and text."),
                "/accounted/duplicate");
        if (sorting.Duplicates.Repeated is > 0 and var repeated)
            yield return new(StatementWarningCodes.EqualLines, Text(
                $"{repeated} lines are equal to another in the same file and have no bank's id; all were counted, as two equal purchases would be."),
                "/accounted/placed");
        if (sorting.Duplicates.IdsUsedAgain is > 0 and var ids)
            yield return new(StatementWarningCodes.IdUsedAgain,
                Text($"{ids} bank's ids are used for different days or amounts; all were counted."), "/accounted");
        foreach (var (index, account) in sorting.Coverage.Index())
        {
            if (account.Gaps.Count > 0)
                yield return new(StatementWarningCodes.Gap,
                    $"The files of \"{account.Account}\" leave days out; the year is calculated from the months that they cover.",
                    Text($"/coverage/{index}/gaps"));
            if (account.Covered.Count > 0 && account.Months < ShortMonths)
                yield return new(StatementWarningCodes.ShortCoverage, $"\"{account.Account}\" covers less than {ShortMonths} months: "
                    + "bills paid by the quarter or the year may be missing or counted too often.", Text($"/coverage/{index}/months"));
            if (sorting.OnlyMoneyIn.Contains(account.Account))
                yield return new(StatementWarningCodes.OnlyMoneyIn, $"\"{account.Account}\" has only money in; if the amounts have no signs, "
                    + "name the column that says which way the money went with directionColumn; "
                    + "if purchases are positive there, say positiveIsOut.", Text($"/coverage/{index}"));
        }

        foreach (var file in sorting.MostlyIn.Where(file => sent[file.File].Layout.PositiveIsOut is null))
            yield return new(StatementWarningCodes.MoneyMostlyIn, TextOf(file, sent[file.File]), Text($"/files/{file.File}"));
        foreach (var line in draft.PaidBack)
            yield return new(StatementWarningCodes.MoreBackThanPaid,
                $"\"{line.Name.Name}\" got more back than was paid; it has no place in the draft.", "/lines");
        foreach (var unfinished in Warnings.InDraft(draft.Profile))
            yield return unfinished with { Pointer = "/draft" + unfinished.Pointer["/profile".Length..] };
        foreach (var index in draft.IncomeWithoutDays(against))
            yield return new(StatementWarningCodes.IncomeTakesNoDays, $"\"{draft.Profile.OtherIncome[index].Name}\" takes no day from the bench in "
                + "the draft; a class or a day of bench hire does, so give its daysPerYear, "
                + "or the floor comes out too low.", Text($"/draft/otherIncome/{index}/daysPerYear"));
        foreach (var (index, traced) in draft.TracedAndNot())
            yield return new(StatementWarningCodes.TracedAndNot, TextOf(draft.Profile, draft.Profile.Expenses[index], traced),
                Text($"/draft/expenses/{index}/tracedTo"));
        if (sorting.Of[LineOutcome.Unplaced].Any())
            yield return new(StatementWarningCodes.UnplacedLines,
                "Lines that no rule took are in no figure of the draft; add rules for the largest of them.", "/unplaced");
        if (pace is { IsWhole: false })
            yield return new(StatementWarningCodes.IncomeMissing,
                "The files do not cover every day of the year so far, so income may be missing in the pace.", "/pace");
    }

    private static string TextOf(CostProfile draft, Expense expense, Expense traced)
    {
        var money = Currency.Of(draft.Currency);
        return $"\"{expense.Name}\" has {money.Round(expense.Amount)} that is traced to nothing, and \"{traced.Name}\" of the same kind has "
            + $"{money.Round(traced.Amount)} that is traced to {(traced.TracedTo == TracedTo.Sale ? "sales" : "pieces")}. If it is the same expense, "
            + "bench hours carry a part of what is already counted there: say the same tracedTo for both, in the rule or in the cash book.";
    }

    private static string TextOf(MoneyMostlyIn file, SentFile sent) => Text(
        $"{file.In} of {file.Lines} lines of \"{sent.Name}\" came in, and the texts of {file.Costs} of these are costs by the reading rules; ")
        + "if purchases are positive there, "
        + (sent.IsInForm ? $"send one more field: -F '{sent.Name}.layout={{\"positiveIsOut\":true}}'." : "add ?positiveIsOut=true.");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
