using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sheets;

/// <summary>Where a sheet has which column.</summary>
public sealed class SheetPlaces
{
    public const string NoHeading = "This column has no heading; give it one of the sheet, or delete what is in it.";

    private readonly IReadOnlyDictionary<string, int> _places;

    /// <summary>Columns without a heading: a spreadsheet keeps a column whose cells were emptied.</summary>
    private readonly IReadOnlyList<int> _unheaded;

    private SheetPlaces(IReadOnlyDictionary<string, int> places, IReadOnlyList<int> unheaded, string keyColumn) =>
        (_places, _unheaded, Key) = (places, unheaded, places[keyColumn]);

    /// <summary>The column with the key of the document.</summary>
    public int Key { get; }

    public int? Of(string column) => _places.TryGetValue(column, out var at) ? at : null;

    /// <summary>The fault of a cell in a column without a heading; null if all of these are empty.</summary>
    public InputError? Unheaded(SheetRow row)
    {
        foreach (var index in _unheaded)
            if (!row.Cell(index).IsEmpty)
            {
                var (line, column) = row.PlaceOf(index);
                return new InputError { Parameter = "", Code = InputCodes.UnknownColumn, Detail = NoHeading, Line = line, Column = column };
            }

        return null;
    }

    /// <summary>The columns, or every fault of the header.</summary>
    /// <param name="header">The first row.</param>
    /// <param name="keyColumn">The column that every sheet needs.</param>
    /// <param name="columns">The other columns that it may have.</param>
    /// <param name="about">What its rows are, in the plural.</param>
    /// <param name="dialect">The dialect in which it was read: another one is named where the columns look like it.</param>
    public static Outcome<SheetPlaces> Of(SheetHeader header, string keyColumn, IEnumerable<string> columns, string about, SheetDialect dialect) =>
        Of(header.Names, keyColumn, columns, about, header.OtherThan(dialect));

    /// <summary>The same of the names of the columns.</summary>
    public static Outcome<SheetPlaces> Of(IReadOnlyList<string> names, string keyColumn, IEnumerable<string> columns, string about,
        string other = "")
    {
        string[] known = [keyColumn, .. columns];
        var (places, unheaded, faults) = (new Dictionary<string, int>(), new List<int>(), new List<Fault>());
        foreach (var (index, sent) in names.Index())
        {
            var name = Known(sent, known);
            if (name.Length == 0)
                unheaded.Add(index);
            else if (!known.Contains(name))
                faults.Add(Fault(name, InputCodes.UnknownColumn,
                    $"\"{name}\" is not a column of {about}; they are {string.Join(", ", known)}{other}."));
            else if (!places.TryAdd(name, index))
                faults.Add(Fault(name, InputCodes.DuplicateColumn, $"The sheet has more than one column \"{name}\"; delete the others."));
        }

        if (!places.ContainsKey(keyColumn))
            faults.Add(Fault(keyColumn, InputCodes.MissingColumn,
                $"The sheet has no column \"{keyColumn}\" with the key that each row is about{other}."));
        return faults.Count > 0 ? faults : new SheetPlaces(places, unheaded, keyColumn);
    }

    /// <summary>A heading as the sheet calls it: a spreadsheet may begin a cell with a capital letter by itself.</summary>
    public static string Known(string name, IEnumerable<string> known) =>
        known.FirstOrDefault(one => string.Equals(one, name, StringComparison.OrdinalIgnoreCase)) ?? name;

    private static RequestFault Fault(string column, Code code, string detail) =>
        RequestFault.Invalid(new InputError { Parameter = column, Code = code, Detail = detail });
}
