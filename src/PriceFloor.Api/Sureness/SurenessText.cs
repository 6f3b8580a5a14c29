using System.Globalization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>What the draws say, as an answer: all rounding, by name.</summary>
internal sealed class SurenessText
{
    private readonly SurenessQuestion _question;
    private readonly SurenessDraws _draws;
    private readonly Currency _money;

    private SurenessText(SurenessDraws draws) => (_question, _draws, _money) = (draws.Question, draws, draws.Question.Year.Currency);

    private Drawing<DrawnFigures> Drawing => _draws.Drawing;

    /// <summary>The answer; refused with <c>ranges-too-wide</c> if more than one draw in a hundred has none.</summary>
    public static Outcome<SurenessAnswer> Of(SurenessRequest request, SurenessQuestion question, ChangeScript script, SurenessBasisAnswer basis,
        DateOnly today, CancellationToken cancel)
    {
        var numbers = new DrawnNumbers(script.Ranges);
        var hypercube = LatinHypercube.Of(numbers.Names, (int)request.Draws, (ulong)request.Seed);
        var drawing = Drawing<DrawnFigures>.Of(question.Of, script, numbers, hypercube, pinned: null, cancel);
        return drawing.NotPossible * 100 > hypercube.Draws
            ? new Fault("", FaultCodes.RangesTooWide, string.Create(CultureInfo.InvariantCulture,
                $"{drawing.NotPossible} of {hypercube.Draws} draws have no answer, such as no bench time; narrow a range."))
            : new SurenessText(new SurenessDraws(question, script, numbers, hypercube, drawing)).Answer(request, basis, today, cancel);
    }

    private SurenessAnswer Answer(SurenessRequest request, SurenessBasisAnswer basis, DateOnly today, CancellationToken cancel)
    {
        var holds = request.Price is null ? null : Drawing.Event(figures => figures.Holds);
        var closes = _question.Plan is null ? null : Drawing.Event(figures => figures.Plan!.Closes);
        return new SurenessAnswer
        {
            Currency = _money.Code,
            PerBenchHour = Spread(figures => figures.PerBenchHour, _money.RoundUp),
            Floor = _question.Design is null ? null : Spread(figures => figures.Floor, _money.RoundUp),
            FloorPriceSure = _question.Channel is null ? null : SurePrice(request.Sure),
            Holds = Share(holds),
            Plan = closes is null ? null : PlanOf(closes, request.Sure),
            WorthKnowing = _question.IsDecision ? Worth() : null,
            StandardError = holds is null && closes is null ? null : new StandardErrorAnswer(Error(closes), Error(holds)),
            Numbers = SurenessNumbers.Of(_draws, request.Pinned && _question.Design is not null, cancel),
            Draws = request.Draws,
            Seed = request.Seed,
            NotPossible = Drawing.NotPossible,
            Basis = basis,
            Warnings = WarningAnswer.Of(Warnings.In(_question.Year, today).Concat(HeldAtBounds(request))),
        };
    }

    private SurePlanAnswer PlanOf(DrawnEvent closes, decimal sure) => new()
    {
        Closes = Share(closes)!.Value,
        WithinHours = Share(Drawing.Event(figures => figures.Plan!.WithinHours))!.Value,
        SurplusBeforeTax = Spread(figures => figures.Plan!.Surplus, _money.RoundDown),
        LowestCash = Spread(figures => figures.Plan!.LowestCash, _money.Round),
        RiseToClose = Drawing.Figure(figures => figures.Plan!.Rise ?? SurenessDraws.NoRise).At(sure) is var rise and < SurenessDraws.NoRise
            ? Rounding.Trim(rise)
            : null,
    };

    private WorthKnowingAnswer Worth()
    {
        var gain = Drawing.Figure(figures => figures.Gain!.Value);
        return new WorthKnowingAnswer
        {
            Gain = _money.Round(gain.Mean),
            Loses = Share(Drawing.Event(figures => figures.Gain < 0))!.Value,
            All = _money.RoundDown(DrawnGroups.WorthOfKnowingAll(gain)),
            Numbers = _draws.Names.Index().ToDictionary(one => one.Item, one => _money.RoundDown(_draws.GroupsOf(one.Index).WorthOfKnowing(gain))),
        };
    }

    private SpreadAnswer Spread(Func<DrawnFigures, decimal> figure, Func<decimal, decimal> round)
    {
        var drawn = Drawing.Figure(figure);
        return new(round(drawn.At(0.1m)), round(drawn.At(0.5m)), round(drawn.At(0.9m)));
    }

    private static decimal? Share(DrawnEvent? happened) => happened is null ? null : Rounding.Nearest(happened.Share, 2);

    private static decimal? Error(DrawnEvent? happened) => happened is null ? null : Rounding.Nearest(happened.StandardError, 3);

    private decimal? SurePrice(decimal sure)
    {
        var price = _question.HasFixedChannel
            ? _question.PriceFor(Drawing.Figure(figures => figures.ChannelFloor).At(sure))
            : Drawing.Figure(figures => figures.FloorPrice!.Value).At(sure);
        return price is { } found ? Rounding.WithDecimals(found, _money.Decimals) : null;
    }

    private IEnumerable<Warning> HeldAtBounds(SurenessRequest request)
    {
        foreach (var (range, isHeld) in _draws.Ranges.Zip(Drawing.Held))
            if (isHeld)
                yield return new Warning(WarningCodes.HeldAtBound,
                    $"Some draws of {range.Name} pass what the field may be and are held there; narrow the range if that is not meant.",
                    request.Scenario is not null ? "/scenario" : request.Ranges!.Word is not null ? "/ranges"
                        : FormattableString.Invariant($"/ranges/{range.Index}"));
    }
}
