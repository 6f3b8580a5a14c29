using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>The yearly amount of a kind of cost or a line in the stored profile and in the draft.</summary>
/// <param name="To">Where it belongs.</param>
/// <param name="CostKind">The kind of cost.</param>
/// <param name="Name" example="Home rent">With household and other income: the line.</param>
/// <param name="Stored" example="6480.00">The yearly amount in the stored profile.</param>
/// <param name="Drafted" example="6720.00">The yearly amount in the draft.</param>
/// <param name="Difference" example="240.00">The draft less the stored profile.</param>
public sealed record DifferenceAnswer(Placement To, CostKind? CostKind, string? Name, decimal Stored, decimal Drafted, decimal Difference)
{
    public static DifferenceAnswer Of(ProfileDifference one, Currency money) =>
        new(one.To, one.CostKind, one.Name, money.Round(one.Stored), money.Round(one.Drafted), money.Round(one.Drafted - one.Stored));
}
