using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Profiles;

/// <summary>What the pieces of the year must bring in. Money in the profile's currency and with its decimals.</summary>
public sealed record RequirementAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>What sales must bring in over the year, rounded up.</summary>
    public required decimal RequiredRevenue { get; init; }

    /// <summary>What bench hours must bring in, rounded up, without the expenses that pieces and channels carry themselves.</summary>
    public required decimal BenchMustEarn { get; init; }

    /// <summary>All expenses of the year, with depreciation and business shares of household lines.</summary>
    public required decimal Expenses { get; init; }

    /// <summary>What equipment loses in the year.</summary>
    public required decimal Depreciation { get; init; }

    /// <summary>The expenses that designs and channels recover.</summary>
    public required decimal Traced { get; init; }

    /// <summary>Household lines net of their business share, and expenses that are not deductible.</summary>
    public required decimal Household { get; init; }

    /// <summary>Other income, net and taxable.</summary>
    public required decimal OtherIncome { get; init; }

    /// <summary>What must be left after tax.</summary>
    public required decimal Need { get; init; }

    /// <summary>The tax on the profit below. A calculation with your own tables, not tax advice.</summary>
    public required decimal Tax { get; init; }

    /// <summary>The smallest profit before tax that leaves the need, rounded up.</summary>
    public required decimal ProfitBeforeTax { get; init; }

    /// <summary>Working days, up to four decimals.</summary>
    public required decimal Workdays { get; init; }

    /// <summary>Hours at the bench, helpers' included, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>
    /// The hours that carry the year, up to four decimals: bench, selling and helpers' hours, of which normalUse find work that sells.
    /// </summary>
    /// <example>1224</example>
    public required decimal CarryingHours { get; init; }

    /// <summary>Takings of a working week, from requiredRevenue, rounded up.</summary>
    public required decimal PerWeek { get; init; }

    /// <summary>Takings of a working day, from requiredRevenue, rounded up.</summary>
    public required decimal PerDay { get; init; }

    /// <summary>What a carrying hour, at the bench or selling, must bring, rounded up: benchMustEarn over carryingHours.</summary>
    public required decimal PerBenchHour { get; init; }

    /// <summary>What reaches the household for each working hour, at the bench or not. Not the same as perBenchHour.</summary>
    public required decimal TakeHomePerHour { get; init; }

    /// <summary>Kinds of cost that no line covers: the costs people forget.</summary>
    public required IReadOnlyList<CostKind> NotCovered { get; init; }

    /// <summary>The revision that the answer rests on.</summary>
    public required IReadOnlyDictionary<string, string> Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that lower it.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }

    public static RequirementAnswer Of(StudioYear year, string basis, DateOnly today, bool workings)
    {
        var money = year.Currency;
        return new RequirementAnswer
        {
            Currency = money.Code,
            RequiredRevenue = money.RoundUp(year.RequiredRevenue),
            BenchMustEarn = money.RoundUp(year.BenchMustEarn),
            Expenses = money.Round(year.Expenses),
            Depreciation = money.Round(year.Depreciation),
            Traced = money.Round(year.Traced),
            Household = money.Round(year.Household),
            OtherIncome = money.Round(year.NetIncome + year.TaxableIncome),
            Need = money.Round(year.Need),
            Tax = money.Round(year.TaxOnProfit),
            ProfitBeforeTax = money.RoundUp(year.Profit),
            Workdays = Answers.Hours(year.Workdays),
            BenchHours = Answers.Hours(year.BenchHours),
            CarryingHours = Answers.Hours(year.CarryingHours),
            PerWeek = money.RoundUp(year.PerWeek),
            PerDay = money.RoundUp(year.PerDay),
            PerBenchHour = money.RoundUp(year.PerBenchHour),
            TakeHomePerHour = money.Round(year.TakeHomePerHour),
            NotCovered = [.. year.NotCovered],
            Basis = new Dictionary<string, string> { ["profile"] = basis },
            Assumed = AssumptionAnswer.Of(Pricing.Explaining.Assumed.In(year.Profile)),
            Warnings = WarningAnswer.Of(Pricing.Explaining.Warnings.In(year, today)),
            Workings = WorkingAnswer.Of(workings, () => Pricing.Explaining.Workings.Of(year)),
        };
    }
}
