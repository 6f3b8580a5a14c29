using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Costing;

/// <summary>
/// Pieces of one design made for one order: what they take together, with one setup and whole loads, and all of them sold. Unrounded. A pendant of 43
/// minutes alone in a kiln of 24 pays for the whole load; 24 of them share it.
/// </summary>
public sealed class Run
{
    /// <summary>Most pieces that a run may start: more are refused as <c>too-large</c>.</summary>
    public const int MostStarts = 100_000;

    private readonly RunFormulas<Figure> _formulas;

    private Run(UnitCost piece, RunTerms terms, int startsToBeSure)
    {
        (Piece, Terms, StartsToBeSure) = (piece, terms, startsToBeSure);
        _formulas = FormulasOf<Figure>();
    }

    public UnitCost Piece { get; }

    public RunTerms Terms { get; }

    /// <summary>n: good pieces that are wanted.</summary>
    public int Quantity => Terms.Quantity;

    /// <summary>Pieces to start: the number that is sure enough where that is asked for, else how many are lost on average besides.</summary>
    public decimal Starts => _formulas.Time.Starts.Value;

    /// <summary>Whole pieces to start so that enough come out good with the chance asked for, else with 0.9.</summary>
    public int StartsToBeSure { get; }

    /// <summary>Whole loads of all steps and material lines that are done or used by the load.</summary>
    public decimal Loads
    {
        get
        {
            var (formulas, making) = (_formulas, Piece.Design.Making);
            return formulas.Time.Loads.Sum(loads => loads.Value)
                + Piece.Design.Materials.Where(line => line.BatchSize > 1).Sum(line => formulas.LoadsOf(line, making).Value);
        }
    }

    /// <summary>Bench minutes of each step for the whole run; one step if the making has none.</summary>
    public IReadOnlyList<decimal> StepMinutes => Array.ConvertAll(_formulas.Time.StepMinutes, minutes => minutes.Value);

    /// <summary>Bench minutes of the trial pieces.</summary>
    public decimal TrialMinutes => _formulas.Time.TrialMinutes.Value;

    /// <summary>Bench hours of the whole run, with its setup, its trial pieces and its share of the design's one-off work.</summary>
    public decimal BenchHours => _formulas.BenchHours.Value;

    /// <summary>Materials of the whole run, with its trial pieces and its share of the design's one-off cost.</summary>
    public decimal Materials => _formulas.Materials.Value;

    /// <summary>What the rejected pieces of the run bring as seconds.</summary>
    public decimal Seconds => _formulas.Seconds.Value;

    /// <summary>
    /// The run of a piece. Refused: more than <see cref="MostStarts"/> pieces to start, figures past exactness (both <c>too-large</c>).
    /// </summary>
    public static Outcome<Run> Of(UnitCost piece, RunTerms terms) => Outcome<Run>.Guard(() =>
    {
        if (piece.Time.Starts * terms.Quantity > MostStarts || (decimal)terms.Quantity + terms.TrialPieces > MostStarts)
            return new Fault("", FaultCodes.TooLarge,
                $"The run would start more than {MostStarts} pieces; ask for fewer, or check the good shares for a slipped decimal point.");
        return new Run(piece, terms, SureStarts.Of(terms.Quantity, 1 / piece.Time.Starts, terms.Sure ?? RunTerms.UsuallySure));
    });

    internal RunFormulas<T> FormulasOf<T>() where T : IFigure<T> =>
        new(Piece.Design, Piece.Year, Terms, StartsToBeSure);
}
