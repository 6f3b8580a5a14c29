using System.Text.RegularExpressions;

namespace PriceFloor.Statements;

/// <summary>Bills that are paid in fewer than twelve instalments a year, such as ten months with two of rest.</summary>
public static partial class Instalments
{
    /// <summary>The instalments a year that the texts give, as "instalment 3 of 10" does; null unless all of them give the same.</summary>
    public static int? AYear(IReadOnlyList<Sorted> entries)
    {
        int? all = null;
        foreach (var sorted in entries.Where(sorted => sorted.Entry.Amount < 0))
        {
            if (Counted().Match(sorted.Entry.Transaction.Text) is not { Success: true } match)
                return null;
            var of = int.Parse(match.Groups["of"].ValueSpan, System.Globalization.CultureInfo.InvariantCulture);
            if (of is < 2 or > 11 || of != (all ?? of))
                return null;
            all = of;
        }

        return all;
    }

    /// <summary>
    /// True if the payments are monthly and alike except for one rest of exactly two months, with payments before and after it: ten a year. Our own
    /// choice of signs.
    /// </summary>
    /// <param name="paid">The months with payments, in order, with the amounts.</param>
    /// <param name="alike">The share by which the amounts may differ.</param>
    public static bool RestsTwoMonths(IReadOnlyList<(int Month, decimal Amount)> paid, decimal alike)
    {
        var distances = paid.Zip(paid.Skip(1), (one, next) => next.Month - one.Month).ToList();
        return paid.Count >= 5 && distances.Count(distance => distance == 3) == 1 && distances.TrueForAll(distance => distance is 1 or 3)
            && paid.Max(month => month.Amount) - paid.Min(month => month.Amount) <= alike * paid.Max(month => month.Amount);
    }

    [GeneratedRegex(@"\b(instal?lment|rate|échéance|termijn|cuota|rata)\s*(no\.?\s*)?[0-9]{1,2}\s*(/|of|von|de|sur|van|di)\s*(?<of>[0-9]{1,2})\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 250)]
    private static partial Regex Counted();
}
