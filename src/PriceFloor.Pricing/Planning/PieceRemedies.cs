using System.Globalization;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>The ways that change the piece: its time, its materials, what is lost of it, or another design for the price.</summary>
internal sealed class PieceRemedies(RemedyCase one)
{
    private const int ShareDecimals = 6;

    private decimal MinutesNow => Rounding.Nearest(one.UnitCost.BenchHours * 60, RemedyCase.MinuteDecimals);

    private decimal MaterialsNow => one.Money.Round(one.UnitCost.Materials);

    public Remedy Faster()
    {
        const RemedyKind Kind = RemedyKind.WorkFaster;
        if (one.IsReached)
            return one.Unchanged(Kind, MinutesNow);
        if (one.EnoughHours is not { } hours)
            return RemedyCase.BelowMaterials(Kind, MinutesNow, "no saving of time can help");
        if (Rounding.Settle(hours) <= 0)
            return SellingTakesItAll(Kind);
        var (now, held) = (one.UnitCost.BenchHours, one.UnitCost.FixedHours);
        if (held.Reaches(hours))
            return RemedyCase.Not(Kind, MinutesNow, RemedyReasons.FixedTime,
                "The time that must not be hurried, with one-off work, alone takes more than this price pays for.");
        var enough = Rounding.Down(hours * 60, RemedyCase.MinuteDecimals);
        var figures = FasterWork.Of(one.UnitCost.Design.Making, (hours - held) / (now - held));
        return RemedyCase.Possible(Kind, MinutesNow, enough, $"{string.Join(", ", figures.Select(FasterWork.InWords))}: "
            + $"{RemedyWords.Plain(enough)} bench minutes a sold piece instead of {RemedyWords.Plain(MinutesNow)}") with
        {
            InTheDesign = figures,
        };
    }

    public Remedy Materials()
    {
        const RemedyKind Kind = RemedyKind.CheaperMaterials;
        var (now, spent) = (one.UnitCost.Materials, one.UnitCost.DevelopmentCost);
        if (spent.Reaches(now))
            return RemedyCase.Not(Kind, MaterialsNow, RemedyReasons.NoMaterials, "The design lists no materials to save on.");
        if (!one.EnoughMaterials.Reaches(spent))
            return RemedyCase.Not(Kind, MaterialsNow, RemedyReasons.MoreThanMaterials,
                "Even without any materials the time alone, with one-off cost, is too much for this price.");
        if (one.IsReached)
            return one.Unchanged(Kind, MaterialsNow);
        var enough = one.Money.RoundDown(one.EnoughMaterials);
        return RemedyCase.Possible(Kind, MaterialsNow, enough,
            $"materials of {RemedyWords.Amount(enough, one.Money)} a piece instead of {RemedyWords.Amount(MaterialsNow, one.Money)}");
    }

    public Remedy Yield()
    {
        const RemedyKind Kind = RemedyKind.LoseFewer;
        var worst = one.Floor.WorstShare;
        if (worst == 1)
            return RemedyCase.Not(Kind, 1, RemedyReasons.NothingIsLost, "No pieces are lost as it is.");
        if (one.UnitCost.SecondsPayMoreThanTheyCost)
            return RemedyCase.Not(Kind, worst, RemedyReasons.SecondsPayMoreThanTheyCost,
                "A second brings more than a rejected start costs, so better yield would raise the floor.");
        if (one.IsReached)
            return one.Unchanged(Kind, worst);
        var needed = one.Bounds.Select(bound => bound.BetterYield).OfType<BetterYield>().ToList();
        if (needed.Exists(better => better.GoodShare is null))
            return RemedyCase.Not(Kind, worst, RemedyReasons.NotEnough, "Even without any loss the piece costs more than this price brings.");
        var enough = decimal.Min(1, Rounding.Up(needed.Max(better => better.GoodShare!.Value), ShareDecimals));
        var (of, before, after) = RemedyWords.Pieces(worst, enough);
        return RemedyCase.Possible(Kind, worst, enough, $"{after} of {of} must come out good{InItsStep()} instead of {before}");
    }

    public Remedy NewMinutes()
    {
        const RemedyKind Kind = RemedyKind.NewDesignMinutes;
        if (one.EnoughHours is not { } hours)
            return one.Year.BenchMustEarn == 0 && one.Bounds.All(bound => bound.Room.Reaches(0))
                ? RemedyCase.Not(Kind, MinutesNow, RemedyReasons.BenchMustEarnNothing, "Bench time has nothing to recover, so any time is paid for.")
                : RemedyCase.Not(Kind, MinutesNow, RemedyReasons.PriceBelowMaterials, "The price does not even pay for these materials.");
        if (Rounding.Settle(hours) <= 0)
            return SellingTakesItAll(Kind);
        var minutes = Rounding.Down(hours * 60, RemedyCase.MinuteDecimals);
        return RemedyCase.Possible(Kind, MinutesNow, minutes,
            $"a design for this price may take {RemedyWords.Plain(minutes)} bench minutes with these materials");
    }

    public Remedy NewMaterials()
    {
        const RemedyKind Kind = RemedyKind.NewDesignMaterials;
        var budget = one.Money.RoundDown(one.NewMaterials);
        return !one.HasRoom
            ? RemedyCase.Not(Kind, MaterialsNow, RemedyReasons.PriceBelowMaterials, "The price does not even pay for these materials.")
            : !one.NewMaterials.Reaches(0)
            ? RemedyCase.Not(Kind, MaterialsNow, RemedyReasons.TimeTakesItAll, "At these minutes nothing of the price is left for materials.")
            : RemedyCase.Possible(Kind, MaterialsNow, budget,
                $"a design for this price may use {RemedyWords.Amount(budget, one.Money)} of materials with these minutes");
    }

    private Remedy SellingTakesItAll(RemedyKind kind) => RemedyCase.Not(kind, MinutesNow, RemedyReasons.SellingTakesItAll,
        "Selling a piece here takes more time than the price pays for, so no time is left to make it in.");

    private string InItsStep() => one.Floor.WorstStep is not { } step ? ""
        : one.UnitCost.Design.Making.Steps![step].Name is { Length: > 0 } name ? $" in the step \"{name}\""
        : string.Create(CultureInfo.InvariantCulture, $" in step {step + 1}");
}
