using System.Globalization;
using System.Text;
using System.Text.Json;
using PriceFloor.Api.Tests.Conventions;
using Xunit;
using static PriceFloor.Api.Tests.Statements.SentStatements;

namespace PriceFloor.Api.Tests.Statements;

/// <summary>What the starter rules make of a year that nobody wrote rules for. All payees are invented.</summary>
public sealed class StarterRulesTests
{
    /// <summary>A line of a year: its text, its amount, and the months in which it comes.</summary>
    private sealed record Habit(string Text, decimal Amount, params int[] Months);

    private static readonly int[] s_each = [.. Enumerable.Range(1, 12)];

    private static readonly Habit[] s_britain =
    [
        new("STANDING ORDER WREN LANE LETTINGS RENT", -720, s_each), new("DD FENWATER BOROUGH COUNCIL TAX", -148, 1, 4, 5, 6, 7, 8, 9, 10, 11, 12),
        new("DD OAKMERE ENERGY BILL", -94, s_each), new("DD MARSHLAND WATER COMPANY", -31, s_each), new("DD HOLLOWAY BROADBAND", -29, s_each),
        new("DD PIPIT MOBILE PHONE", -14, s_each), new("CARD BRINDLEWOOD STORES", -62, s_each), new("CARD BRINDLEWOOD STORES", -58, s_each),
        new("CARD LARKFIELD SUPERMARKET", -71, s_each), new("CARD TAMSIN'S", -11, s_each), new("CARD QUILLET AND SON", -19, s_each),
        new("CARD HARLOW FUEL", -46, s_each), new("TINDER LANE UNITS WORKSHOP RENT", -310, s_each), new("DD GANNET TRADE INSURANCE", -24, s_each),
        new("CARD EMBERLY GLASS ROD", -135, s_each), new("CARD POST OFFICE COUNTER POSTAGE", -38, s_each), new("CARD FERNDALE", -23, s_each),
        new("MARKETPLACE PAYOUT", 1480, s_each),
        new("CARD TERMINAL TAKINGS", 690, 3, 5, 6, 7, 8, 9, 11, 12), new("HARBOUR CRAFT FAIR", -85, 5, 8, 11),
        new("CASH MACHINE MILL ROAD", -40, s_each), new("A ROWANTREE", -25, s_each), new("DD DUNLIN CAR INSURANCE", -410, 3),
        new("CARD HEATH GARDEN", -34, 4, 6, 9), new("CARD SWIFTLEY SHOES", -55, 2, 10), new("CARD MOTTLE & CO", -27, s_each),
    ];

    private static readonly Habit[] s_states =
    [
        new("ACH PINE HOLLOW APTS RENT", -1250, s_each), new("ACH TRI-CREEK ELECTRIC", -98, s_each), new("ACH DELLWOOD WATER BILL", -44, s_each),
        new("POS KESTREL FARM GROCERY", -88, s_each), new("POS KESTREL FARM GROCERY", -73, s_each), new("POS NUTHATCH MARKET", -41, s_each),
        new("POS CLEARBROOK GAS STATION", -38, s_each),
        new("POS CLEARBROOK GAS STATION", -36, s_each), new("ACH BLUESTEM HEALTH INSURANCE", -310, s_each),
        new("ACH VEERY WIRELESS PHONE", -45, s_each), new("ACH SANDPIPER INTERNET", -60, s_each), new("CHECK STUDIO RENT", -420, s_each),
        new("POS GLASSWAY FRIT AND ROD", -160, s_each), new("POS MAPLETON HARDWARE", -33, s_each), new("ACH JUNCO AUTO LOAN CAR LOAN", -215, s_each),
        new("ONLINE SHOP PAYOUT", 2150, s_each), new("POS VILLAGE COURIER PARCEL", -52, s_each), new("QUARTERLY ESTIMATED TAX", -480, 1, 4, 6, 9),
        new("POS TOWHEE", -18, s_each), new("POS BELLFLOWER 22", -24, s_each), new("ATM WITHDRAWAL MAIN ST", -60, s_each),
        new("POS DR VIREO DENTIST", -140, 4, 10), new("ACH LIABILITY INSURANCE", -380, 2), new("SPRING ART SHOW FEE", -150, 3, 9),
        new("PAYMENT TO R ASPEN", -35, s_each), new("POS TANAGER STREAMING", -12, s_each), new("WHOLESALE ORDER PAID", 640, 2, 4, 6, 8, 10),
    ];

