namespace PriceFloor.Pricing.Changes;

/// <summary>
/// Draws of several numbers, each spread evenly: of N draws, every Nth part of a number's probability has exactly one (a Latin hypercube: McKay,
/// Beckman and Conover 1979). A number's draws depend only on its name, the seed and N, so another number never moves them.
/// </summary>
public sealed class LatinHypercube
{
    /// <summary>The fewest draws.</summary>
    public const int Fewest = 1024;

    /// <summary>The usual draws.</summary>
    public const int Usual = 4096;

    /// <summary>The most draws.</summary>
    public const int Most = 16384;

    private readonly ushort[][] _places;

    private LatinHypercube(ushort[][] places, int draws) => (_places, Draws) = (places, draws);

    /// <summary>N.</summary>
    public int Draws { get; }

    /// <summary>Whether that many can be drawn: powers of two, so that every probability is an exact decimal.</summary>
    public static bool Allows(decimal draws) => draws is Fewest or Usual or Most;

    /// <summary>The draws of these numbers.</summary>
    /// <param name="names">The name of each number; two of one name have the same draws.</param>
    /// <param name="draws">How many: <see cref="Fewest"/>, <see cref="Usual"/> or <see cref="Most"/>.</param>
    /// <param name="seed">Another seed gives other draws.</param>
    public static LatinHypercube Of(IEnumerable<string> names, int draws, ulong seed = 0) =>
        Allows(draws) ? new([.. names.Select(name => PlacesOf(name, draws, seed))], draws)
        : throw new ArgumentOutOfRangeException(nameof(draws), draws, "Draws are 1024, 4096 or 16384.");

    /// <summary>0 to N-1 in the order in which a number of that name takes them: Fisher and Yates' shuffle.</summary>
    public static ushort[] PlacesOf(string name, int draws, ulong seed)
    {
        var random = new SplitMix64(Fnv1A64.Of(name) ^ seed);
        var places = new ushort[draws];
        for (var i = 0; i < draws; i++)
            places[i] = (ushort)i;
        for (var i = draws - 1; i > 0; i--)
        {
            var j = random.Below(i + 1);
            (places[i], places[j]) = (places[j], places[i]);
        }

        return places;
    }

    /// <summary>The probability at which a draw takes a number: the middle of its Nth part, exact.</summary>
    public decimal ProbabilityOf(int number, int draw) => (2m * _places[number][draw] + 1) / (2 * Draws);

    /// <summary>Which of so many equal groups of a number's draws, the lowest first, a draw belongs to.</summary>
    public int GroupOf(int number, int draw, int groups) => groups * _places[number][draw] / Draws;
}
