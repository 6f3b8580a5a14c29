using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Statements.Tests;

/// <summary>Neighbouring patterns are asked about together; that changes no answer, and hides no slow pattern.</summary>
public sealed class PatternGroupTests
{
    private static readonly string[] s_parts =
        ["rent", "\\brod\\b", "(glass|frit) order", "^card", "fee$", "[0-9]{4}", "stalls?", "(?i)tax", "(?:sea|land) view", "é", "a.*b", "x|y z"];

    [Fact]
    public void The_rule_that_takes_a_line_is_the_first_whose_pattern_matches_it_alone()
    {
        var random = new Random(20260105);
        string[] words = ["RENT", "ROD", "RODS", "GLASS ORDER", "CARD", "FEE", "2026", "STALL", "TAX", "LAND VIEW", "É", "AB", "Y Z", "NOBODY"];
        for (var round = 0; round < 200; round++)
        {
            var rules = Enumerable.Range(0, random.Next(1, 40)).Select(_ => new ReadingRule
            {
                TextMatches = random.Next(6) == 0 ? null : s_parts[random.Next(s_parts.Length)],
                TextHas = random.Next(9) == 0 ? "depot" : null,
                Paid = random.Next(4) == 0 ? Paid.In : null,
                To = Placement.Household,
            }).Select(rule => rule is { TextMatches: null } ? rule with { TextHas = "depot" } : rule with { TextHas = null }).ToArray();
            var ready = Bank.Rules(rules);
            for (var line = 0; line < 10; line++)
            {
                var text = string.Join(' ', Enumerable.Range(0, random.Next(1, 4)).Select(_ => words[random.Next(words.Length)]));
                var transaction = Bank.Line("2026-01-05", random.Next(2) == 0 ? 5 : -5, text);
                Assert.Equal(Alone(rules, transaction), ready.FirstFor(transaction, Bank.Time));
            }
        }
    }

    [Fact]
    public void A_slow_pattern_among_quick_ones_is_named()
    {
        var rules = Bank.Rules([.. Enumerable.Range(0, 7).Select(place => new ReadingRule
        {
            TextMatches = place == 4 ? "(a?){500}a{500}" : $"payee {place}",
            To = Placement.Household,
        })]);
        var now = 0L;
        var time = new PatternTime(() => now += 20); // a match lasts 20 ms, by this clock
        var line = Bank.Line("2026-01-05", -80, new string('a', 499) + "!");
        Assert.Equal(4, Assert.Throws<SlowPatternException>(() => rules.FirstFor(line, time)).Rule);
    }

    private static int? Alone(ReadingRule[] rules, Transaction line) => rules.Index().Where(rule =>
            (rule.Item.Paid is not { } paid || paid == line.Paid)
            && (rule.Item.TextHas is not { } part || line.Text.Contains(part, StringComparison.OrdinalIgnoreCase))
            && (rule.Item.TextMatches is not { } pattern || Regex.IsMatch(line.Text, pattern,
                RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1))))
        .Select(rule => (int?)rule.Index).FirstOrDefault();
}