    private static readonly Habit[] s_germany =
    [
        new("DAUERAUFTRAG WOHNUNGSBAU ERLENHOF WARMMIETE", -780, s_each), new("LASTSCHRIFT STADTWERKE BIRKENAU", -112, s_each),
        new("LASTSCHRIFT RUNDFUNKBEITRAG", -55, 1, 4, 7, 10), new("KARTENZAHLUNG KIEBITZ LEBENSMITTEL", -64, s_each),
        new("KARTENZAHLUNG KIEBITZ LEBENSMITTEL", -59, s_each),
        new("KARTENZAHLUNG AMSELHOF", -37, s_each), new("KARTENZAHLUNG BÄCKEREI ZEISIG", -14, s_each),
        new("LASTSCHRIFT LERCHE MOBILFUNK", -18, s_each),
        new("LASTSCHRIFT REIHER INTERNET", -35, s_each), new("LASTSCHRIFT KRANKENKASSE SÜDWALD", -390, s_each),
        new("DAUERAUFTRAG WERKSTATTMIETE", -260, s_each),
        new("ÜBERWEISUNG GLASSTÄBE HÜTTE ELSTER", -145, s_each), new("PAKET UND PORTO", -41, s_each),
        new("LASTSCHRIFT BETRIEBSHAFTPFLICHT", -210, 1), new("KONTOFÜHRUNG", -7, s_each), new("AUSZAHLUNG MARKTPLATZ", 1720, s_each),
        new("KARTENZAHLUNG TANKSTELLE OST", -48, s_each),
        new("STANDGEBÜHR HANDWERKERMARKT", -95, 5, 9, 12), new("GUTSCHRIFT GALERIE VERKAUF", 430, 3, 6, 9, 12),
        new("VORAUSZAHLUNG UMSATZSTEUER", -210, 2, 5, 8, 11), new("KARTENZAHLUNG STIEGLITZ", -22, s_each), new("H. EICHENLAUB", -30, s_each),
        new("GELDAUTOMAT MITTE", -50, s_each), new("KINDERGELD", 250, s_each),
        new("LASTSCHRIFT KFZ VERSICHERUNG", -440, 1), new("PIROL 4711", -17, s_each),
    ];

    private static readonly Habit[] s_france =
    [
        new("VIR LOYER LOGEMENT LES TILLEULS", -690, s_each),
        new("PRLV ÉLECTRICITÉ VALBRUNE", -76, s_each), new("PRLV EAU SYNDICAT DES SOURCES", -48, 3, 9),
        new("CB SUPERMARCHÉ LA MÉSANGE", -82, s_each), new("CB SUPERMARCHÉ LA MÉSANGE", -69, s_each), new("CB BOULANGERIE DU LAVOIR", -16, s_each),
        new("CB LE PINSON", -28, s_each), new("CB CHEZ ODILE", -21, s_each), new("PRLV MUTUELLE DES ALIZIERS", -85, s_each),
        new("PRLV FORFAIT MOBILE", -13, s_each), new("PRLV FIBRE LORIOT", -30, s_each), new("VIR LOYER ATELIER", -240, s_each),
        new("CB BAGUETTES DE VERRE ROUVRAY", -118, s_each), new("CB AFFRANCHISSEMENT COLIS", -36, s_each), new("PRLV URSSAF", -310, 1, 4, 7, 10),
        new("PRLV ASSURANCE ATELIER", -195, 2), new("FRAIS BANCAIRES", -8, s_each), new("VERSEMENT BOUTIQUE EN LIGNE", 1560, s_each),
        new("RECETTES MARCHÉ", 520, 4, 6, 7, 8, 12),
        new("EMPLACEMENT MARCHÉ DES POTIERS", -70, 4, 7, 12), new("CB CARBURANT RELAIS NORD", -52, s_each),
        new("PRLV ASSURANCE AUTO", -38, s_each), new("RETRAIT RUE HAUTE", -60, s_each),
        new("VIR M CORMIER", -45, s_each), new("CB FAUVETTE 12", -26, s_each),
        new("VIREMENT ALLOCATIONS FAMILIALES", 140, s_each),
    ];

    public static TheoryData<string> Countries => ["Britain", "States", "Germany", "France"];

    /// <summary>At least six lines of ten and eight of ten of the money have a place or a suggestion before the maker writes a rule.</summary>
    [Theory]
    [MemberData(nameof(Countries))]
    public async Task Most_of_a_year_has_a_place_before_anybody_writes_a_rule(string country)
    {
        var (habits, currency) = country switch
        {
            "Britain" => (s_britain, "GBP"),
            "States" => (s_states, "USD"),
            "Germany" => (s_germany, "EUR"),
            _ => (s_france, "EUR"),
        };
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main",
            await File.ReadAllTextAsync(Repository.File("src/PriceFloor.Api/ReadingRuleSets/starter-rules.json"), Studio.Cancellation));
        var answer = (await Send(studio, $"?currency={currency}", ("current", SheetOf(habits)))).Json;

