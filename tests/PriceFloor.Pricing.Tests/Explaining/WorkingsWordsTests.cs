using Xunit;
using static PriceFloor.Pricing.Tests.Explaining.WorkingsInWords;

namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>
/// That each line of the workings of a price is there, in its place and in its words: a formula can be redone whatever it is called.
/// </summary>
public sealed class WorkingsWordsTests
{
    [Fact]
    public void The_documented_check_in_words()
    {
        var check = Prices.Check(58).Value;
        Says(
            """
            allocatedExpenses: expenses that bench time must recover, a year
            traced: expenses recovered on designs or by channels, a year
            depreciation1: what machine 1 (Kiln) loses in the year
            depreciation: what equipment loses in the year
            businessShares: business shares of household lines, a year
            allocated: all that bench time must recover before pay and tax
            expenses: all expenses of the year
            notDeductible: paid out of taxed money, a year
            household: what the household lives on, a year
            netIncome: other income already taxed, a year
            taxableIncome: other income still to be taxed, a year
            workdays: working days
            benchHoursOfTheYear: hours at the bench, helpers' included
            carryingHours: hours that carry the year: those of them that find work that sells
            payAYear: the least pay, a year
            need: what must be left after tax
            pieceStart: the tax is a line of 5 straight pieces: the profit at which piece 3 starts, in which the one that is sought lies
            pieceStartBase1: there: what levy 1 (self-employment) is charged on
            pieceStartLevy1: there: levy 1 (self-employment)
            pieceStartBase2: there: what levy 2 (income tax) is charged on
            pieceStartLevy2: there: levy 2 (income tax)
            pieceStartTax: there: tax on that profit
            keptAtStart: what is left there after tax
            ofOneMore1: from there on, of each further unit, levy 1 (self-employment)
            ofOneMore2: from there on, of each further unit, levy 2 (income tax)
            keptOfOneMore: what each further unit leaves
            profitBeforeTax: the smallest profit that leaves the need after tax
            base1: what levy 1 (self-employment) is charged on
            levy1: levy 1 (self-employment)
            base2: what levy 2 (income tax) is charged on
            levy2: levy 2 (income tax)
            tax: tax on that profit
            profitAfterTax: what that profit leaves: the need again
            requiredRevenue: what sales must bring in
            benchMustEarn: what bench time must recover
            perDay: each working day must take
            perWeek: each working week must take
            perBenchHour: each hour at the bench or of selling must bring
            takeHomePerHour: reaches the household for each working hour
            entering3: pieces that enter step 3 (polish) for each good one
            entering2: pieces that enter step 2 (anneal) for each good one
            entering1: pieces that enter step 1 (torch) for each good one
            starts: pieces started for each good one
            hoursPerGoodPiece: bench hours for each good piece
            benchHours: bench hours a sold piece
            material1: clear-rod for each good piece, used at start
            material2: kiln-kwh for each good piece, used at anneal
            material3: gift box for each good piece, used at finish
            materials: materials a sold piece
            secondsCredit: what its rejected pieces bring as seconds
            benchCost: what its bench time must recover
            floor: what one sold piece must bring in
            loadsAPiece1: loads of kiln a sold piece
            piecesInTheHours: pieces that the year's bench hours make
            piecesWithinLimit1: pieces that the year's loads of kiln allow
            piecesPerYear: pieces a year: the least of these
            wholesale: the wholesale price: the floor rounded up
            wholesaleBase: the larger of the floor rounded up and the highest price listed on a wholesale channel
            target: what a retail price before tax must reach
            retail: the retail price that goes with the wholesale price
            price: the listed price
            beforeTax: the price before sales tax
            shippingCharged: shipping charged an order, before tax
            paid: all that the buyer pays for an order
            fee1: fee 1 (card) on an order
            fees: all fees on an order
            perPieceCosts: packing and the stall's share, a piece
            keep: kept of a sale that stays sold, a piece
            lost: lost on a sale that comes back, a piece
            revenueAPiece: what buyers pay before sales tax and do not get back, a piece
            net: reaches the studio, a piece
            aboveFloor: above the floor; negative when short
            earnedPerBenchHour: what the price really pays for an hour of the piece
            profitAtThisPrice: the year's profit before tax if every carrying hour earned that
            taxedProfit: the part of it that is taxed
            atThisPriceBase1: at this price: what levy 1 (self-employment) is charged on
            atThisPriceLevy1: at this price: levy 1 (self-employment)
            atThisPriceBase2: at this price: what levy 2 (income tax) is charged on
            atThisPriceLevy2: at this price: levy 2 (income tax)
            atThisPriceTax: at this price: tax on that profit
            takeHomePerHourAtThisPrice: would reach the household for each working hour
            mostOff: the most that may be taken off the price, in thousandths: its sale still reaches the floor
            atMostOffPrice: with that taken off: the listed price
            atMostOffBeforeTax: with that taken off: the price before sales tax
            atMostOffAfterDiscount: with that taken off: what is paid of it on average, the usual discount taken off
            atMostOffShippingCharged: with that taken off: shipping charged an order, before tax
            atMostOffPaid: with that taken off: all that the buyer pays for an order
            atMostOffFee1: with that taken off: fee 1 (card) on an order
            atMostOffFees: with that taken off: all fees on an order
            atMostOffPerPieceCosts: with that taken off: packing and the stall's share, a piece
            atMostOffKeep: with that taken off: kept of a sale that stays sold, a piece
            atMostOffLost: with that taken off: lost on a sale that comes back, a piece
            atMostOffRevenueAPiece: with that taken off: what buyers pay before sales tax and do not get back, a piece
            atMostOffNet: with that taken off: reaches the studio, a piece
            """,
            Workings.Of(Year).Concat(Workings.Of(Pendant)).Concat(Workings.Of(Prices.Floor)).Concat(Workings.Of(check.Sale))
                .Concat(Workings.Of(check)));
    }

