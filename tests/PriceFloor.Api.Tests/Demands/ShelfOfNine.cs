using System.Globalization;
using System.Text;
using PriceFloor.Api.Tests.Evidence.Logged;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.Demands;

/// <summary>
/// The shelf of the worked example, stored: the pendant as found, listed 33 weeks at 46.00 and 20 at 52.00, and eight designs that were listed once.
/// Orders are no older than a year, so nothing is known of seasons. Day 0 is the studio's first, 2027-01-02, and what is asked is asked of day 370.
/// </summary>
internal static class ShelfOfNine
{
    public const string Path = "/v1/designs/RB-014/demand?channel=web&days=56&to=2028-01-07";

    private const string AsFound = """
        {"name":"River drop pendant","profile":"main","soldShare":0.8610,"materials":[{"name":"Glass","amount":6}],"making":{"steps":
        [{"name":"torch","handsOnMinutes":40.20},{"name":"anneal","handsOnMinutes":8,"mayBeHurried":false,"goodShare":0.8695}]}}
        """;

    private static readonly int[] s_orders = [93, 41, 18, 6, 55, 12, 29, 3, 70], s_weeks = [53, 50, 52, 40, 48, 30, 52, 20, 52];

    /// <summary>Prices are listed on their days, as the clock goes on; then the year's orders are sent.</summary>
    public static async Task<Studio> Stored()
    {
        var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.Has("/v1/designs/RB-014", AsFound);
        for (var design = 1; design < 9; design++)
            await studio.Has(FormattableString.Invariant($"/v1/designs/D{design}"), """{"profile":"main","making":{"minutesPerPiece":20}}""");
        var steps = Enumerable.Range(1, 8)
            .Select(design => (Day: 371 - s_weeks[design] * 7, Sku: FormattableString.Invariant($"D{design}"), Price: 30))
            .Append((0, "RB-014", 46)).Append((231, "RB-014", 52)).OrderBy(step => step.Item1).ToList();
        var today = 0;
        foreach (var (day, sku, price) in steps)
        {
            studio.Clock.Advance(TimeSpan.FromDays(day - today));
            today = day;
            await studio.Has($"/v1/designs/{sku}/prices/web", FormattableString.Invariant($"{{\"price\":{price}}}"));
        }

        studio.Clock.Advance(TimeSpan.FromDays(370 - today));
        Assert.StartsWith("327 stored, ", (await studio.Sheet("source=shop", Lines)).Told(), StringComparison.Ordinal);
        return studio;
    }

    private static string Lines
    {
        get
        {
            var (lines, line) = (new StringBuilder(SentLog.Heading), 0);
            for (var design = 0; design < 9; design++)
                for (var order = 0; order < s_orders[design]; order++)
                    lines.Append(CultureInfo.InvariantCulture,
                        $"{++line},{On(DayOf(design, order)):yyyy-MM-dd},{(design == 0 ? "RB-014" : $"D{design}")},web,1,30.00,{line}\n");
            return lines.ToString();
        }
    }

    private static DateOnly On(int day) => new DateOnly(2027, 1, 2).AddDays(day);

    /// <summary>None in the first ten days; of the pendant 62 before the change of day 231.</summary>
    private static int DayOf(int design, int order) => design > 0 ? 371 - s_weeks[design] * 7 + 10 + order % (s_weeks[design] * 7 - 10)
        : order < 62 ? 10 + order * 3 : 231 + (order - 62) * 4;
}
