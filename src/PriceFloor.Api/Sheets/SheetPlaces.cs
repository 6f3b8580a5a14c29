using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sheets;

/// <summary>Where a sheet has which column.</summary>
public sealed class SheetPlaces
{
    private readonly IReadOnlyDictionary<string, int> _places;

    private SheetPlaces(IReadOnlyDictionary<string, int> places, string keyColumn) => (_places, Key) = (places, places[keyColumn]);

    /// <summary>The column with the key of the document.</summary>
    public int Key { get; }

    public int? Of(string column) => _places.TryGetValue(column, out var at) ? at : null;

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
        var (places, faults) = (new Dictionary<string, int>(), new List<Fault>());
        foreach (var (index, name) in names.Index())
            if (!known.Contains(name))
                faults.Add(Fault(name, InputCodes.UnknownColumn,
                    $"\"{name}\" is not a column of {about}; they are {string.Join(", ", known)}{other}."));
            else if (!places.TryAdd(name, index))
                faults.Add(Fault(name, InputCodes.DuplicateColumn, $"The sheet has more than one column \"{name}\"; delete the others."));
        if (!places.ContainsKey(keyColumn))
            faults.Add(Fault(keyColumn, InputCodes.MissingColumn,
                $"The sheet has no column \"{keyColumn}\" with the key that each row is about{other}."));
        return faults.Count > 0 ? faults : new SheetPlaces(places, keyColumn);
    }

    private static RequestFault Fault(string column, Code code, string detail) =>
        RequestFault.Invalid(new InputError { Parameter = column, Code = code, Detail = detail });
}
