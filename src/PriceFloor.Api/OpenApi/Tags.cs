namespace PriceFloor.Api.OpenApi;

/// <summary>The parts of the contract, in order.</summary>
public static class Tags
{
    public static readonly IReadOnlyDictionary<string, string> All = new Dictionary<string, string>
    {
        ["Profiles"] = "Cost profiles: one studio year each, and what it must bring in.",
        ["Designs"] = "Designs: how one piece is made, and the lowest price that carries it.",
        ["Channels"] = "Channels: ways of selling and everything they take.",
        ["Listed prices"] = "The prices that a shop lists for designs on channels today.",
        ["Prices"] = "Floor prices and price checks.",
        ["Scenarios"] = "Numbers that may be other than stored: scenarios, and what they move.",
        ["Questions"] = "The questions that follow a floor: how many must sell, what a shop will ask.",
        ["Sheets"] = "What is stored, to edit in a spreadsheet and send back.",
        ["Quotes"] = "Quotes for work made to order: drafts, what was issued and never changes, and what became of it.",
        ["Plans"] = "The year month by month: seasons, hours, cash and taxes. A plan never moves a floor.",
        ["Statements"] = "From a year of bank statements to a cost profile; no statement is kept.",
        ["Log"] = "What really happened: pieces made, sold and lost, and batches at the bench.",
        ["Evidence"] = "What sales and the bench say about the numbers that are stored.",
        ["Keys"] = "Keys of the service, and who changed what with them.",
        ["Backups"] = "Copies of the whole store.",
        ["Studios"] = "Many studios in one service, for whoever hosts them: made, limited, moved and forgotten, never read.",
        ["Health"] = "Whether the service runs.",
        ["First contact"] = "What this is and where to read on.",
    };
}
