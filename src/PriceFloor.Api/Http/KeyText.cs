using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace PriceFloor.Api.Http;

/// <summary>
/// The text of a key that we make: <c>pf_</c>, 8 letters and digits that name it, 40 that are secret (238 bits), 6 that check the rest. Secret
/// scanners find it by its shape, and a mistyped or cut key is distinguished from an unknown one without asking the store.
/// </summary>
public static partial class KeyText
{
    /// <summary>The pattern for secret scanners.</summary>
    public const string Pattern = "pf_[A-Za-z0-9]{54}";

    private const string Mark = "pf_";
    private const string Letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789";
    private const int NameLength = 8, SecretLength = 40, CheckLength = 6;

    public static string New()
    {
        var key = Mark + RandomNumberGenerator.GetString(Letters, NameLength + SecretLength);
        return key + CheckOf(key);
    }

    /// <summary>True if the text looks like a key of ours but a letter is wrong.</summary>
    public static bool IsMistyped(string key) => HasOurShape(key) && !key.EndsWith(CheckOf(key[..^CheckLength]), StringComparison.Ordinal);

    /// <summary>A text without the keys in it: text that a caller sends in a wrong place may come back in a problem.</summary>
    public static string Hide(string text) => HoldsKey(text) ? KeyPattern().Replace(text, Mark + "...") : text;

    /// <summary>True if the text has a key of ours, or enough of one.</summary>
    public static bool HoldsKey(string text) => text.Contains(Mark, StringComparison.Ordinal) && KeyPattern().IsMatch(text);

    [GeneratedRegex("pf_[A-Za-z0-9]{20,}", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex KeyPattern();

    private static bool HasOurShape(string key) =>
        key.Length == Mark.Length + NameLength + SecretLength + CheckLength && key.StartsWith(Mark, StringComparison.Ordinal)
        && key.Skip(Mark.Length).All(char.IsAsciiLetterOrDigit);

    /// <summary>The first bytes of the SHA-256, as letters and digits.</summary>
    private static string CheckOf(string text)
    {
        var number = BitConverter.ToUInt64(SHA256.HashData(Encoding.ASCII.GetBytes(text)), 0);
        return string.Create(CheckLength, number, (check, rest) =>
        {
            for (var i = 0; i < check.Length; i++, rest /= (ulong)Letters.Length)
                check[i] = Letters[(int)(rest % (ulong)Letters.Length)];
        });
    }
}
