using PriceFloor.Api.Changes;
using PriceFloor.Statements;

namespace PriceFloor.Api.Documents;

/// <summary>The kinds of stored documents.</summary>
public static class Kinds
{
    public const string Profile = "profile";
    public const string Design = "design";
    public const string Channel = "channel";
    public const string ListedPrice = "price";
    public const string ReadingRules = "reading-rules";
    public const string Quote = "quote";
    public const string QuoteOutcome = "quote-outcome";
    public const string QuoteActual = "quote-actual";
    public const string Scenario = "scenario";
    public const string StatementLayout = "statement-layout";
    public const string Plan = "plan";

    /// <summary>In the store of a host.</summary>
    public const string Studio = "studio";

    /// <summary>Not a kind of document: a design's aliases are references of this kind, so no two designs share one.</summary>
    public const string Alias = "alias";

    /// <summary>Not a kind of document: a listed price refers so to the name that it is for, and the name cannot leave its design.</summary>
    public const string ListedName = "listed-name";

    public static IReadOnlyList<Kind> All { get; } =
    [
        new(Profile, text => StoredText<CostProfile>.Read(text).Fault),
        new(Design, text => StoredText<Design>.Read(text).Fault, ListedPrice),
        new(Channel, text => StoredText<Channel>.Read(text).Fault),
        new(ListedPrice, text => StoredText<ListedPrice>.Read(text).Fault),
        new(ReadingRules, text => StoredText<ReadingRules>.Read(text).Fault),
        new(Quote, QuoteText.FaultIn, QuoteOutcome, QuoteActual) { IsForgottenWhole = true },
        new(QuoteOutcome, text => StoredText<QuoteOutcome>.Read(text).Fault),
        new(QuoteActual, text => StoredText<QuoteActual>.Read(text).Fault),
        new(Scenario, text => StoredText<Scenario>.Read(text).Fault),
        new(StatementLayout, text => StoredText<StatementLayout>.Read(text).Fault),
        new(Plan, text => StoredText<Plan>.Read(text).Fault),
        new(Studio, text => StoredText<HostedStudio>.Read(text).Fault),
    ];

    /// <summary>The kind of that name; null if there is none.</summary>
    public static Kind? Find(string name) => All.FirstOrDefault(kind => kind.Name == name);
}
