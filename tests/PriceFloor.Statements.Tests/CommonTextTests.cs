using FsCheck.Xunit;
using Xunit;

namespace PriceFloor.Statements.Tests;

/// <summary>What the texts of one payee have in common is what a rule needs.</summary>
public sealed class CommonTextTests
{
    [Theory]
    [InlineData("Frit order", "Frit order 4471", "FRIT ORDER 4472")]
    [InlineData("Riverside choir trip", "Riverside choir trip")]
    [InlineData("Wren Lane", "Wren Lane, 12 rent 01/26", "Wren Lane - 12 rent 02/26")]
    [InlineData("CARD PAYMENT TO", "CARD PAYMENT TO WREN-12 X", "CARD PAYMENT TO WREN/13 Y")]
    [InlineData("Glassway", "0117 Glassway", "Glassway 0118")]
    public void Numbers_and_dates_are_left_out(string expected, params string[] texts) => Assert.Equal(expected, CommonText.Of(texts));

    [Theory]
    [InlineData("12 34", "56")]
    [InlineData("A1B", "A2B")]
    [InlineData("", "")]
    public void There_may_be_nothing_in_common(params string[] texts) => Assert.Null(CommonText.Of(texts));

    [Fact]
    public void Words_that_stand_apart_make_a_pattern() => Assert.Equal("frit.*order", CommonText.PatternOf("Frit-4471-order"));

    [Property(MaxTest = 500)]
    public void Whatever_is_common_is_in_every_text_so_a_rule_takes_them_all(string?[]? words, int[]? numbers)
    {
        var texts = (numbers ?? []).Append(1).Take(20)
            .Select(number => Words.Single(string.Join(' ', (words ?? []).Take(50).Select(word => $"{word} {number} glass")) + number)).ToList();
        if (CommonText.Of(texts) is not { } common)
            return;

        Assert.InRange(common.Length, 3, Limits.NameLength);
        Assert.All(texts, text => Assert.Contains(common, text, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_group_hands_out_a_rule_that_takes_all_of_it()
    {
        var sorting = Bank.Sort(Bank.Rules(), Bank.File("current", "2026-01-01", "2026-12-31",
            Bank.Line("2026-02-03", -10, "Card 0117 Glassway Ltd 4"), Bank.Line("2026-03-03", -11, "Card 0118 Glassway Ltd 5"),
            Bank.Line("2026-03-09", -9, "X1-frit-9"), Bank.Line("2026-03-10", -8, "X1-frit.7")));

        Assert.Equal([("Glassway Ltd", null), (null, "frit")], Unplaced.In(sorting).Select(group => (group.Common, group.Pattern)));
    }
}
