using System.Globalization;
using PriceFloor.Pricing.Changes;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>A line of the profile that is paid or received in some months of the year.</summary>
/// <param name="List">The list that it is in: <c>expenses</c>, <c>household</c> or <c>otherIncome</c>.</param>
/// <param name="Index">Its place in the list, from 0.</param>
/// <param name="Line">The line.</param>
/// <param name="Months">The months, 1 to 12, over which its year is spread evenly.</param>
/// <param name="IsAssumed">Whether nothing says the months of a line that is not due in every month.</param>
public sealed record DueLine(string List, int Index, IRecurring Line, IReadOnlyList<int> Months, bool IsAssumed)
{
    private const string Expenses = "expenses", Household = "household", OtherIncome = "otherIncome";

    private static readonly IReadOnlyList<int> s_every = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

    /// <summary>An expense that is paid as a bill: one that is recovered on pieces or by channels is paid with them.</summary>
    public bool IsBill => Line is Expense line && (line.TracedTo is null || !line.Deductible);

    public bool IsHousehold => List == Household;

    public bool IsIncome => List == OtherIncome;

    /// <summary>Where it stands, such as <c>/profile/expenses/2</c>.</summary>
    public string Pointer => string.Create(CultureInfo.InvariantCulture, $"/profile/{List}/{Index}");

    /// <summary>The same line in a profile that differs only in its amounts.</summary>
    public DueLine In(CostProfile profile) => this with
    {
        Line = List switch
        {
            Expenses => profile.Expenses[Index],
            Household => profile.Household[Index],
            _ => profile.OtherIncome[Index],
        },
    };

    /// <summary>
    /// Every line of a profile with the months in which it is due. Refused: a pointer that leads to no line (<c>leads-nowhere</c>) or to two of one
    /// name (<c>ambiguous-name</c>), and two items for one line (<c>duplicate</c>), each at its item of <c>paidIn</c>.
    /// </summary>
    /// <param name="profile">The profile.</param>
    /// <param name="paidIn">What is said of the months of its lines.</param>
    /// <param name="hints">Whether a fault may name lines of the profile.</param>
    public static Outcome<List<DueLine>> Of(CostProfile profile, IReadOnlyList<PaidIn> paidIn, bool hints = true)
    {
        var lists = new Dictionary<string, IReadOnlyList<(string? Name, IRecurring Line)>>
        {
            [Expenses] = [.. profile.Expenses.Select(line => (line.Name, (IRecurring)line))],
            [Household] = [.. profile.Household.Select(line => (line.Name, (IRecurring)line))],
            [OtherIncome] = [.. profile.OtherIncome.Select(line => (line.Name, (IRecurring)line))],
        };
        var faults = new List<Fault>();
        var given = new Dictionary<(string List, int Index), IReadOnlyList<int>>();
        foreach (var (number, item) in paidIn.Index())
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"/paidIn/{number}/at");
            var found = ItemsAt(item.At, lists, at, hints);
            faults.AddRange(found.Faults);
            foreach (var line in found.Found ?? [])
                if (!given.TryAdd(line, [.. item.Months.Select(month => (int)month).Order()]))
                    faults.Add(new Fault(at, FaultCodes.Duplicate,
                        $"Another item leads to the same line, /{line.List}/{line.Index}; leave one out."));
        }

        return faults.Count > 0 ? faults : lists.SelectMany(list => list.Value.Select((line, index) =>
            given.TryGetValue((list.Key, index), out var months)
                ? new DueLine(list.Key, index, line.Line, months, IsAssumed: false)
                : new DueLine(list.Key, index, line.Line, UsualMonths(line.Line.Per), line.Line.Per is Per.Year or Per.Quarter))).ToList();
    }

    private static Outcome<List<(string List, int Index)>> ItemsAt(string pointer,
        Dictionary<string, IReadOnlyList<(string? Name, IRecurring Line)>> lists, string at, bool hints)
    {
        if (DocumentPointer.Find(pointer) is not { Tokens: [var list, var token] } || !lists.TryGetValue(list, out var lines))
            return new Fault(at, FaultCodes.LeadsNowhere,
                "at must be a JSON Pointer to a line of the profile, such as /expenses/Bench rent, /household/0 or /otherIncome/0.");
        var found = ListToken.Items(token, [.. lines.Select(line => line.Name)], at, hints);
        return found.Found is { } items ? items.Select(index => (list, index)).ToList() : found.Faults.ToList();
    }

    private static IReadOnlyList<int> UsualMonths(Per per) => per switch
    {
        Per.Year => [1],
        Per.Quarter => [3, 6, 9, 12],
        _ => s_every,
    };
}
