using System.Globalization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>What the draws say, as an answer: all rounding, by name.</summary>
internal sealed class SurenessText
{
    private const int MostPinned = 3;

    private readonly SurenessQuestion _question;
    private readonly ChangeScript _script;
    private readonly DrawnNumbers _numbers;
    private readonly LatinHypercube _hypercube;
    private readonly Drawing _drawing;
    private readonly Currency _money;
    private readonly Func<DrawnFigures, decimal> _figure;

    private SurenessText(SurenessQuestion question, ChangeScript script, DrawnNumbers numbers, LatinHypercube hypercube, Drawing drawing)
    {
        (_question, _script, _numbers, _hypercube, _drawing, _money) = (question, script, numbers, hypercube, drawing, question.Year.Currency);
        _figure = question.Design is null ? figures => figures.PerBenchHour : figures => figures.Floor;
    }

    /// <summary>The answer; refused with <c>ranges-too-wide</c> if more than one draw in a hundred has none.</summary>
    public static Outcome<SurenessAnswer> Of(SurenessRequest request, SurenessQuestion question, ChangeScript script, SurenessBasisAnswer basis,
        DateOnly today, CancellationToken cancel)
    {
        var numbers = new DrawnNumbers(script.Ranges);
        var hypercube = LatinHypercube.Of(numbers.Names, (int)request.Draws, (ulong)request.Seed);
        var drawing = Drawing.Of(question, script, numbers, hypercube, pinned: null, cancel);
        return drawing.NotPossible * 100 > hypercube.Draws
            ? new Fault("", FaultCodes.RangesTooWide, string.Create(CultureInfo.InvariantCulture,
                $"{drawing.NotPossible} of {hypercube.Draws} draws have no answer, such as no bench time; narrow a range."))
            : new SurenessText(question, script, numbers, hypercube, drawing).Answer(request, basis, today, cancel);
    }

    private SurenessAnswer Answer(SurenessRequest request, SurenessBasisAnswer basis, DateOnly today, CancellationToken cancel)
    {
        var holds = request.Price is null ? null : _drawing.Holds();
        return new SurenessAnswer
        {
            Currency = _money.Code,
            PerBenchHour = Spread(_drawing.Figure(figures => figures.PerBenchHour)),
            Floor = _question.Design is null ? null : Spread(_drawing.Figure(_figure)),
            FloorPriceSure = _question.Channel is null ? null : SurePrice(request.Sure),
            Holds = holds is null ? null : Rounding.Nearest(holds.Share, 2),
            StandardError = holds is null ? null : new StandardErrorAnswer(Rounding.Nearest(holds.StandardError, 3)),
            Numbers = Numbers(request.Pinned && _question.Design is not null, cancel),
            Draws = request.Draws,
            Seed = request.Seed,
            NotPossible = _drawing.NotPossible,
            Basis = basis,
            Warnings = WarningAnswer.Of(Warnings.In(_question.Year, today).Concat(HeldAtBounds(request))),
        };
    }

    private SpreadAnswer Spread(DrawnFigure figure) =>
        new(_money.RoundUp(figure.At(0.1m)), _money.RoundUp(figure.At(0.5m)), _money.RoundUp(figure.At(0.9m)));

    private decimal? SurePrice(decimal sure)
    {
        var price = _question.HasFixedChannel
            ? _question.PriceFor(_drawing.Figure(figures => figures.ChannelFloor).At(sure))
            : _drawing.Figure(figures => figures.FloorPrice!.Value).At(sure);
        return price is { } found ? Rounding.WithDecimals(found, _money.Decimals) : null;
    }

    private List<SurenessNumberAnswer> Numbers(bool pins, CancellationToken cancel)
    {
        var figure = _drawing.Figure(_figure);
        var sorted = Enumerable.Range(0, _numbers.Names.Count)
            .Select(number => (Number: number, Share: DrawnGroups.Of(_hypercube, number, _drawing.Possible).ShareOf(figure)))
            .OrderByDescending(one => one.Share ?? 0).ToList();
        return [.. sorted.Select((one, place) => NumberOf(one.Number, one.Share, pins && place < MostPinned, cancel))];
    }

    private SurenessNumberAnswer NumberOf(int number, decimal? share, bool isPinned, CancellationToken cancel)
    {
        var ranges = _numbers.RangesOf(number).ToList();
        decimal? Shared(Func<RangedChange, decimal> end) =>
            ranges.TrueForAll(range => end(range) == end(ranges[0])) ? Rounding.Trim(end(ranges[0])) : null;
        var effect = new NumberEffectAnswer([SwingAt(number, range => range.Low), SwingAt(number, range => range.High)], ShareOf(share));
        return new SurenessNumberAnswer
        {
            Name = _numbers.Names[number],
            Low = Shared(range => range.Low),
            Likely = Shared(range => range.Likely),
            High = Shared(range => range.High),
            Floor = _question.Design is null ? null : effect,
            PerBenchHour = _question.Design is null ? effect : null,
            Pinned = isPinned
                ? _money.RoundUp(Drawing.Of(_question, _script, _numbers, _hypercube, number, cancel).Figure(_figure).At(0.9m))
                : null,
        };
    }

    private decimal? SwingAt(int number, Func<RangedChange, decimal> end) =>
        Drawing.Of(_question, _script, _numbers.With(number, end)) is { } there ? _money.Round(_figure(there) - _figure(_question.Likely)) : null;

    /// <summary>Two decimals; what is below half a hundredth is nothing.</summary>
    private static decimal? ShareOf(decimal? share) => share is { } exact ? Rounding.Trim(decimal.Max(0, Rounding.Nearest(exact, 2))) : null;

    private IEnumerable<Warning> HeldAtBounds(SurenessRequest request)
    {
        foreach (var (range, isHeld) in _numbers.Ranges.Zip(_drawing.Held))
            if (isHeld)
                yield return new Warning(WarningCodes.HeldAtBound,
                    $"Some draws of {range.Name} pass what the field may be and are held there; narrow the range if that is not meant.",
                    request.Scenario is null ? FormattableString.Invariant($"/ranges/{range.Index}") : "/scenario");
    }
}
