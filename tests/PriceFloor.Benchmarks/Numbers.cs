using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>The whole numbers behind a verb, such as seconds, rounds and processes.</summary>
public static class Numbers
{
    /// <summary>As many as there are, and for the rest what is usual.</summary>
    public static int[] Of(string[] args, params int[] usual) =>
        [.. usual.Select((number, i) => i < args.Length ? int.Parse(args[i], CultureInfo.InvariantCulture) : number)];
}
