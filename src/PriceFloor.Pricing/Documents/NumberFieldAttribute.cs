using System.Globalization;

namespace PriceFloor.Pricing.Documents;

/// <summary>
/// What a number in a document may be: how many decimals it carries and between which bounds it lies. The reader refuses
/// what breaks it and the published schema states it, so the two cannot drift apart.
/// </summary>
[AttributeUsage(AttributeTargets.Property)]
public abstract class NumberFieldAttribute(int decimals, string minimum, string maximum) : Attribute
{
    /// <summary>Decimals that are kept; trailing zeros never count.</summary>
    public int Decimals { get; } = decimals;

    /// <summary>The lower bound, as exact decimal text.</summary>
    public string Minimum { get; init => (field, MinimumValue) = (value, Number(value)); } = minimum;

    /// <summary>The upper bound, as exact decimal text; the bound itself is allowed.</summary>
    public string Maximum { get; init => (field, MaximumValue) = (value, Number(value)); } = maximum;

    /// <summary>True if the lower bound itself is refused ("above zero").</summary>
    public bool Above { get; init; }

    public decimal MinimumValue { get; private init; } = Number(minimum);

    public decimal MaximumValue { get; private init; } = Number(maximum);

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}

/// <summary>An amount of money: 0 to 10^12, six decimals (a unit price may be finer than a coin).</summary>
public sealed class MoneyAttribute() : NumberFieldAttribute(6, "0", "1000000000000");

/// <summary>A price as it is listed: its currency's own decimals (which the reader of a single field cannot know: at most 4).</summary>
public sealed class PriceAttribute() : NumberFieldAttribute(4, "0", "1000000000000");

/// <summary>A share or rate as a fraction, 0 to 1, eight decimals: 0.024 is 2.4 %.</summary>
public sealed class ShareAttribute() : NumberFieldAttribute(8, "0", "1");

/// <summary>Minutes, hours, pieces, kilograms: 0 to 10^6, six decimals.</summary>
public sealed class QuantityAttribute() : NumberFieldAttribute(6, "0", "1000000");

/// <summary>Whole pieces: 0 to 10^6.</summary>
public sealed class PiecesAttribute() : NumberFieldAttribute(0, "0", "1000000");
