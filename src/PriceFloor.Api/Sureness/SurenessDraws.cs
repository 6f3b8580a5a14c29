using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>All draws of a question.</summary>
/// <param name="Question">The question.</param>
/// <param name="Script">The changes that have the ranges.</param>
/// <param name="Drawn">The guessed numbers.</param>
/// <param name="Hypercube">Their draws.</param>
/// <param name="Drawing">The figures of every draw.</param>
internal sealed record SurenessDraws(SurenessQuestion Question, ChangeScript Script, DrawnNumbers Drawn, LatinHypercube Hypercube,
    Drawing<DrawnFigures> Drawing)
{
    /// <summary>Stands for a rise of prices that no share up to ten replaces.</summary>
    public const decimal NoRise = 1_000_000;

    private readonly Dictionary<int, DrawnGroups> _groups = [];

    public IReadOnlyList<string> Names => Drawn.Names;

    public IReadOnlyList<RangedChange> Ranges => Drawn.Ranges;

    /// <summary>The draws of a number in equal groups.</summary>
    public DrawnGroups GroupsOf(int number) =>
        _groups.TryGetValue(number, out var known) ? known : _groups[number] = DrawnGroups.Of(Hypercube, number, Drawing.Possible);

    /// <summary>The figures with one number at one of its ends and the others likely; null if there are none.</summary>
    public DrawnFigures? At(int number, Func<RangedChange, decimal> end) =>
        Drawing<DrawnFigures>.Of(Question.Of, Script, Drawn.With(number, end));

    /// <summary>The floor in every draw if a number were exactly its likely value.</summary>
    public DrawnFigure FloorsWithout(int number, CancellationToken cancel) =>
        Drawing<decimal>.Of(Question.FloorIn, Script, Drawn, Hypercube, number, cancel).Figure(floor => floor);
}
