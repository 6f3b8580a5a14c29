namespace PriceFloor.Evidence.Sheets;

/// <summary>What a column of a sheet of movements or bench entries may hold.</summary>
public enum LogField
{
    /// <summary>The day.</summary>
    On,

    /// <summary>The source's own id of the line.</summary>
    Ref,

    /// <summary>Made, sold, sent, ...</summary>
    What,

    /// <summary>Key or alias of the design.</summary>
    Sku,

    /// <summary>Key of the channel.</summary>
    Channel,

    /// <summary>How many; negative: came back.</summary>
    Pieces,

    /// <summary>Paid for one piece.</summary>
    Price,

    /// <summary>Paid for all pieces of the line.</summary>
    LineTotal,

    /// <summary>Asked for one piece that day.</summary>
    Listed,

    /// <summary>The order's id.</summary>
    Order,

    /// <summary>Taken off the order.</summary>
    Discount,

    /// <summary>Fees of the order.</summary>
    Fees,

    /// <summary>Shipping that the buyer of the order paid.</summary>
    ShippingCharged,

    /// <summary>What shipping the order cost.</summary>
    ShippingCost,

    /// <summary>Good or second.</summary>
    Grade,

    /// <summary>Name of a fair.</summary>
    Stall,

    /// <summary>Serial of the piece.</summary>
    Piece,

    /// <summary>Whether what came back can be sold again.</summary>
    Resale,

    /// <summary>The word of the shop for what became of the line.</summary>
    Status,

    /// <summary>ISO 4217 code.</summary>
    Currency,

    /// <summary>Name of the bench step.</summary>
    Step,

    /// <summary>Pieces begun.</summary>
    Started,

    /// <summary>Pieces that came out good.</summary>
    Good,

    /// <summary>Minutes for the whole batch.</summary>
    Minutes,
}

/// <summary>The names of <see cref="LogField"/>s.</summary>
public static class LogFields
{
    /// <summary>The fields of a movement.</summary>
    public static readonly IReadOnlyList<LogField> OfMovements = [.. Enum.GetValues<LogField>().Where(field => field < LogField.Step)];

    /// <summary>The fields of a bench entry.</summary>
    public static readonly IReadOnlyList<LogField> OfBench =
        [LogField.On, LogField.Ref, LogField.Sku, LogField.Step, LogField.Started, LogField.Good, LogField.Minutes, LogField.Status];

    /// <summary>The field as JSON and headings write it: <c>on</c>, <c>lineTotal</c>.</summary>
    public static string Name(this LogField field)
    {
        var name = field.ToString();
        return char.ToLowerInvariant(name[0]) + name[1..];
    }

    /// <summary>The parameter that names its column: <c>skuColumn</c>; for the day <c>dateColumn</c>.</summary>
    public static string Parameter(this LogField field) => field == LogField.On ? "dateColumn" : field.Name() + "Column";
}
