using Xunit;

namespace PriceFloor.Statements.Tests;

/// <summary>Patterns run without backtracking only if their automaton is small, so no pattern can fill the memory.</summary>
public sealed class PatternSizeTests
{
    private const long MostBytes = 64 << 20;

    [Theory]
    [InlineData("(studio|workshop) rent|werkstattmiete")]
    [InlineData("\\bcard\\b|caf[eé]|web ?hosting|tax \\- paid")]
    [InlineData("(?:sea|land) view")]
    [InlineData("[ab][ab][ab][ab][ab][ab][ab][ab]")]
    public void Words_and_a_few_choices_are_plain(string pattern) => Assert.True(PatternSize.Of(pattern) is { IsPlain: true, IsSmall: true });

    [Theory]
    [InlineData("[ab][ab][ab][ab][ab][ab][ab][ab][ab]")]
    [InlineData("a.c")]
    [InlineData("(a+)+b")]
    [InlineData("[0-9]{4}-[0-9]{2}")]
    public void With_repetitions_or_more_choices_it_is_small_but_not_plain(string pattern) =>
        Assert.True(PatternSize.Of(pattern) is { IsPlain: false, IsSmall: true });

    [Theory]
    [InlineData("(a|b)*a(a|b){60}c")]
    [InlineData("(a{6}){6}")]
    [InlineData("[ab]{1,99999999999}")]
    [InlineData("(?i)tax")]
    [InlineData("(?")]
    public void Many_repetitions_and_what_is_not_known_are_not_small(string pattern) =>
        Assert.True(PatternSize.Of(pattern) is { IsPlain: false, IsSmall: false });

    /// <summary>
    /// Each keeps track of every letter of the last sixty or so. Together, without backtracking, they took seconds and gigabytes for a line.
    /// </summary>
    [Fact]
    public void Patterns_that_remember_much_end_in_time_and_in_little_memory()
    {
        var patterns = Enumerable.Range(60, 8).Select(back => $"(a|b)*a(a|b){{{back}}}c").ToArray();
        var letters = new Random(7);
        var line = Bank.Line("2026-01-05", -80, string.Concat(Enumerable.Range(0, 480).Select(_ => letters.Next(2) == 0 ? 'a' : 'b')));
        var together = new ReadingRule { TextMatches = string.Join('|', patterns), To = Placement.Household };
        foreach (var rules in new[] { Bank.Rules([.. patterns.Select(pattern => together with { TextMatches = pattern })]), Bank.Rules(together) })
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                Assert.Null(rules.FirstFor(line, Bank.Time));
            }
            catch (SlowPatternException)
            {
                // So it ends on a slow machine.
            }

            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, MostBytes);
        }
    }

    /// <summary>The worst that is still plain: as many choices as it may have, in eight patterns that differ.</summary>
    [Fact]
    public void Plain_patterns_with_the_most_choices_need_little_memory()
    {
        var rules = Bank.Rules([.. Enumerable.Range(0, 8).Select(place => new ReadingRule
        {
            TextMatches = new string('a', place) + string.Concat(Enumerable.Repeat("[ab]", 8)) + "c",
            To = Placement.Household,
        })]);
        var letters = new Random(7);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var line = 0; line < 100; line++)
            Assert.Null(rules.FirstFor(Bank.Line("2026-01-05", -80,
                string.Concat(Enumerable.Range(0, 480).Select(_ => letters.Next(2) == 0 ? 'a' : 'b'))), Bank.Time));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, MostBytes);
    }
}
