using System.Globalization;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.Evidence.Logged;

/// <summary>
/// The studio of the worked example with its log: twelve loads of twelve, and what became of the 126 good pieces. Day 0 is 2027-01-01, and what is
/// asked is asked of day 365.
/// </summary>
internal static class RiverDropLog
{
    public const string Profile = """
        {"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"household":[{"name":"Living","amount":90000,"per":"year"}]}
        """;

    public const string Design = """
        {"name":"River drop pendant","profile":"main","soldShare":1,"materials":[{"name":"Glass","amount":6}],"making":{"steps":
        [{"name":"torch","handsOnMinutes":30},{"name":"anneal","handsOnMinutes":8,"mayBeHurried":false,"goodShare":0.95}]}}
        """;

    public const string Web = """
        {"sells":"retail","currency":"USD","costPerPiece":0.8,"shipping":{"charged":5,"cost":6.2},"fees":[{"rate":0.029,"fixed":0.3,"of":"paid"}]}
        """;

    public const string Heading = "ref,on,what,sku,channel,pieces,price,listed,piece\n";

    public static readonly string LastDay = On(365);

    private static readonly int[] s_minutes = [792, 706, 668, 655, 622, 640, 610, 598, 607, 585, 590, 571];

    private static readonly int[] s_good = [11, 12, 9, 11, 12, 6, 11, 10, 11, 12, 10, 11];

    /// <summary>The bench book, as a sheet.</summary>
    public static string Bench => "ref,on,sku,started,good,minutes\n" + string.Concat(s_minutes.Zip(s_good).Select((load, i) =>
        FormattableString.Invariant($"{i + 1},{On(30 * i)},RB-014,12,{load.Second},{load.First}\n")));

    /// <summary>The movements, as a sheet.</summary>
    public static string Movements => Heading + string.Concat(Lines);

    /// <summary>
    /// Load j was made on day 30j. Piece i: u = (37i mod 127)/127, sold at age ceil(-110 ln(1-u)) if that has been; but 10, 55, 90 are given at 60,
    /// and 20, 70 lost at 90. Each has its number, so each is as old as it is.
    /// </summary>
    public static IEnumerable<string> Lines
    {
        get
        {
            var piece = 0;
            foreach (var (load, good) in s_good.Index())
                for (var i = 0; i < good; i++)
                {
                    piece++;
                    yield return FormattableString.Invariant($"m{piece},{On(30 * load)},made,RB-014,,1,,,{piece}/126\n");
                    var share = 37 * piece % 127 / 127d;
                    var (age, what) = piece switch
                    {
                        10 or 55 or 90 => (60, "given"),
                        20 or 70 => (90, "lost"),
                        _ => ((int)double.Ceiling(-110 * double.Log(1 - share)), "sold"),
                    };
                    if (30 * load + age <= 365)
                        yield return FormattableString.Invariant($"g{piece},{On(30 * load + age)},{what},RB-014,")
                            + FormattableString.Invariant($"{(what == "sold" ? "web,1,52.00,52.00" : ",1,,")},{piece}/126\n");
                }
        }
    }

    public static string On(int day) => new DateOnly(2027, 1, 1).AddDays(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Stores the documents.</summary>
    public static async Task HasTheRiverDrop(this Studio studio)
    {
        await studio.Has("/v1/profiles/main", Profile);
        await studio.Has("/v1/designs/RB-014", Design);
        await studio.Has("/v1/channels/web", Web);
    }

    /// <summary>Stores the documents and the log.</summary>
    public static async Task<Studio> Logged()
    {
        var studio = new Studio();
        await Fill(studio);
        return studio;
    }

    /// <summary>The same in a studio that is there.</summary>
    public static async Task Fill(Studio studio)
    {
        await studio.HasTheRiverDrop();
        Assert.Equal("12 stored, 0 unchanged, 0 corrected, 0 withdrawn, 0 unplaced, 0 refused",
            (await studio.BenchSheet("source=bench-book", Bench)).Told());
        Assert.StartsWith("221 stored, ", (await studio.Sheet("source=book", Movements)).Told(), StringComparison.Ordinal); // 126 + 90 + 3 + 2
    }
}
