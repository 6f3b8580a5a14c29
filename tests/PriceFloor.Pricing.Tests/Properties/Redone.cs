using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>Workings redone line by line, each from the lines above it alone.</summary>
public static class Redone
{
    /// <summary>Each symbol with its value; a symbol stands for one thing.</summary>
    public static IReadOnlyDictionary<string, decimal> From(IEnumerable<Working> workings)
    {
        var known = new Dictionary<string, decimal>();
        foreach (var line in workings)
        {
            var redone = Formula.Value(line.Formula, known);
            Assert.True(decimal.Abs(redone - line.Value) <= 0.000000000001m * decimal.Max(1, decimal.Abs(line.Value)),
                $"{line.Symbol} = {line.Formula}: {redone}, but it says {line.Value}");
            Assert.NotEmpty(line.Label);
            known.Add(line.Symbol, line.Value);
        }

        return known;
    }
}
