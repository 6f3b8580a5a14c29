using System.Diagnostics.CodeAnalysis;

namespace PriceFloor.Pricing.Numbers;

/// <summary>
/// A stable word that programs branch on, with what it means and what to do about it. The lists of codes are closed: only they make one, and
/// <c>docs/reference/codes.md</c> is written from them.
/// </summary>
/// <param name="Word">The word on the wire, such as <c>out-of-range</c>.</param>
/// <param name="Meaning">What it says.</param>
/// <param name="Cure">What whoever meets it can do.</param>
public sealed record Code(string Word, string Meaning, string Cure)
{
    /// <summary>The word.</summary>
    [return: NotNullIfNotNull(nameof(code))]
    public static implicit operator string?(Code? code) => code?.Word;

    /// <summary>The codes of a list, in its order.</summary>
    public static IReadOnlyList<Code> In(Type list) => [.. list.GetFields().Select(field => field.GetValue(null)).OfType<Code>()];

    /// <summary>The word.</summary>
    public override string ToString() => Word;
}
