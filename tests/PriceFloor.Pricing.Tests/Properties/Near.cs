using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>
/// Two ways of computing the same may differ in the last digits of <c>decimal</c>. Rounding both and comparing would fail where the value
/// lies on the edge between two roundings; so the difference is looked at.
/// </summary>
public static class Near
{
    public static void Equal(decimal expected, decimal actual, decimal within = 0.0000001m) =>
        Assert.True(Math.Abs(expected - actual) <= within, $"expected {expected}, found {actual}");
}
