using PriceFloor.Api.AccessKeys;
using PriceFloor.Api.Audit;
using PriceFloor.Api.Backups;
using PriceFloor.Api.BreakEvens;
using PriceFloor.Api.DesignBudgets;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.FirstContact;
using PriceFloor.Api.FloorChanges;
using PriceFloor.Api.FloorHistories;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.HealthChecks;
using PriceFloor.Api.Http;
using PriceFloor.Api.Markups;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Api.PriceChecks.Batches;
using PriceFloor.Api.PriceLists;
using PriceFloor.Api.PriceParts;
using PriceFloor.Api.Profiles;
using PriceFloor.Api.QuickFloors;
using PriceFloor.Api.Remedies;
using PriceFloor.Api.Statements;
using PriceFloor.Api.YearPlans;
using PriceFloor.Statements;

namespace PriceFloor.Api.OpenApi;

/// <summary>How a kind of document is spoken of.</summary>
public sealed record Noun(string One, string Many, string Id, string Tag, Type Type, string Example, string StoredExample)
{
    /// <summary>The main cases of storing one; none where its example is the only one.</summary>
    public IReadOnlyList<MainCase> Cases { get; init; } = [];
}

public static class Nouns
{
    public static readonly Noun Profile = new("cost profile", "cost profiles", "Profile", "Profiles", typeof(CostProfile), Examples.Profile, Examples.StoredProfile) { Cases = DocumentCases.Profiles };
    public static readonly Noun Design = new("design", "designs", "Design", "Designs", typeof(Design), Examples.Design, Examples.StoredDesign) { Cases = DocumentCases.Designs };
    public static readonly Noun Channel = new("channel", "channels", "Channel", "Channels", typeof(Channel), Examples.Channel, Examples.StoredChannel) { Cases = DocumentCases.Channels };
    public static readonly Noun ListedPrice = new("listed price", "listed prices of a design", "ListedPrice", "Listed prices", typeof(ListedPrice), Examples.ListedPrice, Examples.StoredListedPrice);
    public static readonly Noun ReadingRules = new("set of reading rules", "sets of reading rules", "ReadingRules", "Statements", typeof(ReadingRules), Examples.ReadingRules, Examples.StoredReadingRules);
}

/// <summary>Every operation of the OpenAPI document.</summary>
public static class Operations
{
    public static readonly IReadOnlyDictionary<string, string> Tags = new Dictionary<string, string>
    {
        ["Profiles"] = "Cost profiles: one studio year each, and what it must bring in.",
        ["Designs"] = "Designs: how one piece is made, and the lowest price that carries it.",
        ["Channels"] = "Channels: ways of selling and everything they take.",
        ["Listed prices"] = "What a shop asks for a design on a channel today.",
        ["Prices"] = "Floor prices and price checks.",
        ["Questions"] = "The questions that follow a floor: how many must sell, what a shop will ask.",
        ["Statements"] = "From a year of bank statements to a cost profile; nothing of them is kept.",
        ["Keys"] = "Keys that open the service, and who changed what with them.",
        ["Backups"] = "Copies of the whole store.",
        ["Health"] = "Whether the service runs.",
        ["First contact"] = "What this is and where to read on.",
    };

    public static readonly Operation Requirement = new("getRequirement", "Profiles", "What the year must bring in",
        "What sales must bring in over the year, what bench time must recover of it, a week, a day and an hour, and the tax on the way. Computed with your own tables: not tax or legal advice. Scope: read.")
    { Answer = typeof(RequirementAnswer), AnswerExample = Examples.Requirement, Problems = [ProblemTypes.CannotCompute] };

