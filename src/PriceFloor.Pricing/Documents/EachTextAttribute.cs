namespace PriceFloor.Pricing.Documents;

/// <summary>How long each text of a list may be.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class EachTextAttribute(int minimum, int maximum) : Attribute
{
    public int Minimum { get; } = minimum;

    public int Maximum { get; } = maximum;
}
