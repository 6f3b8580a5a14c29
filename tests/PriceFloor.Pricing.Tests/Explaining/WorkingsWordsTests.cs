using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>That each line of the workings is there, in its place and in its words: a formula can be redone whatever it is called.</summary>
public sealed class WorkingsWordsTests
{
    private static readonly StudioYear s_year = StudioYear.Of(ExampleStudio.Profile, default).Value;

    private static readonly UnitCost s_piece = UnitCost.Of(ExampleStudio.Pendant, s_year).Value;

    private static readonly ChannelPrices s_prices = ChannelPrices.Of(FloorPrice.Of(s_piece, null).Value, SellingTerms.Of(ExampleStudio.WebShop).Value).Value;

    [Fact]
    public void The_documented_check_in_words()
    {
        var check = s_prices.Check(58).Value;
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
            perBenchHour: each hour at the bench must bring
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
            piecesPerYear: pieces that the year's bench hours make
            loadsAPiece1: loads of kiln a sold piece
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
            earnedPerBenchHour: what the price really pays for an hour at the bench
            profitAtThisPrice: the year's profit before tax if every bench hour earned that
            taxedProfit: the part of it that is taxed
            atThisPriceBase1: at this price: what levy 1 (self-employment) is charged on
            atThisPriceLevy1: at this price: levy 1 (self-employment)
            atThisPriceBase2: at this price: what levy 2 (income tax) is charged on
            atThisPriceLevy2: at this price: levy 2 (income tax)
            atThisPriceTax: at this price: tax on that profit
            takeHomePerHourAtThisPrice: would reach the household for each working hour
            """,
            Workings.Of(s_year).Concat(Workings.Of(s_piece)).Concat(Workings.Of(s_prices.Floor)).Concat(Workings.Of(check.Sale)).Concat(Workings.Of(check)));
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
            Workings.Of(s_prices).Where((line, i) => i < 12 || !line.Symbol.StartsWith("oneStepLower", StringComparison.Ordinal)));

    [Fact]
    public void The_ways_to_mend_a_price_in_words() =>
        Says(
            """
            room: what the price leaves for bench time
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
            moreTaxableIncome: further taxable income, a year
            profitLeft: the profit that is still needed after the cut
            lowerBase1: on the lower profit: what levy 1 (self-employment) is charged on
            lowerLevy1: on the lower profit: levy 1 (self-employment)
            lowerBase2: on the lower profit: what levy 2 (income tax) is charged on
            lowerLevy2: on the lower profit: levy 2 (income tax)
            lowerTax: on the lower profit: tax on that profit
            leftAfterTax: what that profit leaves after tax
            moreNetIncome: further income already taxed, a year
            weekHours: working hours a week, with the same weeks
            part1: of the gap closed by faster work
            balancedHours: bench hours a sold piece in the balanced proposal
            part2: of the gap closed by cheaper materials
            balancedMaterials: materials a sold piece in the balanced proposal
            part3: of the gap closed by lower costs
            balancedCut: less for bench time to recover in the balanced proposal
            """,
            Workings.Of(Remedies.Of(s_prices.Check(30).Value).Value));

    [Fact]
    public void A_plan_in_words()
    {
        var check = s_prices.Check(58).Value;
        Says(
            """
            net1: reaches the studio for a piece of line 1; the workings of its price check say how, here with 12 decimals
            revenueAPiece1: what buyers pay before sales tax for a piece of line 1, likewise
            materials1: materials of a piece of line 1, likewise
            secondsCredit1: what seconds bring for a piece of line 1, likewise
            benchHours1: bench hours of a piece of line 1, likewise
            contribution1: what one sale of line 1 leaves for the pool
            units1: pieces of line 1
            lineHours1: bench hours of line 1
            lineRevenue1: what buyers pay for line 1
            lineProceeds1: what reaches the studio for line 1
            lineMaterials1: materials of line 1
            lineContribution1: what line 1 leaves for the pool
            perBenchHour1: the same for each of its bench hours
            net2: reaches the studio for a piece of line 2; the workings of its price check say how, here with 12 decimals
            revenueAPiece2: what buyers pay before sales tax for a piece of line 2, likewise
            materials2: materials of a piece of line 2, likewise
            secondsCredit2: what seconds bring for a piece of line 2, likewise
            benchHours2: bench hours of a piece of line 2, likewise
            contribution2: what one sale of line 2 leaves for the pool
            units2: pieces of line 2
            lineHours2: bench hours of line 2
            lineRevenue2: what buyers pay for line 2
            lineProceeds2: what reaches the studio for line 2
            lineMaterials2: materials of line 2
            lineContribution2: what line 2 leaves for the pool
            perBenchHour2: the same for each of its bench hours
            profitAskedFor: the profit before tax that is asked for, a wanted surplus included
            benchMustEarnWithSurplus: what bench time must recover, a wanted surplus included
            contribution: what all lines leave for the pool
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
            Workings.Of(YearPlan.Of(s_year, [new PlannedLine(check, 10), new PlannedLine(check, 5)], null, 0).Value));
    }

    [Fact]
    public void A_mix_in_words()
    {
        var sale = s_prices.Check(58).Value.Sale;
        var mix = MixBreakEven.Of(s_year, [new MixLine(s_piece, sale, 1), new MixLine(s_piece, sale, 2)], null).Value;
        Says(
            """
            net1: reaches the studio for a piece of line 1; the workings of its price check say how, here with 12 decimals
            revenueAPiece1: what buyers pay before sales tax for a piece of line 1, likewise
            materials1: materials of a piece of line 1, likewise
            secondsCredit1: what seconds bring for a piece of line 1, likewise
            benchHours1: bench hours of a piece of line 1, likewise
            contribution1: what one sale of line 1 leaves for the pool
            net2: reaches the studio for a piece of line 2; the workings of its price check say how, here with 12 decimals
            revenueAPiece2: what buyers pay before sales tax for a piece of line 2, likewise
            materials2: materials of a piece of line 2, likewise
            secondsCredit2: what seconds bring for a piece of line 2, likewise
            benchHours2: bench hours of a piece of line 2, likewise
            contribution2: what one sale of line 2 leaves for the pool
            profitAskedFor: the profit before tax that is asked for, a wanted surplus included
            benchMustEarnWithSurplus: what bench time must recover, a wanted surplus included
            contributionPerMixUnit: what one unit of the mix leaves for the pool
            mixUnits: units of the mix that carry the pool
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

    [Fact]
    public void A_chain_in_words_forward_and_back()
    {
        // 50.00 doubled is 100.00; with a margin of 0.2 it is 125.00, and 1.2 times that 150.00, which with 20 % tax in it is 180.00.
        ChainStep[] steps = [new() { Name = "dealer", Markup = 1 }, new() { Margin = 0.2m }, new() { Name = "shop", Multiple = 1.2m }];
        var included = new SalesTax { Rate = 0.2m, Included = true };
        Says(
            """
            cost: what the first hand pays = 50
            price1: what hand 1 (dealer) asks, before tax = cost * (1 + 1)
            price2: what hand 2 asks, before tax = price1 / (1 - 0.2)
            price3: what hand 3 (shop) asks, before tax = price2 * 1.2
            profit1: profit of hand 1 (dealer) = price1 - cost
            markup1: profit over cost of hand 1 (dealer) = profit1 / cost
            margin1: profit over price of hand 1 (dealer) = profit1 / price1
            profit2: profit of hand 2 = price2 - price1
            markup2: profit over cost of hand 2 = profit2 / price1
            margin2: profit over price of hand 2 = profit2 / price2
            profit3: profit of hand 3 (shop) = price3 - price2
            markup3: profit over cost of hand 3 (shop) = profit3 / price2
            margin3: profit over price of hand 3 (shop) = profit3 / price3
            price: what the last hand asks, before tax = price3
            profit: profit of the whole way = price - cost
            markup: profit over cost of the whole way = profit / cost
            margin: profit over price of the whole way = profit / price
            priceWithTax: what the buyer pays, tax included = price * (1 + 0.2)
            """,
            Workings.Of(new MarkupValues(50, null, null, null, null), included, steps));
        Says(
            """
            price: what the last hand asks, before tax = 180 / (1 + 0.2)
            price3: the same, of hand 3 (shop) = price
            price2: what hand 2 asks, which hand 3 pays = price3 / 1.2
            price1: what hand 1 (dealer) asks, which hand 2 pays = price2 * (1 - 0.2)
            cost: what the first hand pays = price1 / (1 + 1)
            """,
            Workings.Of(new MarkupValues(null, 180, null, null, null), included, steps).Take(5));
    }

    [Fact]
    public void A_levy_that_is_charged_on_other_income_too_takes_off_what_that_alone_would_pay()
    {
        // 20,000 earned elsewhere, of which 5,000 are free: 10 % up to 10,000, 20 % beyond. Alone it pays 1,000 + 1,000; with a profit of p it pays that and 20 % of p.
        var rules = new TaxRules { Kind = TaxKind.Levies, Levies = [new Levy { OtherBase = 20000, Allowance = 5000, Bands = [new Band { UpTo = 10000, Rate = 0.1m }, new Band { Rate = 0.2m }] }] };
        var year = StudioYear.Of(Plain with { Tax = rules, Household = [new HouseholdLine { Amount = 8000, Per = Per.Year }] }, default).Value;
        Assert.Equal((10000m, 2000m), (year.Profit, year.TaxOnProfit));
        var lines = Workings.Of(year).ToList();
        Assert.Equal(
            "0.1 * max(0, min(base1, 10000) - 0) + 0.2 * max(0, base1 - 10000) - (0.1 * max(0, min(max(0, 20000 - 5000), 10000) - 0) + 0.2 * max(0, max(0, 20000 - 5000) - 10000))",
            lines.Single(line => line.Symbol == "levy1").Formula);
        Assert.Equal(2000m, Redone.From(lines)["tax"]);
    }

    [Fact]
    public void What_is_not_there_is_not_reckoned_with()
    {
        // A household line without a business share, income that takes no days, a levy that no other deducts.
        var levy = new Levy { Bands = [new Band { Rate = 0.1m }] };
        var year = StudioYear.Of(
            Plain with
            {
                Household = [new HouseholdLine { Amount = 100, Per = Per.Month }, new HouseholdLine { Amount = 10, Per = Per.Month, BusinessShare = 0.5m }],
                OtherIncome = [new OtherIncome { Amount = 5, Per = Per.Year, Kind = IncomeKind.Net }, new OtherIncome { Amount = 5, Per = Per.Year, Kind = IncomeKind.Net, DaysPerYear = 3 }],
                Tax = new TaxRules { Kind = TaxKind.Levies, Levies = [levy, levy with { DeductibleShare = 0.5m }, levy] },
            },
            default).Value;
        string FormulaOf(string symbol) => Workings.Of(year).Single(line => line.Symbol == symbol).Formula;
        Assert.Equal("10 * 12 * 0.5", FormulaOf("businessShares"));
        Assert.Equal("50 * 5 - 3", FormulaOf("workdays"));
        Assert.Equal("max(0, 1 * profitBeforeTax + 0 - 0 - 0.5 * levy2)", FormulaOf("base3"));
        Assert.Equal("0.1 * max(0, base1 - 0)", FormulaOf("levy1"));
    }

    [Fact]
    public void Discounts_start_from_what_was_given()
    {
        // 140 less 20 % less 15 % is 95.20.
        var series = new DiscountSeries([0.2m, 0.15m]);
        string[] both = ["factor = (1 - 0.2) * (1 - 0.15)", "single = 1 - factor"];
        Assert.Equal([.. both, "list = 140", "net = list * factor", "discount = list - net"], Workings.Of(series, series.FromList(140), fromNet: false).Select(line => $"{line.Symbol} = {line.Formula}"));
        Assert.Equal([.. both, "net = 95.2", "list = net / factor", "discount = list - net"], Workings.Of(series, series.FromNet(95.2m).Value, fromNet: true).Select(line => $"{line.Symbol} = {line.Formula}"));
    }

    private static CostProfile Plain { get; } = new() { Currency = "USD", Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 } };

    private static void Says(string expected, IEnumerable<Working> lines) =>
        Assert.Equal(expected.Split('\n'), lines.Select(line => expected.Contains(" = ", StringComparison.Ordinal) ? $"{line.Symbol}: {line.Label} = {line.Formula}" : $"{line.Symbol}: {line.Label}"));
}
