namespace PriceFloor.Pricing.Documents;

/// <summary>How long each text of a list may be.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class EachTextAttribute(int least, int most) : Attribute
{
    public int Least { get; } = least;

    public int Most { get; } = most;
}
