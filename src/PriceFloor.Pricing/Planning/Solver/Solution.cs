namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>A solution of an integer programme, with its objective values.</summary>
internal sealed record Solution(decimal[] Units, decimal Objective, decimal Secondary)
{
    public static Solution Of(IntegerProgramme programme, decimal[] units) =>
        new(units, IntegerProgramme.Sum(programme.Objective, units), IntegerProgramme.Sum(programme.Secondary, units));
}
