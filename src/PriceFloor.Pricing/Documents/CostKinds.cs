namespace PriceFloor.Pricing.Documents;

/// <summary>What each kind of cost means, and what people call it.</summary>
public static class CostKinds
{
    private static readonly Dictionary<string, CostKind> s_callings = new(StringComparer.OrdinalIgnoreCase)
    {
        ["equipment"] = CostKind.Depreciation,
        ["machine"] = CostKind.Depreciation,
        ["machines"] = CostKind.Depreciation,
        ["machinery"] = CostKind.Depreciation,
        ["kiln"] = CostKind.Depreciation,
        ["torch"] = CostKind.Depreciation,
        ["glass"] = CostKind.Materials,
        ["rod"] = CostKind.Materials,
        ["electricity"] = CostKind.Utilities,
        ["power"] = CostKind.Utilities,
        ["gas"] = CostKind.Utilities,
        ["phone"] = CostKind.Utilities,
        ["postage"] = CostKind.Shipping,
        ["boxes"] = CostKind.Packaging,
        ["fees"] = CostKind.CommissionsAndFees,
        ["fairs"] = CostKind.ShowsAndStalls,
        ["stalls"] = CostKind.ShowsAndStalls,
        ["loan"] = CostKind.InterestAndLoans,
        ["accountant"] = CostKind.ProfessionalServices,
        ["tools"] = CostKind.Supplies,
        ["wear of machines"] = CostKind.Depreciation,
        ["room at home"] = CostKind.HomeWorkspace,
        ["hired work"] = CostKind.ContractLabour,
        ["help"] = CostKind.WagesAndBenefits,
        ["freelancer"] = CostKind.ContractLabour,
    };

    /// <summary>One line for each kind.</summary>
    public static IReadOnlyDictionary<CostKind, string> Meanings { get; } = new Dictionary<CostKind, string>
    {
        [CostKind.Advertising] = "Advertisements, cards, photographs for the shop.",
        [CostKind.CarAndTravel] = "Fuel, the studio's share of the car, trains, nights away.",
        [CostKind.CommissionsAndFees] = "What marketplaces, payment services and galleries keep of sales.",
        [CostKind.ContractLabour] = "Work bought from people who send an invoice, such as a photographer by the day.",
        [CostKind.Depreciation] = "What a kiln, a torch or another machine loses in value each year. List the machine in the sheet `equipment`, "
            + "and the service calculates it.",
        [CostKind.WagesAndBenefits] = "Pay of people whom the studio employs, with what comes on top of it.",
        [CostKind.Insurance] = "Liability, stock, the studio and what is in it.",
        [CostKind.InterestAndLoans] = "Interest, and what is paid back of a loan (that part with `deductible` false).",
        [CostKind.ProfessionalServices] = "Accountant, lawyer, adviser.",
        [CostKind.Office] = "Paper, ink, stamps for letters, small things for the desk.",
        [CostKind.Rent] = "Rent of the studio, the bench or a shelf.",
        [CostKind.Repairs] = "Repair and servicing of torch, kiln and tools.",
        [CostKind.Materials] = "What ends up in the pieces: glass, findings, metal.",
        [CostKind.Packaging] = "Boxes, tape, wrapping.",
        [CostKind.Supplies] = "What is used up at the bench and is in no piece: gloves, glasses, bead release, small tools.",
        [CostKind.TaxesAndLicences] = "Trade licences and local levies; not the tax on profit.",
        [CostKind.Utilities] = "Power, gas, water, telephone, internet.",
        [CostKind.HomeWorkspace] = "The studio's share of the home: a household line with a `businessShare`.",
        [CostKind.Training] = "Classes that you take, books, memberships.",
        [CostKind.BadDebtsAndRefunds] = "What was never paid, and money given back.",
        [CostKind.BankCharges] = "What the bank takes for its accounts and transfers.",
        [CostKind.Software] = "Programs, the web shop's subscription, storage.",
        [CostKind.ShowsAndStalls] = "Fairs and markets: the pitch, tables, lights.",
        [CostKind.Shipping] = "Postage and couriers for orders.",
        [CostKind.Other] = "What fits nowhere else.",
    };

    /// <summary>The kind that people call by another word, such as a kiln or equipment; null if the word is not known.</summary>
    /// <param name="word">The word.</param>
    public static CostKind? CalledBy(string word) => s_callings.TryGetValue(word, out var kind) ? kind : null;
}
