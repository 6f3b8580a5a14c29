using System.Text.RegularExpressions;

namespace PriceFloor.Storage.Postgres;

/// <summary>The statements of the store are the same for every engine, but for what this one says in other words.</summary>
internal static partial class Dialect
{
    /// <summary>A list is one array, and every key begins with the studio.</summary>
    public static string Of(string sql) => ConflictAt().Replace(InList().Replace(sql, "= ANY (@${list})"), "ON CONFLICT (studio, ");

    [GeneratedRegex(@"\bIN @(?<list>\w+)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 5000)]
    private static partial Regex InList();

    [GeneratedRegex(@"\bON CONFLICT \((?!studio\b)", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex ConflictAt();
}
