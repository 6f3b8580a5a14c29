namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>Units of a programme, and what they gain.</summary>
internal sealed record MixPlan(decimal[] Units, decimal Gain, decimal Second)
{
    public static MixPlan Of(MixProgramme programme, decimal[] units) =>
        new(units, MixProgramme.Sum(programme.Gains, units), MixProgramme.Sum(programme.Seconds, units));
}
