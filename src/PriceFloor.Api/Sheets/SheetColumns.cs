using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// The positions of a sheet's columns. A name is matched exactly, else regardless of case; blanks around it do not count. If two columns match, that
/// is a fault: nobody can say which was meant.
/// </summary>
public sealed class SheetColumns
{
    /// <summary>The columns that an answer adds, or fills if the sheet has them.</summary>
    public static readonly IReadOnlyList<AnswerColumn> ForCheckers =
        [AnswerColumn.Verdict, AnswerColumn.FloorPrice, AnswerColumn.TargetPrice, AnswerColumn.Problem];

    /// <summary>The same for a caller who may learn what costs a price must carry.</summary>
    public static readonly IReadOnlyList<AnswerColumn> ForReaders =
        [AnswerColumn.Verdict, AnswerColumn.FloorPrice, AnswerColumn.TargetPrice, AnswerColumn.Problem, AnswerColumn.ShortBy];

    private const int MostNamesTold = 20;

    private readonly int[] _answers;

    private SheetColumns(int sku, int? channel, int price, IReadOnlyList<AnswerColumn> given, int[] answers) =>
        (Sku, Channel, Price, Answers, _answers) = (sku, channel, price, given, answers);

    public int Sku { get; }

    /// <summary>Null if every row is on one channel.</summary>
    public int? Channel { get; }

    public int Price { get; }

    /// <summary>The columns of the answer.</summary>
    public IReadOnlyList<AnswerColumn> Answers { get; }

    /// <summary>For each column of the answer the sheet's own that it replaces, or -1.</summary>
    internal ReadOnlySpan<int> AnswerPlaces => _answers;

    /// <summary>The columns, or every fault of the header: unprocessable, not unreadable.</summary>
    public static (SheetColumns? Found, IReadOnlyList<InputError> Faults) Of(SheetHeader header, ColumnNames names, SheetDialect dialect,
        bool mayRead = false)
    {
        var faults = new List<InputError>();
        var given = mayRead ? ForReaders : ForCheckers;
        int[] answers = [.. given.Select(NameOf).Select(name => Find(header, name, name, faults))];
        var sku = Needed(header, names.Sku, "skuColumn", answers, dialect, faults);
        int? channel = names.Channel is null ? null : Needed(header, names.Channel, "channelColumn", answers, dialect, faults);
        var price = Needed(header, names.Price, "priceColumn", answers, dialect, faults);
        return faults.Count == 0 ? (new SheetColumns(sku, channel, price, given, answers), faults) : (null, faults);
    }

    public static string NameOf(AnswerColumn column) => column switch
    {
        AnswerColumn.Verdict => "verdict",
        AnswerColumn.FloorPrice => "floorPrice",
        AnswerColumn.TargetPrice => "targetPrice",
        AnswerColumn.ShortBy => "shortBy",
        _ => "problem",
    };

    private static int Needed(SheetHeader header, string name, string parameter, int[] answers, SheetDialect dialect, List<InputError> faults)
    {
        var before = faults.Count;
        var found = Find(header, name, parameter, faults);
        if (found < 0 && faults.Count == before)
            faults.Add(Fault(parameter, InputCodes.MissingColumn,
                $"The sheet has no column \"{name.Trim()}\"; {Told(header)}. Name yours with {parameter}{header.OtherThan(dialect)}."));
        else if (found >= 0 && answers.Contains(found))
            faults.Add(Fault(parameter, InputCodes.AnswerColumn,
                $"The column \"{header.Names[found]}\" is one that the answer fills; rename the column to read."));
        return found;
    }

    private static int Find(SheetHeader header, string name, string parameter, List<InputError> faults)
    {
        foreach (var comparison in (ReadOnlySpan<StringComparison>)[StringComparison.Ordinal, StringComparison.OrdinalIgnoreCase])
        {
            var found = Enumerable.Range(0, header.Count).Where(index => header.Names[index].Equals(name.Trim(), comparison)).Take(2).ToList();
            if (found.Count == 1)
                return found[0];
            if (found.Count > 1)
            {
                faults.Add(Fault(parameter, InputCodes.DuplicateColumn,
                    $"The sheet has more than one column \"{header.Names[found[0]]}\"; {Told(header)}. Rename or delete the others."));
                return -1;
            }
        }

        return -1;
    }

    private static string Told(SheetHeader header)
    {
        var names = header.Names.Take(MostNamesTold)
            .Select(name => name.Length == 0 ? "(no name)" : $"\"{(name.Length <= 40 ? name : name[..40] + "...")}\"");
        return $"it has {string.Join(", ", names)}{(header.Count > MostNamesTold ? " and more" : "")}";
    }

    private static InputError Fault(string parameter, Code code, string detail) => new() { Parameter = parameter, Code = code, Detail = detail };
}

/// <summary>A column that the answer to a sheet of prices has.</summary>
public enum AnswerColumn { Verdict, FloorPrice, TargetPrice, ShortBy, Problem }

/// <summary>The caller's names of the columns to read. Without a channel column every row is on one channel, which the caller names.</summary>
public sealed record ColumnNames(string Sku = "sku", string? Channel = "channel", string Price = "price");