        var open = answer.GetProperty("unplaced").EnumerateArray()
            .Where(group => group.GetProperty("suggested").ValueKind == JsonValueKind.Null).ToList();
        var openLines = open.Sum(group => group.GetProperty("count").GetInt32());
        var openMoney = open.Sum(group => group.GetProperty("total").GetDecimal());
        var lines = habits.Sum(habit => habit.Months.Length);
        var money = habits.Sum(habit => decimal.Abs(habit.Amount) * habit.Months.Length);
        Assert.Equal(lines, answer.GetProperty("accounted").GetProperty("read").GetProperty("lines").GetInt32());
        Assert.True(lines - openLines >= 0.6m * lines && money - openMoney >= 0.8m * money,
            $"{country}: {lines - openLines} of {lines} lines and {money - openMoney} of {money} have a place");
    }

    [Fact]
    public async Task General_words_go_where_a_maker_would_put_them()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/reading-rules/main",
            await File.ReadAllTextAsync(Repository.File("src/PriceFloor.Api/ReadingRuleSets/starter-rules.json"), Studio.Cancellation));
        var text = new StringBuilder("Date,Description,Amount\n");
        (string Text, decimal Amount, string Line)[] expected =
        [
            ("Workshop rent", -1, "business Bench rent"),
            ("Flat rent", -1, "household Home rent"), ("Werkstattmiete März", -1, "business Bench rent"),
            ("Warmmiete", -1, "household Home rent"), ("Loyer atelier", -1, "business Bench rent"), ("Loyer", -1, "household Home rent"),
            ("Product insurance", -1, "business Studio insurance"), ("Home insurance", -1, "household Insurance"),
            ("Assurance habitation", -1, "household Insurance"), ("Gas station 12", -1, "household Car and fares"),
            ("Gas bill", -1, "household Home energy and water"), ("Council tax", -1, "household Council tax"),
            ("Bargeldauszahlung", -1, "cash Cash"),
            ("Auszahlung Shop", 1, "sale Sale"), ("Salary", 1, "other-income Wages and pensions, after tax"),
            ("Gehalt", 1, "other-income Wages and pensions, after tax"), ("Wages Saturday help", -1, "business Wages"),
            ("Bankomat 12.03. 10:41", -1, "cash Cash"), ("Behebung Filiale Mitte", -1, "cash Cash"), ("Zahlung Bankomatkarte Amselhof", -1, ""),
            ("Kreditkarte Abrechnung", -1, "own-account Sale"), ("Standgebühr Frühlingsmarkt", -1, "business Stalls and shows"),
            ("Marktgebühr Stadtplatz", -1, "business Stalls and shows"), ("Zeisig Mobil", -1, "business Phone and internet"),
            ("Market pitch Saturday", -1, "business Stalls and shows"), ("Kontospesen", -1, "business Account fees"), ("Automobilclub", -1, ""),
            ("Kindergeld", 1, "other-income Child benefit"), ("Information evening", -1, ""), ("Installment shop", -1, ""), ("Shortbread", -1, ""),
        ];
        foreach (var (index, line) in expected.Index())
            text.Append(CultureInfo.InvariantCulture, $"2026-{index / 28 + 1:00}-{index % 28 + 1:00},{line.Text},{line.Amount}\n");
        var answer = (await Send(studio, "?currency=EUR&lines=true", ("current", text.ToString()))).Json;
        var rules = (await studio.Get("/v1/reading-rules/main")).Json.GetProperty("rules");

        Assert.Equal(expected.Select(line => $"{line.Text}: {line.Line}"), answer.GetProperty("transactions").EnumerateArray().Select((line, index) =>
            $"{expected[index].Text}: {(line.TryGetProperty("rule", out var rule) ? NameOf(rule, rules) : "")}"));
    }

    private static string NameOf(JsonElement pointer, JsonElement rules) =>
        NameOf(rules[int.Parse(pointer.GetString()!["#/rules/".Length..], CultureInfo.InvariantCulture)]);

    private static string NameOf(JsonElement rule) =>
        $"{rule.GetProperty("to").GetString()} {(rule.TryGetProperty("name", out var name) ? name.GetString() : "Sale")}";

    private static string SheetOf(IEnumerable<Habit> habits)
    {
        var text = new StringBuilder("Date,Description,Amount\n");
        foreach (var (index, habit) in habits.Index())
            foreach (var month in habit.Months)
                text.Append(CultureInfo.InvariantCulture, $"2026-{month:00}-{index % 28 + 1:00},{habit.Text},{habit.Amount}\n");
        return text.ToString();
    }
}