    public static readonly Operation FloorPrice = new("getFloorPrice", "Prices", "The lowest price of a design",
        "What one sold piece must bring in, and the floor and target price on every stored channel. The floor holds only if piecesPerYear are made and sold. Scope: read.")
    { Answer = typeof(FloorPriceAnswer), Cases = QuestionCases.FloorPrice, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute] };

    public static readonly Operation PriceParts = new("getPriceParts", "Prices", "Where each unit of a price goes",
        "What the buyer pays for a piece, in parts that add up to it: sales tax, what the channel takes, materials, the design's bench time split into expenses, tax and household, and what is above the floor or short of it. As image/svg+xml a bar for each channel. Scope: read.")
    { Answer = typeof(PricePartsAnswer), Cases = QuestionCases.PriceParts, OtherAnswers = [Examples.Drawing], Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute] };

    public static readonly Operation FloorHistory = new("getFloorHistory", "Prices", "A design's floors over time",
        "Floor, target and listed price of a design on a channel at each moment at which one of them moved, calculated from the revisions as they stood then, with the documents that moved it. As image/svg+xml three lines over time. Scope: read.")
    { Answer = typeof(FloorHistoryAnswer), AnswerExample = Examples.FloorHistory, OtherAnswers = [Examples.Drawing], Problems = [ProblemTypes.UnknownReference] };

    public static readonly Operation WhatIf = new("computeFloorPrice", "Prices", "What if: a floor from inline documents",
        "The same answer for a profile, a design and channels that come with the request or are named by key. Nothing is stored. Scope: read.")
    { Answer = typeof(FloorPriceAnswer), Cases = QuestionCases.WhatIf, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute] };

    public static readonly Operation PriceCheck = new("checkPrice", "Prices", "Does a price carry its part of the year?",
        "The verdict on a price. Scope verdict: the word and carriesItsShare; check: also floor and target price; read: also what reveals costs.")
    { Answer = typeof(PriceCheckAnswer), Cases = QuestionCases.PriceCheck, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute] };

    public static readonly Operation PriceCheckByQuery = PriceCheck with { Id = "checkPriceByQuery", Cases = [], AnswerExample = Examples.PriceCheck, Summary = "Does a price carry its part of the year? (by query)" };

    public static readonly Operation PriceCheckBatch = new("checkPrices", "Prices", "Many price checks at once",
        "A JSON array (at most 1000), or NDJSON or CSV without limit; answered in the same format or as Accept says, in order, while it still comes in. A line with a fault is answered in its place by a problem that names line and column. A sheet comes back with its own columns untouched and verdict, floorPrice, targetPrice and problem beside them. All answers come from the documents of one moment. Scopes as for a single check. Scope: verdict.")
    {
        Answer = typeof(PriceCheckBatchAnswer),
        AnswerExample = Examples.BatchAnswer,
        Bodies = [new(Format.Json, typeof(PriceCheckRequest[]), Examples.Batch), new(Format.Ndjson, null, Examples.BatchLines), new(Format.Csv, null, Examples.BatchSheet)],
        OtherAnswers = [new(Format.Ndjson, null, Examples.BatchLinesAnswer), new(Format.Csv, null, Examples.BatchSheetAnswer)],
        Problems = [ProblemTypes.UnknownReference],
    };

    public static readonly Operation PriceList = new("getPriceList", "Prices", "Every design with its prices",
        "Floor, target, listed price and verdict of every design in order of key, on one channel or on all; whole, or with limit a page at a time. The ETag changes only when the list does, so a shop that polls gets 304 until something moved. As text/html a page to print, as image/svg+xml (with a channel) a picture. Reveals no costs. Scope: check.")
    { Answer = typeof(PriceListAnswer), AnswerExample = Examples.PriceList, OtherAnswers = [new(Format.Csv, null, Examples.PriceListSheet), new(Format.Html, null, Examples.PricePage), Examples.Drawing], HasTag = true, Good = new Dictionary<int, string> { [200] = "The list.", [304] = "The caller has this list already." }, Problems = [ProblemTypes.UnknownReference] };

    public static readonly Operation FloorChanges = new("getFloorChanges", "Prices", "Which floors moved",
        "Each design and channel whose floor or target price moved since a time or since the last answer, old and new, whether the listed price still carries its share, and (with read) the documents and fields that moved it. With limit an answer is cut, and next goes on with it. Who follows next loses nothing and gets nothing twice; after a restored backup or a forgotten document it is refused (unknown-cursor), and the follower begins anew without since. Scope: check.")
    { Answer = typeof(FloorChangesAnswer), AnswerExample = Examples.FloorChanges };

    public static readonly Operation BreakEven = new("getBreakEven", "Questions", "How many must sell",
        "The pieces of one design at one price (the listed one where none is given) that carry the whole year, and whether the year has the hours; as image/svg+xml a chart. Scope: read.")
    { Answer = typeof(BreakEvenAnswer), Cases = QuestionCases.BreakEven, OtherAnswers = [Examples.Drawing], Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute] };

    public static readonly Operation BreakEvenOfMix = new("computeBreakEven", "Questions", "How many of each must sell",
        "The pieces of each line of a mix, sold in the given proportions, that carry the year and a wanted surplus. Scope: read.")
    { Answer = typeof(MixBreakEvenAnswer), Cases = QuestionCases.BreakEvenOfMix, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute] };

    public static readonly Operation Remedies = new("getRemedies", "Questions", "What would fix a price",
        "Each single change that lets a price carry its part of the year, with its figure before and after, or the reason why it cannot; and one proposal that spreads the gap. Time that safety depends on is never offered; weeks over 48 hours are flagged, never advised. Scope: read.")
    { Answer = typeof(RemediesAnswer), Cases = QuestionCases.Remedies, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute] };

    public static readonly Operation DesignBudget = new("computeDesignBudget", "Questions", "What a new piece may take",
        "For a piece not yet designed and the price that the market pays: the bench minutes it may take with these materials, or the materials it may use with these minutes, on the channel and on every other. Both are a sold piece: of a finished one multiply by soldShare. Scope: read.")
    { Answer = typeof(DesignBudgetAnswer), Cases = QuestionCases.DesignBudget, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute] };

    public static readonly Operation QuickFloor = new("computeQuickFloor", "Questions", "A first floor from eight numbers",
        "Floor, retail and take-home for the maker who has only eight numbers, and the full documents that they stand for, ready to be stored. Not tax or legal advice. Scope: read.")
    { Answer = typeof(QuickFloorAnswer), RequestExample = Examples.QuickFloor, AnswerExample = Examples.QuickFloorAnswer, Problems = [ProblemTypes.CannotCompute] };

    public static readonly Operation YearPlan = new("computeYearPlan", "Questions", "Does a year of these pieces close?",
        "Whether so many pieces of each design carry the year, by how much, the hours and loads they take, the order in which bench time should be given out, materials used beside materials bought, and each line's verdict. Scope: read.")
    { Answer = typeof(YearPlanAnswer), Cases = QuestionCases.YearPlan, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute] };

    public static readonly Operation BestPlan = new("computeBestPlan", "Questions", "What should the year be made of?",
        "Whole pieces of each line between its minimum and what the market takes, within the bench hours less those kept back and within every limited thing: the largest surplus, or the fewest hours that still close the year. Exact; each answer is checked against its limits and says which of them bind and what one more hour or load would be worth. Scope: read.")
    { Answer = typeof(YearPlanAnswer), Cases = QuestionCases.BestPlan, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute] };

    public static readonly Operation Markups = new("computeMarkups", "Questions", "Markup, margin, chains and discounts",
        "Any two of cost, price, markup, margin and profit give the rest; a chain leads from maker to buyer or back; a series of discounts has one equivalent. Scope: read.")
    { Answer = typeof(MarkupAnswer), Cases = QuestionCases.Markups, Problems = [ProblemTypes.CannotCompute] };

    public static readonly Operation Statements = new("draftProfileFromStatements", "Statements", "Draft a cost profile from statements",
        "One or more files as multipart/form-data (each field's name is what its account is called where the file does not say), or one file as the body: CSV with named columns, OFX 1 or 2, ISO 20022 camt.053, recognised by content. Sorted by the reading rules into a draft that can be stored as it is. Every line is counted once: placed, unplaced, paired, duplicate or left out. Nothing of the files is stored or logged. Not tax advice. Scope: write; rules and against name what is stored and need read too.")
    {
        Answer = typeof(StatementAnswer),
        Cases = DocumentCases.Statements,
        Bodies = [new(Format.Csv, null), new(Format.Files, null), new(Format.Ofx, null), new(Format.Xml, null)],
        BodyWords = "The files: a form with a field for each, or one of them as the whole body. Which format it is, the content says.",
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static readonly Operation DesignBatch = new("putDesigns", "Designs", "Store many designs, all or nothing",
        "A JSON array, NDJSON or CSV of designs, each with its key as GET gives it: all are stored together, or none and every fault is told with its line. A sheet has the columns of GET /v1/designs as text/csv; a column that it lacks is left as it is stored. The answer says which were created, changed or unchanged. Scope: write.")
    {
        Answer = typeof(WriteBatchAnswer),
        Cases = DocumentCases.DesignBatches,
        Bodies = [new(Format.Json, typeof(Design[])), new(Format.Ndjson, null), new(Format.Csv, null)],
        Problems = [ProblemTypes.InUse, ProblemTypes.UnknownReference],
    };

    public static readonly Operation ListingBatch = new("putListedPrices", "Listed prices", "Store what a shop lists today, all or nothing",
        "The same lines and sheets that a batch of price checks takes, stored as listed prices: all together, or none and every fault is told with its line. Aliases lead to their designs. Scope: prices.")
    {
        Answer = typeof(WriteBatchAnswer),
        Cases = DocumentCases.ListingBatches,
        Bodies = [new(Format.Json, typeof(PriceCheckRequest[])), new(Format.Ndjson, null), new(Format.Csv, null)],
        Problems = [ProblemTypes.CurrencyMismatch],
    };

    public static readonly Operation ListOfDesigns = List(Nouns.Design) with
    {
        Description = "The designs in order of key, a page at a time; as NDJSON or CSV all of them, for an export that can come back through POST /v1/designs/batch. Scope: read.",
        OtherAnswers = [new(Format.Ndjson, null, Examples.DesignLines), new(Format.Csv, null, Examples.DesignSheet)],
    };

    public static readonly Operation MakeKey = new("createKey", "Keys", "Make a key", "The key itself is in this answer and nowhere else. With profiles it sees only those cost profiles, the designs that count on them and their listed prices. Scope: admin.")
    { Answer = typeof(KeyAnswer), Good = new Dictionary<int, string> { [201] = "The key, shown this once." }, Cases = DocumentCases.Keys, Problems = [ProblemTypes.InUse] };

    public static readonly Operation ListKeys = new("listKeys", "Keys", "The keys", "Their names, scopes and when they were last used, never the keys themselves. Scope: admin.")
    { Answer = typeof(KeyPage), AnswerExample = Examples.KeyPage };

    public static readonly Operation GetKey = new("getKey", "Keys", "A key", "Its name, scopes and when it was last used, never the key itself. Scope: admin.")
    { Answer = typeof(KeyAnswer), AnswerExample = Examples.ListedKey };

    public static readonly Operation RotateKey = new("rotateKey", "Keys", "Give a key another secret",
        "The same name, scopes, profiles and expiry with a new secret, shown in this answer and nowhere else. The present secret goes on for overlapHours, so that callers can change over; one that an earlier rotation left goes on no longer. Scope: admin.")
    { Answer = typeof(KeyAnswer), Good = new Dictionary<int, string> { [201] = "The new key, shown this once." }, AnswerExample = Examples.RotatedKey };

    public static readonly Operation DeleteKey = new("deleteKey", "Keys", "Delete a key", "From now on it opens nothing. The last key with the scope admin that does not expire stays. Scope: admin.")
    { Good = new Dictionary<int, string> { [204] = "Deleted." }, Problems = [ProblemTypes.InUse] };

    public static readonly Operation MakeBackup = new("createBackup", "Backups", "Make a backup",
        "Copies the whole store, as it stands at one moment, into backups in the data folder, while writes go on. The file is checked before it has its name. Scope: admin.")
    { Answer = typeof(BackupAnswer), Good = new Dictionary<int, string> { [201] = "The backup is on the disk." }, AnswerExample = Examples.Backup };

    public static readonly Operation Audit = new("listAudit", "Keys", "Who changed what",
        "Every change of a document and of a key, and every backup, restore and forgotten document, the newest first: when, by the key of which name or by what else, and to what. Never what stands in it. Scope: admin.")
    { Answer = typeof(AuditPage), Cases = QuestionCases.Audit };

    public static readonly Operation Welcome = new("getWelcome", "First contact", "What this is and where to read on", "Name, version and the addresses to begin with; a browser gets the same as a page. Needs no key.")
    { Answer = typeof(WelcomeAnswer), AnswerExample = Examples.Welcome, OtherAnswers = [new(Format.Html, null, Examples.WelcomePage)] };

    public static readonly Operation Version = new("getVersion", "Health", "What runs here",
        "The program's version and commit, the runtime, the schema of the store and the version of the contract. Scope: any key.")
    { Answer = typeof(FirstContact.VersionAnswer), AnswerExample = Examples.Version };

    public static readonly Operation Live = new("getLive", "Health", "Is the process there?", "Needs no key.")
    { Answer = typeof(HealthAnswer), AnswerExample = """{"status":"live"}""" };

    public static readonly Operation Ready = new("getReady", "Health", "Can it answer?", "The store can be read. Needs no key.")
    { Answer = typeof(HealthAnswer), AnswerExample = """{"status":"ready"}""" };

    public static Operation List(Noun noun) => new($"list{noun.Id.TrimEnd('s')}s", noun.Tag, $"The {noun.Many}", $"The {noun.Many} in order of key, a page at a time. Scope: read.")
    { Answer = noun.Type, IsPage = true, AnswerExample = $$"""{"items":[{{noun.StoredExample}}],"next":null}""" };

    public static Operation Get(Noun noun) => new($"get{noun.Id}", noun.Tag, $"A {noun.One}", $"The {noun.One} with its defaults filled in. The ETag is its revision. Scope: read.")
    { Answer = noun.Type, HasRevision = true, AnswerExample = noun.StoredExample, Good = new Dictionary<int, string> { [200] = "The document.", [304] = "The caller has this revision already." } };

    public static Operation Put(Noun noun) => new($"put{noun.Id}", noun.Tag, $"Store a {noun.One}",
        $"Creates the {noun.One} or appends a revision to it; the same content again changes nothing. What GET gave can be put back: key, revision and savedAt are ignored. Scope: {(noun.Type == typeof(ListedPrice) ? "prices" : "write")}.")
    {
        Answer = noun.Type,
        HasRevision = true,
        HasLocation = true,
        RequestExample = noun.Example,
        AnswerExample = noun.StoredExample,
        Cases = noun.Cases,
        Good = new Dictionary<int, string> { [200] = "Stored, or the same as before.", [201] = "Created." },
        Problems = [ProblemTypes.InUse, ProblemTypes.StaleRevision, ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch],
    };

    public static Operation Delete(Noun noun) => new($"delete{noun.Id}", noun.Tag, $"Delete a {noun.One}",
        $"Hides the {noun.One} and keeps its history; a PUT brings it back. Scope: {(noun.Type == typeof(ListedPrice) ? "prices" : "write")}.")
    { Good = new Dictionary<int, string> { [204] = "Deleted." }, Problems = [ProblemTypes.InUse, ProblemTypes.StaleRevision] };

    public static Operation Revisions(Noun noun) => new($"list{noun.Id}Revisions", noun.Tag, $"The history of a {noun.One}",
        "Every revision in order, also after a delete; a delete is a revision with deleted true. Scope: read.")
    { Answer = noun.Type, TellsDeletions = true, IsPage = true, AnswerExample = $$"""{"items":[{{noun.StoredExample}}],"next":null}""" };

    public static Operation Revision(Noun noun) => new($"get{noun.Id}Revision", noun.Tag, $"One revision of a {noun.One}", "The document as that revision had it; it never changes. Scope: read.")
    { Answer = noun.Type, TellsDeletions = true, HasRevision = true, AnswerExample = noun.StoredExample, Good = new Dictionary<int, string> { [200] = "The document.", [304] = "The caller has this revision already." } };
}
