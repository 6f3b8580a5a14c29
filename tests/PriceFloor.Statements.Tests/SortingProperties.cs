using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace PriceFloor.Statements.Tests;

public sealed class SortingProperties
{
    private static readonly ReadyRules s_rules = Bank.Rules(
        Bank.Rule("rent", Placement.Business, CostKind.Rent), Bank.Rule("shop", Placement.Household), Bank.Rule("payout", Placement.Sale),
        Bank.Rule("own", Placement.OwnAccount), Bank.Rule("tax", Placement.SalesTax), Bank.Rule("skip", Placement.LeaveOut));

    /// <summary>Few words, amounts, days and ids, so that equal, opposite and repeated lines are common.</summary>
    private static readonly Gen<Transaction> s_line =
        from day in Gen.Choose(0, 40)
        from amount in Gen.Elements(-100m, -100m, 100m, -19.99m, 19.99m, 1250m)
        from text in Gen.Elements("Rent", "Shop", "Payout", "Own transfer", "Sales tax", "Skip this", "Unknown")
        from id in Gen.Elements(null, null, "1", "2", "3")
        from currency in Gen.Frequency((12, Gen.Constant<string?>(null)), (4, Gen.Constant<string?>("USD")), (1, Gen.Constant<string?>("EUR")))
        select new Transaction
        {
            Line = 1,
            Date = new DateOnly(2026, 1, 1).AddDays(day),
            Amount = amount,
            Text = text,
            BankId = id,
            Currency = currency,
        };

    private static readonly Gen<StatementFile[]> s_files =
        (from account in Gen.Elements("current", "card", "savings")
         from lines in s_line.ArrayOf()
         select Bank.File(account, null, null, lines)).ArrayOf();

    [Property(MaxTest = 400)]
    public Property Every_line_is_counted_exactly_once_and_the_sums_add_up_to_the_files() => Prop.ForAll(s_files.ToArbitrary(), files =>
    {
        var sorting = Sorting.Sort(files, s_rules, Bank.Usd, new Period(new DateOnly(2026, 1, 3), new DateOnly(2026, 2, 5)), Bank.Time,
            CancellationToken.None);
        var read = files.SelectMany(file => file.Statements).SelectMany(statement => statement.Transactions).ToList();
        var (all, parts) = (Count.Of(read),
            Enum.GetValues<LineOutcome>().Select(outcome => Count.Of(sorting.Of[outcome].Select(sorted => sorted.Entry.Transaction))).ToList());

        return (all == new Count(parts.Sum(part => part.Lines), parts.Sum(part => part.In), parts.Sum(part => part.Out))
            && read.SequenceEqual(sorting.All.Select(sorted => sorted.Entry.Transaction), ReferenceEqualityComparer.Instance)).ToProperty();
    });

    [Property(MaxTest = 400)]
    public Property What_is_paired_cancels_out_and_stands_in_two_accounts() => Prop.ForAll(s_files.ToArbitrary(), files =>
    {
        var paired = Bank.Sort(s_rules, files).Of[LineOutcome.Paired].ToList();

        return (paired.Sum(sorted => sorted.Entry.Amount) == 0 && paired.Count % 2 == 0
            && paired.GroupBy(sorted => decimal.Abs(sorted.Entry.Amount))
                .All(pairs => pairs.Select(sorted => sorted.Entry.Account).Distinct().Count() > 1)).ToProperty();
    });

    [Property(MaxTest = 400)]
    public Property The_lines_of_a_draft_and_its_equipment_hold_every_placed_line_once() => Prop.ForAll(s_files.ToArbitrary(), files =>
    {
        var draft = Bank.Draft(s_rules, files);
        var inLines = draft.Lines.SelectMany(line => line.Entries).Concat(draft.Bought.Select(one => one.Entry))
            .ToHashSet(ReferenceEqualityComparer.Instance);

        return (inLines.Count == draft.Sorting.Of[LineOutcome.Placed].Count()
            && inLines.Count == draft.Lines.Sum(line => line.Entries.Count) + draft.Bought.Count).ToProperty();
    });

    [Property(MaxTest = 200)]
    public Property The_same_files_sent_twice_change_no_figure() => Prop.ForAll(s_files.ToArbitrary(), files =>
    {
        var (once, twice) = (Bank.Draft(s_rules, files), Bank.Draft(s_rules, [.. files, .. files]));

        return once.Lines.Select(line => (line.Name, line.Total, line.PerYear))
            .SequenceEqual(twice.Lines.Select(line => (line.Name, line.Total, line.PerYear))).ToProperty();
    });
}
