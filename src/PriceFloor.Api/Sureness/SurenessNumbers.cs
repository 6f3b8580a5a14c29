using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>What each guessed number does, the one that matters most first.</summary>
internal sealed class SurenessNumbers
{
    private const int MostPinned = 3;

    private readonly SurenessDraws _draws;
    private readonly Currency _money;
    private readonly IReadOnlyList<(Func<DrawnFigures, decimal> Of, DrawnFigure Drawn)> _figures;
    private readonly bool _hasDesign;
    private readonly bool _hasPlan;

    private SurenessNumbers(SurenessDraws draws)
    {
        (_draws, _money) = (draws, draws.Question.Year.Currency);
        (_hasDesign, _hasPlan) = (draws.Question.Design is not null, draws.Question.Plan is not null);
        List<Func<DrawnFigures, decimal>> asked = [_hasDesign ? figures => figures.Floor : figures => figures.PerBenchHour];
        if (_hasPlan)
            asked.Add(figures => figures.Plan!.Surplus);
        _figures = [.. asked.Select(figure => (figure, draws.Drawing.Figure(figure)))];
    }

    /// <summary>
    /// By share of the floor; of numbers that move it alike, by share of the plan. Without a design by share of the plan, and without a plan by that
    /// of what an hour must bring.
    /// </summary>
    public static List<SurenessNumberAnswer> Of(SurenessDraws draws, bool pins, CancellationToken cancel)
    {
        var numbers = new SurenessNumbers(draws);
        var shares = draws.Names.Select((_, number) => numbers.SharesOf(number)).ToList();
        var first = numbers._hasDesign || !numbers._hasPlan ? 0 : 1;
        var order = shares.Index().OrderByDescending(one => Shown(one.Item[first]) ?? 0).ThenByDescending(one => Shown(one.Item[^1]) ?? 0)
            .ThenByDescending(one => one.Item[first] ?? 0).Select(one => one.Index).ToList();
        return [.. order.Select((number, place) => numbers.AnswerOf(number, shares[number], pins && place < MostPinned, cancel))];
    }

    private decimal?[] SharesOf(int number) => [.. _figures.Select(figure => _draws.GroupsOf(number).ShareOf(figure.Drawn))];

    private SurenessNumberAnswer AnswerOf(int number, decimal?[] shares, bool isPinned, CancellationToken cancel)
    {
        var ranges = _draws.Drawn.RangesOf(number).ToList();
        decimal? Shared(Func<RangedChange, decimal> end) =>
            ranges.TrueForAll(range => end(range) == end(ranges[0])) ? Rounding.Trim(end(ranges[0])) : null;
        var (low, high) = (_draws.At(number, range => range.Low), _draws.At(number, range => range.High));
        var effects = _figures.Select((figure, i) =>
            new NumberEffectAnswer([Swing(low, figure.Of), Swing(high, figure.Of)], Shown(shares[i]))).ToList();
        return new SurenessNumberAnswer
        {
            Name = _draws.Names[number],
            Low = Shared(range => range.Low),
            Likely = Shared(range => range.Likely),
            High = Shared(range => range.High),
            Floor = _hasDesign ? effects[0] : null,
            PerBenchHour = _hasDesign ? null : effects[0],
            Plan = _hasPlan ? effects[1] : null,
            Pinned = isPinned ? _money.RoundUp(_draws.FloorsWithout(number, cancel).At(0.9m)) : null,
        };
    }

    private decimal? Swing(DrawnFigures? there, Func<DrawnFigures, decimal> figure) =>
        there is { } figures ? _money.Round(figure(figures) - figure(_draws.Question.Likely)) : null;

    /// <summary>Two decimals; what is below half a hundredth is nothing.</summary>
    private static decimal? Shown(decimal? share) => share is { } exact ? Rounding.Trim(decimal.Max(0, Rounding.Nearest(exact, 2))) : null;
}
