namespace PriceFloor.Api.Statements;

/// <summary>What may make a draft from statements wrong without making it impossible.</summary>
public static class StatementWarningCodes
{
    public static readonly Code NoReadingRules = new("no-reading-rules",
        "No reading rules that the key may read are stored, so every line is unplaced.",
        "PUT reading rules, or use a key that may read.");

    public static readonly Code DuplicatesByLikeness = new("duplicates-by-likeness",
        "Lines without a bank's id were counted once because another file has the same date, amount and text.",
        "Check that the files overlap there.");

    public static readonly Code EqualLines = new("equal-lines",
        "Equal lines of one file have no bank's id; all were counted, as two equal purchases are.",
        "Delete one from the file if it is the same purchase.");

    public static readonly Code IdUsedAgain = new("id-used-again",
        "A bank's id is used for different days or amounts; all were counted.",
        "Check those lines.");

    public static readonly Code Gap = new("gap",
        "The files of an account leave days out.",
        "Export the days that are missing.");

    public static readonly Code ShortCoverage = new("short-coverage",
        "An account covers so few months that bills by the quarter or the year may be missing or counted too often.",
        "Add more months.");

    public static readonly Code OnlyMoneyIn = new("only-money-in",
        "Every line of an account is money that came in, as if nothing had been paid: amounts without signs look like that.",
        "If money also went out, name the column that says so (directionColumn), or say positiveIsOut.");

    public static readonly Code MoneyMostlyIn = new("money-mostly-in",
        "Nearly every line of a file came in, although reading rules know several of the texts as costs: some cards count purchases as positive.",
        "If purchases are positive there, send positiveIsOut for that file.");

    public static readonly Code MoreBackThanPaid = new("more-back-than-paid",
        "More came back than was paid, so the line has no place in the draft.",
        "Check the rule that took it.");

    public static readonly Code IncomeTakesNoDays = new("income-takes-no-days",
        "Income from classes or bench hire takes no day from the bench in the draft.",
        "Set daysPerYear.");

    public static readonly Code TracedAndNot = new("traced-and-not",
        "Expenses of one kind are in the draft both traced (to pieces or sales) and traced to nothing, as if a cash book or a rule had left it out.",
        "Say the same tracedTo for both, unless they are two different things.");

    public static readonly Code UnplacedLines = new("unplaced-lines",
        "Lines that no rule took are in no figure of the draft.",
        "Add rules for the largest of them.");

    public static readonly Code IncomeMissing = new("income-missing",
        "The files do not cover every day of the year so far, so income may be missing in the pace.",
        "Export the days that are missing.");
}
