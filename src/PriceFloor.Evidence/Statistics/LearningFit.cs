namespace PriceFloor.Evidence.Statistics;

/// <summary>
/// How the work got quicker with each piece: minutes that cannot be learned away, and a unit curve (Crawford) on the rest, y(n) = c0 + A * n^b.
/// All minutes have 2 decimals.
/// </summary>
public sealed class LearningFit
{
    private const int FewEntries = 6, LeastGrowth = 4, MostRounds = 100, OneByOne = 10_000, HiddenDecimals = 6;

    private readonly double _fixed, _first, _exponent, _exponentSpread, _spread;

    private LearningFit(double fixedMinutes, LineFit line, decimal level, int pieces)
    {
        (_fixed, Pieces, _exponent, _first) = (fixedMinutes, pieces, line.Slope, double.Exp(line.Intercept));
        var t = Quantiles.Student(Estimate.Ends(level).High, line.Count - 2);
        _exponentSpread = t * double.Sqrt(line.Variance / line.Sxx);
        var off = double.Log(pieces) - line.MeanX;
        _spread = t * double.Sqrt(line.Variance * (1 / line.Weight + off * off / line.Sxx));
    }

    /// <summary>N: pieces started so far.</summary>
    public int Pieces { get; }

    /// <summary>2^b: what each doubling leaves of the time that can be learned, with its interval.</summary>
    public Estimate Rate => new(Share(_exponent), Share(_exponent - _exponentSpread), Share(_exponent + _exponentSpread));

    /// <summary>y(1).</summary>
    public decimal First => MinutesOf(1);

    /// <summary>y(N): what a piece takes today.</summary>
    public Estimate Today => new(MinutesOf(Pieces), Minutes(Curve(Pieces, -_spread)), Minutes(Curve(Pieces, _spread)));

    /// <summary>What the first N pieces took beyond what they would take today, to 6 decimals: only the money that it comes to is shown.</summary>
    public decimal ExtraMinutes => Settled.Of(Sum(1, Pieces) - Pieces * Curve(Pieces, 0), HiddenDecimals);

    internal double Exponent => _exponent;

    /// <summary>What the curve gives the first N pieces together.</summary>
    internal double Fitted => Sum(1, Pieces);

    /// <summary>Why there is no curve to speak of.</summary>
    public enum Absence { None, TooFewEntries, TooLittleGrowth, NotAboveFixedMinutes, NoLearningSeen }

    /// <summary>y of a piece, the first is 1.</summary>
    public decimal MinutesOf(int piece) => Minutes(Curve(piece, 0));

    /// <summary>The mean of the next pieces after N.</summary>
    public decimal MeanOfNext(int pieces) => Minutes(Sum(Pieces + 1, pieces) / pieces);

    /// <summary>The curve of entries in their order, or why there is none.</summary>
    /// <param name="entries">The entries.</param>
    /// <param name="fixedMinutes">c0: minutes a piece that cannot be learned away.</param>
    /// <param name="level">How often the intervals are to hold.</param>
    public static (LearningFit? Fit, Absence Reason) Of(IReadOnlyList<LearningEntry> entries, decimal fixedMinutes, decimal level)
    {
        if (entries.Count < FewEntries)
            return (null, Absence.TooFewEntries);
        var pieces = entries.Aggregate(0, (sum, entry) => checked(sum + entry.Started));
        if (pieces < LeastGrowth * entries[0].Started)
            return (null, Absence.TooLittleGrowth);
        if (entries.Any(entry => entry.Minutes / entry.Started <= fixedMinutes))
            return (null, Absence.NotAboveFixedMinutes);
        if (Fitting(entries, (double)fixedMinutes) is not { Sxx: > 0 } line)
            return (null, Absence.NoLearningSeen);
        var fit = new LearningFit((double)fixedMinutes, line, level, pieces);
        return fit._exponent + fit._exponentSpread < 0 ? (fit, Absence.None) : (null, Absence.NoLearningSeen);
    }

    /// <summary>The line of log minutes on log pieces. An entry's place on it depends on the slope, so it is repeated until that stands.</summary>
    private static LineFit? Fitting(IReadOnlyList<LearningEntry> entries, double fixedMinutes)
    {
        var heights = entries.Select(entry => double.Log((double)(entry.Minutes / entry.Started) - fixedMinutes)).ToArray();
        var weights = entries.Select(entry => (double)entry.Started).ToArray();
        var slope = -0.3;
        for (var round = 0; round < MostRounds; round++)
        {
            var line = LineFit.Of(Places(entries, slope), heights, weights);
            var moved = double.Abs(line.Slope - slope);
            slope = line.Slope;
            if (moved < 1e-12)
                return line;
            if (!double.IsFinite(slope))
                return null;
        }

        return null;
    }

    private static double[] Places(IReadOnlyList<LearningEntry> entries, double slope)
    {
        var (places, done) = (new double[entries.Count], 0);
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = double.Log(Middle(done + 0.5, done + entries[i].Started + 0.5, slope));
            done += entries[i].Started;
        }

        return places;
    }

    /// <summary>The piece whose time is the mean of those from one to another: limits by logarithm where the slope is 0 or -1.</summary>
    internal static double Middle(double from, double to, double slope)
    {
        if (double.Abs(slope) < 1e-9)
            return double.Exp((to * double.Log(to) - from * double.Log(from)) / (to - from) - 1);
        return double.Pow(Mean(from, to, slope), 1 / slope);
    }

    /// <summary>The mean of n^slope between two places.</summary>
    private static double Mean(double from, double to, double slope) => double.Abs(1 + slope) < 1e-9
        ? double.Log(to / from) / (to - from)
        : (double.Pow(to, 1 + slope) - double.Pow(from, 1 + slope)) / ((1 + slope) * (to - from));

    /// <summary>The unit curve: a * n^b.</summary>
    internal static double Unit(double first, double exponent, int piece) => first * double.Pow(piece, exponent);

    private double Curve(int piece, double shift) => _fixed + Unit(_first, _exponent, piece) * double.Exp(shift);

    /// <summary>One by one; beyond 10,000 pieces by the area under the curve, which differs by less than the last digit shown.</summary>
    private double Sum(int from, int count)
    {
        var (sum, to, piece) = (0d, (long)from + count, from);
        for (; piece < to && piece - from < OneByOne; piece++)
            sum += Curve(piece, 0);
        return piece == to ? sum : sum + (to - piece) * (_fixed + _first * Mean(piece - 0.5, to - 0.5, _exponent));
    }

    private static decimal Minutes(double minutes) => Settled.Of(minutes, Estimate.MinuteDecimals);

    private static decimal Share(double exponent) => Settled.Of(double.Pow(2, exponent), Estimate.ShareDecimals);
}
