using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Costing;

/// <summary>A run: how many pieces of a design are made for one order, and how.</summary>
/// <param name="Quantity">Good pieces that are wanted, 1 or more.</param>
public sealed record RunTerms(int Quantity)
{
    /// <summary>How sure the number of starts is if nothing else is asked for.</summary>
    public const decimal UsuallySure = 0.9m;

    /// <summary>How the work gets quicker. Null: it does not.</summary>
    public Learning? Learning { get; init; }

    /// <summary>The curve of <see cref="Learning"/> if runs of one order share it: each of its sums is then calculated once.</summary>
    internal LearningCurve? Curve { get; init; }

    /// <summary>Pieces made to try it out, before the run: they are paid for and teach nothing.</summary>
    public int TrialPieces { get; init; }

    /// <summary>
    /// The chance, 0.5 to 0.999, with which enough pieces must come out good: then so many are started and paid for. Null: as many as are lost on
    /// average.
    /// </summary>
    public decimal? Sure { get; init; }

    /// <summary>How often the bench is set up: more than once only if a physical limit asks for it.</summary>
    public int Runs { get; init; } = 1;
}
