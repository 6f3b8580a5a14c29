using MathNet.Numerics.Distributions;

namespace PriceFloor.Evidence.Statistics;

/// <summary>Quantiles and probabilities of distributions. All that is used of MathNet.Numerics stands here.</summary>
internal static class Quantiles
{
    /// <summary>Of the standard normal distribution: of 0.95 it is 1.644854.</summary>
    public static double Normal(double share) => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, share);

    /// <summary>Of Student's t with degrees of freedom: of 0.95 and 10 it is 1.812461.</summary>
    public static double Student(double share, double freedom) => StudentT.InvCDF(0, 1, freedom, share);

    /// <summary>Of Beta(a, b).</summary>
    public static double Beta(double a, double b, double share) => MathNet.Numerics.Distributions.Beta.InvCDF(a, b, share);

    /// <summary>I_x(a, b): the probability that a Beta(a, b) is at most x.</summary>
    public static double BetaBelow(double a, double b, double x) => MathNet.Numerics.Distributions.Beta.CDF(a, b, x);

    /// <summary>Of Gamma with a shape and a rate: of 0.5, 21 and 6 it is 3.444604.</summary>
    public static double Gamma(double shape, double rate, double share) => MathNet.Numerics.Distributions.Gamma.InvCDF(shape, rate, share);

    /// <summary>
    /// The smallest count that a negative binomial is at most with a probability of at least <paramref name="share"/>.
    /// </summary>
    /// <param name="size">r, above 0.</param>
    /// <param name="success">p, above 0 to 1.</param>
    /// <param name="share">Above 0, below 1.</param>
    public static int NegativeBinomial(double size, double success, double share)
    {
        var (low, high) = (-1, 1);
        while (!Reaches(high))
            (low, high) = (high, checked(high * 2));
        while (high - low > 1)
        {
            var middle = low + (high - low) / 2;
            (low, high) = Reaches(middle) ? (low, middle) : (middle, high);
        }

        return high;

        bool Reaches(int count) => MathNet.Numerics.Distributions.NegativeBinomial.CDF(size, success, count) >= share;
    }
}
