using System.Text.RegularExpressions;

namespace PriceFloor.Storage.Postgres;

/// <summary>The statements of the store are the same for every engine, but for what this one says in other words.</summary>
internal static partial class Dialect
{
    /// <summary>
    /// A list is one array, and every key begins with the studio. What is joined by the position that is newest for each row is looked up for each:
    /// else all revisions of the studio are read, to be compared with those positions.
    /// </summary>
    public static string Of(string sql) => NewestOfEach().Replace(ConflictAt().Replace(InList().Replace(sql, "= ANY (@${list})"),
        "ON CONFLICT (studio, "), "CROSS JOIN LATERAL (SELECT p.* FROM revision p ${which}) r");

    [GeneratedRegex(@"\bIN @(?<list>\w+)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 5000)]
    private static partial Regex InList();

    [GeneratedRegex(@"\bJOIN revision r ON r\.position =\s+\(SELECT p\.position FROM revision p (?<which>[^()]+)\)", RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 5000)]
    private static partial Regex NewestOfEach();

    [GeneratedRegex(@"\bON CONFLICT \((?!studio\b)", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex ConflictAt();
}