    [Fact]
    public void The_floor_price_and_the_target_price_in_words() =>
        Says(
            """
            atFloorPricePrice: at the floor price: the listed price = 35
            atFloorPriceBeforeTax: at the floor price: the price before sales tax = atFloorPricePrice
            atFloorPriceShippingCharged: at the floor price: shipping charged an order, before tax = 5
            atFloorPricePaid: at the floor price: all that the buyer pays for an order = (1.4 * atFloorPriceBeforeTax + atFloorPriceShippingCharged) * (1 + 0)
            atFloorPriceFee1: at the floor price: fee 1 (card) on an order = 0.024 * atFloorPricePaid + 0.25
            atFloorPriceFees: at the floor price: all fees on an order = atFloorPriceFee1
            atFloorPricePerPieceCosts: at the floor price: packing and the stall's share, a piece = 0.8
            atFloorPriceKeep: at the floor price: kept of a sale that stays sold, a piece = atFloorPriceBeforeTax * (1 - 0) + (atFloorPriceShippingCharged - 6.2 - atFloorPriceFees) / 1.4 - atFloorPricePerPieceCosts
            atFloorPriceLost: at the floor price: lost on a sale that comes back, a piece = atFloorPriceFees / 1.4 + (6.2 + 6.2) / 1.4 + atFloorPricePerPieceCosts
            atFloorPriceRevenueAPiece: at the floor price: what buyers pay before sales tax and do not get back, a piece = atFloorPriceBeforeTax * (1 - 0.03) / (1 - 0.03 * 0.8)
            atFloorPriceNet: at the floor price: reaches the studio, a piece = ((1 - 0.03) * atFloorPriceKeep - 0.03 * atFloorPriceLost) / (1 - 0.03 * 0.8)
            oneStepLowerPrice: one step lower: the listed price = 34
            floorPrice: the floor price: its net reaches the floor, that of one step lower does not = 35
            reachingTarget: the smallest allowed price that reaches the target before tax = 63
            reachingTargetBeforeTax: that price before tax = reachingTarget
            belowTarget: the allowed price one step lower = 62
            belowTargetBeforeTax: that price before tax: it does not reach the target = belowTarget
            targetPrice: the target price: the larger of the two = max(floorPrice, reachingTarget)
            """,
            Workings.Of(Prices).Where((line, i) => i < 12 || !line.Symbol.StartsWith("oneStepLower", StringComparison.Ordinal)));

    [Fact]
    public void The_ways_to_mend_a_price_in_words() =>
        Says(
            """
            room: what the price leaves for the hours of a piece
            sellingCost: what its hours of selling must recover
            gap: what the price is short of
            fixedHours: bench hours a sold piece that must not be shortened
            enoughHours: bench hours a sold piece that the price pays for
            enoughMinutes: the same in minutes
            cut: less for bench time to recover, a year
            enoughForBench: what the price lets bench time recover, a year
            enoughMaterials: materials a sold piece that the price allows
            newMaterials: materials that a new design with these minutes may use
            flawlessEntering3: with no such loss: pieces that enter step 3 (polish) for each good one
            flawlessEntering2: with no such loss: pieces that enter step 2 (anneal) for each good one
            flawlessEntering1: with no such loss: pieces that enter step 1 (torch) for each good one
            flawlessStarts: with no such loss: pieces started for each good one
            flawlessHoursPerGoodPiece: with no such loss: bench hours for each good piece
            flawlessBenchHours: with no such loss: bench hours a sold piece
            flawlessMaterial1: with no such loss: clear-rod for each good piece, used at start
            flawlessMaterial2: with no such loss: kiln-kwh for each good piece, used at anneal
            flawlessMaterial3: with no such loss: gift box for each good piece, used at finish
            flawlessMaterials: with no such loss: materials a sold piece
            flawlessSecondsCredit: with no such loss: what its rejected pieces bring as seconds
            flawlessBenchCost: with no such loss: what its bench time must recover
            flawlessCost: what a piece must bring in where nothing is lost in step 1
            costPerStart: what each further start there costs
            weekHours: working hours a week, with the same weeks
            moreTaxableIncome: further taxable income, a year
            profitLeft: the profit that is still needed after the cut
            lowerBase1: on the lower profit: what levy 1 (self-employment) is charged on
            lowerLevy1: on the lower profit: levy 1 (self-employment)
            lowerBase2: on the lower profit: what levy 2 (income tax) is charged on
            lowerLevy2: on the lower profit: levy 2 (income tax)
            lowerTax: on the lower profit: tax on that profit
            leftAfterTax: what that profit leaves after tax
            moreNetIncome: further income already taxed, a year
            part1: of the gap closed by faster work
            balancedHours: bench hours a sold piece in the balanced proposal
            part2: of the gap closed by cheaper materials
            balancedMaterials: materials a sold piece in the balanced proposal
            part3: of the gap closed by lower costs
            balancedCut: less for bench time to recover in the balanced proposal
            """,
            Workings.Of(Remedies.Of(Prices.Check(30).Value).Value));
}
