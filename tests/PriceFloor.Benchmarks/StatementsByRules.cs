using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>A year of statements sorted by the starter rules, beside the same year by the 34 rules of a maker, in turn in the same process.</summary>
public static class StatementsByRules
{
    private const int Port = 5491, Months = 12, Warming = 6;

    /// <summary>What is paid in each month of the invented year: general words, and payees that no general word knows.</summary>
    private static readonly string[] s_habits =
    [
        "STANDING ORDER WREN LANE LETTINGS RENT", "DD FENWATER BOROUGH COUNCIL TAX", "DD OAKMERE ENERGY BILL", "DD MARSHLAND WATER COMPANY",
        "DD HOLLOWAY BROADBAND", "DD PIPIT MOBILE PHONE", "CARD BRINDLEWOOD STORES", "CARD LARKFIELD SUPERMARKET", "CARD TAMSIN CORNER",
        "CARD QUILLET AND SON", "CARD HARLOW FUEL", "TINDER LANE UNITS WORKSHOP RENT", "DD GANNET TRADE INSURANCE", "CARD EMBERLY GLASS ROD",
        "CARD COUNTER POSTAGE", "CARD FERNDALE", "MARKETPLACE PAYOUT", "CARD TERMINAL TAKINGS", "HARBOUR CRAFT FAIR", "CASH MACHINE MILL ROAD",
        "A ROWANTREE", "DD DUNLIN CAR INSURANCE", "CARD HEATH GARDEN", "CARD SWIFTLEY SHOES", "CARD MOTTLE AND COMPANY", "CARD ELSTER BAKERY",
        "CARD ZEISIG BOOKSHOP", "DD REIHER STREAMING", "CARD PIROL CAFE", "CARD STIEGLITZ PHARMACY",
    ];

    /// <summary>More than a maker types: rules that take some of the payees, and some that wait for others.</summary>
    private static readonly string[] s_own =
    [
        "wren lane", "fenwater", "oakmere", "marshland", "holloway", "pipit", "brindlewood", "larkfield", "tamsin", "quillet", "harlow fuel",
        "tinder lane", "gannet", "emberly", "postage", "ferndale", "payout", "takings", "craft fair", "cash machine", "rowantree", "dunlin",
        "heath garden", "swiftley", "mottle", "elster", "zeisig", "reiher", "pirol", "stieglitz", "kiln service", "torch spares", "guild", "eyewear",
    ];

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (aMonth, rounds) = Numbers.Of(args, 100, 21) is [var a, var b] ? (a, b) : default;
        await using var studio = await BenchStudio.StartAsync(await Published.Folder, Port);
        await studio.SendAsync(HttpMethod.Put, "/v1/reading-rules/starter", await studio.SendAsync(HttpMethod.Get, "/v1/starter-rules"));
        await studio.SendAsync(HttpMethod.Put, "/v1/reading-rules/own",
            $$"""{"rules":[{{string.Join(',', s_own.Select(word => $$"""{"textHas":"{{word}}","to":"household"}"""))}}]}""");
        var (year, what) = (YearOf(aMonth),
            string.Create(CultureInfo.InvariantCulture, $"a year of {aMonth * Months:#,0} statement lines by the starter rules"));
        for (var round = 0; round < Warming + rounds; round++)
        {
            var (own, starter) = (await AskAsync(studio, "own", year), await AskAsync(studio, "starter", year));
            if (round == 0)
                figures.Add($"{what}, the first of a process", " ms", "34 own rules", own, starter);
            else if (round >= Warming)
                figures.Add(what, " ms", "34 own rules", own, starter, "at most 2");
        }
    }

    /// <summary>A sheet; the number of a card's payment makes each text another one, as banks do.</summary>
    private static string YearOf(int aMonth)
    {
        var text = new StringBuilder("Date,Amount,Description\n");
        for (var line = 0; line < aMonth * Months; line++)
            text.Append(CultureInfo.InvariantCulture,
                $"2026-{line % Months + 1:00}-{line / Months % 28 + 1:00},-{line % 97 + 1}.50,{s_habits[line % s_habits.Length]} {10_000 + line}\n");
        return text.ToString();
    }

    private static async Task<double> AskAsync(BenchStudio studio, string rules, string year)
    {
        var clock = Stopwatch.StartNew();
        await studio.SendAsync(HttpMethod.Post, $"/v1/statements?currency=USD&rules={rules}", year, "text/csv");
        return clock.Elapsed.TotalMilliseconds;
    }
}
