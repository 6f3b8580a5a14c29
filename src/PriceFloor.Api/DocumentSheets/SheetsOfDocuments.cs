using PriceFloor.Api.Http;
using PriceFloor.Statements;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>The sheets that there are.</summary>
internal static class SheetsOfDocuments
{
    public static IReadOnlyList<DocumentSheet> All { get; } =
    [
        new WholeSheet<CostProfile>("profiles", "profile", "profiles", SheetColumn.Of(typeof(CostProfile),
            ["expenses", "equipment", "household", "otherIncome", "helpers", "limits", "materials"]),
            (catalogue, key) => catalogue.Profile(key)?.Document),
        OfProfile<Expense>("expenses", "expenses", "#/expenses", year => year.Expenses, (year, lines) => year with { Expenses = lines },
            line => line.Name),
        OfProfile<Equipment>("equipment", "equipment", "#/equipment", year => year.Equipment, (year, lines) => year with { Equipment = lines },
            line => line.Name),
        OfProfile<HouseholdLine>("household", "household lines", "#/household", year => year.Household,
            (year, lines) => year with { Household = lines }, line => line.Name),
        OfProfile<OtherIncome>("other-income", "other income", "#/otherIncome", year => year.OtherIncome,
            (year, lines) => year with { OtherIncome = lines }, line => line.Name),
        OfProfile<Helper>("helpers", "helpers", "#/helpers", year => year.Helpers, (year, lines) => year with { Helpers = lines }, line => line.Name),
        OfProfile<ResourceLimit>("limits", "limits", "#/limits", year => year.Limits, (year, lines) => year with { Limits = lines },
            line => line.Name),
        OfProfile<StockMaterial>("stock", "stock materials", "#/materials", year => year.Materials, (year, lines) => year with { Materials = lines },
            line => line.Material, "material"),
        new WholeSheet<Design>("designs", "sku", "designs", SheetColumn.Of(typeof(Design), ["steps", "materials"], "making"),
            (catalogue, key) => catalogue.Design(key)?.Document),
        OfDesign<Step>("steps", "steps", "#/making/steps", design => design.Making.Steps ?? [],
            (design, lines) => design with { Making = BySteps(design.Making, lines) }, line => line.Name),
        OfDesign<MaterialLine>("materials", "materials of designs", "#/materials", design => design.Materials,
            (design, lines) => design with { Materials = lines }, line => $"{line.Material}\n{line.Name}", "material", "name"),
        new WholeSheet<Channel>("channels", "channel", "channels", SheetColumn.Of(typeof(Channel), ["fees"]),
            (catalogue, key) => catalogue.Channel(key)?.Document),
        new ListSheet<Channel, Fee>("fees", "channel", "fees", new ListPlace<Channel, Fee>("#/fees", channel => channel.Fees,
            (channel, lines) => channel with { Fees = lines }, (catalogue, key) => catalogue.Channel(key)?.Document, InputCodes.UnknownChannel,
            ["name"], line => line.Name)),
        new PricesSheet(),
        new ListSheet<ReadingRules, ReadingRule>("reading-rules", "rules", "reading rules", new ListPlace<ReadingRules, ReadingRule>("#/rules",
            rules => rules.Rules, (rules, lines) => rules with { Rules = lines }, (catalogue, key) => catalogue.ReadingRules(key)?.Document,
            InputCodes.UnknownReadingRules, ["textHas", "textMatches"], rule => $"{rule.TextHas}\n{rule.TextMatches}")
        {
            New = () => new ReadingRules { Rules = [] },
        }),
        new ListSheet<Plan, PlanLine>("plan-lines", "plan", "lines of plans", new ListPlace<Plan, PlanLine>("#/lines", plan => plan.Lines,
            (plan, lines) => plan with { Lines = lines }, (catalogue, key) => catalogue.Plan(key)?.Document, InputCodes.UnknownPlan,
            ["sku", "channel"], line => $"{line.Sku}\n{line.Channel}")),
    ];

    public static DocumentSheet? Find(string name) => All.FirstOrDefault(sheet => sheet.Name == name);

    private static ListSheet<CostProfile, T> OfProfile<T>(string name, string about, string pointer, Func<CostProfile, IReadOnlyList<T>> lines,
        Func<CostProfile, IReadOnlyList<T>, CostProfile> with, Func<T, string?> nameOf, params string[] nameColumns) where T : class =>
        new(name, "profile", about, new ListPlace<CostProfile, T>(pointer, lines, with,
            (catalogue, key) => catalogue.Profile(key)?.Document, InputCodes.UnknownProfile, NamesOr(nameColumns), nameOf));

    private static ListSheet<Design, T> OfDesign<T>(string name, string about, string pointer, Func<Design, IReadOnlyList<T>> lines,
        Func<Design, IReadOnlyList<T>, Design> with, Func<T, string?> nameOf, params string[] nameColumns) where T : class =>
        new(name, "sku", about, new ListPlace<Design, T>(pointer, lines, with,
            (catalogue, key) => catalogue.Design(key)?.Document, InputCodes.UnknownDesign, NamesOr(nameColumns), nameOf));

    /// <summary>Steps take the place of any other way to give the bench time, so that a design can begin with a figure of its own sheet.</summary>
    private static Making BySteps(Making making, IReadOnlyList<Step> steps) => steps.Count == 0 ? making with { Steps = null }
        : making with { Steps = steps, MinutesPerPiece = null, PiecesPerDay = null, PiecesPerBenchDay = null };

    private static string[] NamesOr(string[] columns) => columns.Length > 0 ? columns : ["name"];
}
