using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>More time at the bench and fewer lost pieces never make a piece dearer.</summary>
public sealed class HoursAndYieldProperties
{
    private const int Tries = 200;

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void More_weeks_of_work_never_raise_a_floor(NonNegativeInt seed)
    {
        var (profile, design) = Draw(seed);
        NeverRises(profile, design,
            profile with { Calendar = profile.Calendar with { WeeksPerYear = profile.Calendar.WeeksPerYear + 0.5m } }, design);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Longer_days_and_a_larger_bench_share_never_raise_the_floor_of_a_piece_told_in_minutes(NonNegativeInt seed, PositiveInt minutes)
    {
        // Pieces a day are no minutes: a longer day at the same number of pieces is a slower pace.
        var (profile, design) = Draw(seed);
        if (design.Making.Steps is null)
            design = design with { Making = new Making { MinutesPerPiece = 1 + minutes.Get % 300, GoodShare = design.Making.GoodShare } };
        NeverRises(profile, design, profile with { Calendar = profile.Calendar with { HoursPerDay = profile.Calendar.HoursPerDay + 1 } }, design);
        NeverRises(profile, design, profile with { Calendar = profile.Calendar with { BenchShare = 1 } }, design);
        NeverRises(profile, design, profile with { OtherIncome = [.. profile.OtherIncome.Select(line => line with { DaysPerYear = 0 })] }, design);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_better_yield_in_any_step_never_raises_a_floor_where_seconds_do_not_pay_more_than_they_cost(NonNegativeInt seed)
    {
        var (profile, design) = Draw(seed);
        if (Of(profile, design).SecondsPayMoreThanTheyCost)
            return;
        if (design.Making.Steps is not { } steps)
        {
            NeverRises(profile, design, profile, design with { Making = design.Making with { GoodShare = (1 + design.Making.GoodShare) / 2 } });
            return;
        }

        foreach (var (i, step) in steps.Index())
        {
            List<Step> better = [.. steps];
            better[i] = step with { GoodShare = (1 + step.GoodShare) / 2 };
            NeverRises(profile, design, profile, design with { Making = design.Making with { Steps = better } });
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_warning_about_seconds_is_true_where_it_stands(NonNegativeInt seed, PositiveInt price)
    {
        // Where the warning stands, the first step that loses any pieces shows it: saving a few of them costs money.
        var (profile, drawn) = Draw(seed);
        var design = drawn with { Seconds = new Seconds { Share = 1, Price = price.Get % 1000 } };
        var before = Of(profile, design);
        if (!before.SecondsPayMoreThanTheyCost)
            return;
        var better = Of(profile, design with { Making = SavingAFew(design.Making) });
        Assert.True(Unbounded(better) > Unbounded(before), $"{Unbounded(before)} did not rise: {Unbounded(better)}");
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_larger_sold_share_never_raises_a_floor(NonNegativeInt seed)
    {
        var (profile, design) = Draw(seed);
        if (Of(profile, design with { Development = null }).Cost >= 0) // else more unsold pieces bring more seconds than they cost
            NeverRises(profile, design, profile, design with { SoldShare = 1 });
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void All_the_pieces_of_a_year_carry_the_whole_pool(NonNegativeInt seed)
    {
        // Bench cost x pieces in all carrying hours = what bench time must recover, when all these hours are spent.
        var (profile, design) = Draw(seed);
        var piece = Of(profile, design);
        Near.Equal(piece.Year.BenchMustEarn, piece.BenchCost * (piece.Year.CarryingHours / piece.BenchHours));
    }

    private static Making SavingAFew(Making making)
    {
        if (making.Steps is not { } steps)
            return making with { GoodShare = decimal.Min(1, making.GoodShare + 0.001m) };
        var first = steps.Index().First(step => step.Item.GoodShare < 1).Index;
        return making with
        {
            Steps = [.. steps.Select((step, i) => i == first ? step with { GoodShare = decimal.Min(1, step.GoodShare + 0.001m) } : step)],
        };
    }

    /// <summary>The floor before it is held at zero.</summary>
    private static decimal Unbounded(UnitCost piece) => piece.BenchCost + piece.Materials - piece.SecondsCredit;

    /// <summary>Pay by the hour is left out: a longer year then asks for more pay.</summary>
    private static (CostProfile, Design) Draw(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var profile = studio.Profile();
        return (profile.Pay is { Per: PayPer.Hour } ? profile with { Pay = null } : profile, studio.Design());
    }

    private static UnitCost Of(CostProfile profile, Design design) => UnitCost.Of(design, StudioYear.Of(profile, default).Value).Value;

    private static void NeverRises(CostProfile before, Design piece, CostProfile after, Design changed) =>
        Assert.True(Of(before, piece).Floor + 0.000000001m >= Of(after, changed).Floor,
            $"{Of(before, piece).Floor} rose to {Of(after, changed).Floor}");
}
