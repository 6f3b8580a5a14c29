using Xunit;
using static PriceFloor.Pricing.Tests.Explaining.WorkingsInWords;

namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>The workings of a plan and of a mix, in words.</summary>
public sealed class PlanWordsTests
{
    [Fact]
    public void A_plan_in_words()
    {
        var check = Prices.Check(58).Value;
        Says(
            """
            net1: reaches the studio for a piece of line 1; the workings of its price check say how, here with 12 decimals
            revenueAPiece1: what buyers pay before sales tax for a piece of line 1, likewise
            materials1: materials of a piece of line 1, likewise
            secondsCredit1: what seconds bring for a piece of line 1, likewise
            benchHours1: bench hours of a piece of line 1, likewise
            contribution1: what one sale of line 1 leaves toward what bench time must recover
            units1: pieces of line 1
            lineHours1: bench hours of line 1
            lineRevenue1: what buyers pay for line 1
            lineProceeds1: what reaches the studio for line 1
            lineMaterials1: materials of line 1
            lineContribution1: what line 1 leaves toward what bench time must recover
            perBenchHour1: the same for each of its bench hours
            net2: reaches the studio for a piece of line 2; the workings of its price check say how, here with 12 decimals
            revenueAPiece2: what buyers pay before sales tax for a piece of line 2, likewise
            materials2: materials of a piece of line 2, likewise
            secondsCredit2: what seconds bring for a piece of line 2, likewise
            benchHours2: bench hours of a piece of line 2, likewise
            contribution2: what one sale of line 2 leaves toward what bench time must recover
            units2: pieces of line 2
            lineHours2: bench hours of line 2
            lineRevenue2: what buyers pay for line 2
            lineProceeds2: what reaches the studio for line 2
            lineMaterials2: materials of line 2
            lineContribution2: what line 2 leaves toward what bench time must recover
            perBenchHour2: the same for each of its bench hours
            profitAskedFor: the profit before tax that is asked for, a wanted surplus included
            benchMustEarnWithSurplus: what bench time must recover, a wanted surplus included
            contribution: what all lines leave toward what bench time must recover
            surplusBeforeTax: by how much the year closes; negative when short
            revenue: what buyers pay before sales tax and do not get back
            proceeds: what of it reaches the studio
            planHours: bench hours of the plan
            hoursAvailable: bench hours of the year less those kept back
            planMaterials: materials that the plan uses
            loads1Each1: loads of kiln for a piece of line 1; the workings of its floor price say how
            loads1Each2: loads of kiln for a piece of line 2; the workings of its floor price say how
            loads1: loads of kiln
            """,
            Workings.Of(YearPlan.Of(Year, [new PlannedLine(check, 10), new PlannedLine(check, 5)], null, 0).Value));
    }

    [Fact]
    public void A_mix_in_words()
    {
        var sale = Prices.Check(58).Value.Sale;
        var mix = MixBreakEven.Of(Year, [new MixLine(Pendant, sale, 1), new MixLine(Pendant, sale, 2)], null).Value;
        Says(
            """
            net1: reaches the studio for a piece of line 1; the workings of its price check say how, here with 12 decimals
            revenueAPiece1: what buyers pay before sales tax for a piece of line 1, likewise
            materials1: materials of a piece of line 1, likewise
            secondsCredit1: what seconds bring for a piece of line 1, likewise
            benchHours1: bench hours of a piece of line 1, likewise
            contribution1: what one sale of line 1 leaves toward what bench time must recover
            net2: reaches the studio for a piece of line 2; the workings of its price check say how, here with 12 decimals
            revenueAPiece2: what buyers pay before sales tax for a piece of line 2, likewise
            materials2: materials of a piece of line 2, likewise
            secondsCredit2: what seconds bring for a piece of line 2, likewise
            benchHours2: bench hours of a piece of line 2, likewise
            contribution2: what one sale of line 2 leaves toward what bench time must recover
            profitAskedFor: the profit before tax that is asked for, a wanted surplus included
            benchMustEarnWithSurplus: what bench time must recover, a wanted surplus included
            contributionPerMixUnit: what one unit of the mix leaves toward what bench time must recover
            mixUnits: units of the mix that bring what bench time must recover
            exactUnits1: pieces of line 1, before rounding
            units1: whole pieces of line 1
            exactUnits2: pieces of line 2, before rounding
            units2: whole pieces of line 2
            unitsHours: bench hours that they take
            revenue: what buyers pay for them before sales tax and do not get back
            shareOfYear: their part of the year's bench hours
            """,
            Workings.Of(mix));
    }
}
