using PriceFloor.Pricing.Tests.Planning;
using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>
/// Worked examples as introductory textbooks tell them. All are from memory: the figures are as remembered, unchecked against a page, so the
/// arithmetic beside each stands by itself.
/// </summary>
public sealed class TextbookExamples
{
    /// <summary>From memory: managerial accounting, cost-volume-profit, the maker of loudspeakers.</summary>
    [Fact]
    public void Loudspeakers_break_even_and_reach_a_target_profit()
    {
        // 250 - 150 = 100 a piece; 35,000 / 100 = 350 at 250 = 87,500. A profit of 40,000: 75,000 / 100 = 750.
        var line = Line(35_000, 250, 150);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        Assert.Equal((100m, 350m, 87_500m), (found.Contribution, found.Units, found.Revenue));
        Assert.Equal([750m], UnitsWith(line, 40_000, SurplusTax.Before));
    }

    /// <summary>From memory: managerial accounting, margin of safety and operating leverage, the same maker of loudspeakers.</summary>
    [Fact]
    public void Four_hundred_loudspeakers_are_an_eighth_above_break_even()
    {
        // (400 - 350) / 400 = 0.125, in money 12,500 of 100,000. 400 x 100 = 40,000, less 35,000 = 5,000: 40,000 / 5,000 = 8.
        var line = Line(35_000, 250, 150);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        Assert.Equal((0.125m, 8m), (found.At(400).Value.MarginOfSafety, found.At(400).Value.OperatingLeverage));
        Assert.Equal(12_500m, 400 * line.Sale.BeforeTax - found.Revenue);
    }

    /// <summary>From memory: cost accounting, cost-volume-profit, the seller of test-preparation software at a fair.</summary>
    [Fact]
    public void A_fair_breaks_even_and_reaches_an_income_before_and_after_tax()
    {
        // 200 - 120 = 80; 2,000 / 80 = 25. 1,200 before tax: 3,200 / 80 = 40. 960 after 40 % tax is 1,600 before: 3,600 / 80 = 45.
        var line = Line(2000, 200, 120, taxRate: 0.4m);
        Assert.Equal(25m, BreakEven.Of(line.UnitCost, line.Sale).Value.Units);
        Assert.Equal([40m], UnitsWith(line, 1200, SurplusTax.Before));
        Assert.Equal([45m], UnitsWith(line, 960, SurplusTax.After));
    }

    /// <summary>From memory: cost accounting, margin of safety and degree of operating leverage, the same seller at a fair, 40 packages.</summary>
    [Fact]
    public void Forty_packages_have_a_margin_of_safety_and_a_leverage()
    {
        // (40 - 25) / 40 = 0.375. 40 x 80 = 3,200, less 2,000 = 1,200: 3,200 / 1,200 = 2.67.
        var line = Line(2000, 200, 120);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        Assert.Equal((0.375m, 2.67m), (found.At(40).Value.MarginOfSafety, Rounding.Nearest(found.At(40).Value.OperatingLeverage!.Value, 2)));
        Assert.Null(found.At(25).Value.OperatingLeverage); // at break-even there is no income to divide by
    }

    /// <summary>From memory: managerial accounting for undergraduates, cost-volume-profit, the maker of cameras.</summary>
    [Fact]
    public void Cameras_break_even_and_keep_a_third_as_margin_of_safety()
    {
        // 500 - 300 = 200; 200,000 / 200 = 1,000 at 500 = 500,000. 120,000 wanted: 320,000 / 200 = 1,600. Sales of 750,000 are 1,500: 500 / 1,500.
        var line = Line(200_000, 500, 300);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        Assert.Equal((1000m, 500_000m), (found.Units, found.Revenue));
        Assert.Equal([1600m], UnitsWith(line, 120_000, SurplusTax.Before));
        Assert.Equal(0.333333m, Rounding.Nearest(found.At(1500).Value.MarginOfSafety, 6));
    }

    /// <summary>From memory: managerial accounting, cost-volume-profit with income tax, the theatre that sells tickets.</summary>
    [Fact]
    public void A_theatre_sells_more_tickets_for_the_same_profit_after_tax()
    {
        // 16 - 10 = 6; 48,000 / 6 = 8,000. 3,600 before tax: 51,600 / 6 = 8,600. 3,600 after 40 %: 6,000 before: 54,000 / 6 = 9,000.
        var line = Line(48_000, 16, 10, taxRate: 0.4m);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        Assert.Equal((8000m, 128_000m), (found.Units, found.Revenue));
        Assert.Equal([8600m], UnitsWith(line, 3600, SurplusTax.Before));
        Assert.Equal([9000m], UnitsWith(line, 3600, SurplusTax.After));
        Assert.Equal(9m, found.At(9000).Value.OperatingLeverage); // 54,000 / (54,000 - 48,000)
    }

    /// <summary>From memory: an open textbook of managerial accounting, break-even point, the maker of bird baths.</summary>
    [Fact]
    public void Bird_baths_break_even()
    {
        // 100 - 20 = 80; 18,000 / 80 = 225 at 100 = 22,500.
        var line = Line(18_000, 100, 20);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        Assert.Equal((80m, 225m, 22_500m), (found.Contribution, found.Units, found.Revenue));
    }

    /// <summary>From memory: marketing management, markup pricing and break-even, the maker of toasters.</summary>
    [Fact]
    public void Toasters_are_marked_up_on_the_price_and_break_even()
    {
        // 10 + 300,000 / 50,000 = 16 each; 20 % of the price: 16 / 0.8 = 20. 300,000 / (20 - 10) = 30,000.
        var markup = Markup.Of(new MarkupValues(10 + 300_000m / 50_000, null, null, 0.2m, null)).Value;
        Assert.Equal(20m, markup.Price);
        var line = Line(300_000, markup.Price, 10);
        Assert.Equal(30_000m, BreakEven.Of(line.UnitCost, line.Sale).Value.Units);
    }

    /// <summary>
    /// From memory: managerial accounting, sales mix, two travel films that sell 20,000 and 80,000 in money; then the other way about.
    /// </summary>
    [Theory]
    [InlineData(200, 800, 60_000)] // 200 x 25 + 800 x 50 = 45,000 of 100,000; 27,000 / 0.45
    [InlineData(800, 200, 90_000)] // 800 x 25 + 200 x 50 = 30,000 of 100,000; 27,000 / 0.30
    public void A_shift_to_the_poorer_film_raises_the_break_even(int poorer, int richer, int revenue)
    {
        var year = BreakEvenTests.Year(27_000);
        var mix = MixBreakEven.Of(year, [BreakEvenTests.Line(year, 100, 75, poorer), BreakEvenTests.Line(year, 100, 50, richer)], null).Value;
        Assert.Equal(revenue, mix.Revenue);
    }

    /// <summary>From memory: cost accounting, sales mix, two packages of test-preparation software sold 3 to 2.</summary>
    [Fact]
    public void Two_packages_break_even_in_bundles()
    {
        // 3 x (200 - 120) + 2 x (100 - 70) = 300 a bundle; 4,500 / 300 = 15: 45 and 30, for 9,000 + 3,000.
        var year = BreakEvenTests.Year(4500);
        var mix = MixBreakEven.Of(year, [BreakEvenTests.Line(year, 200, 120, 3), BreakEvenTests.Line(year, 100, 70, 2)], null).Value;
        Assert.Equal((300m, 15m, 12_000m), (mix.ContributionPerMixUnit, mix.MixUnits, mix.Revenue));
        Assert.Equal([45m, 30m], mix.Units);
    }

    /// <summary>From memory: managerial accounting for undergraduates, sales mix in units, cameras and screens 3 to 1.</summary>
    [Fact]
    public void Cameras_and_screens_break_even_on_their_weighted_average()
    {
        // 0.75 x (500 - 300) + 0.25 x (1,000 - 500) = 275 on average; 275,000 / 275 = 1,000: 750 and 250.
        var year = BreakEvenTests.Year(275_000);
        var mix = MixBreakEven.Of(year, [BreakEvenTests.Line(year, 500, 300, 0.75m), BreakEvenTests.Line(year, 1000, 500, 0.25m)], null).Value;
        Assert.Equal((275m, 1000m), (mix.ContributionPerMixUnit, mix.MixUnits));
        Assert.Equal([750m, 250m], mix.Units);
    }

    /// <summary>From memory: managerial accounting for undergraduates, sales mix in money, the garden supplier.</summary>
    [Fact]
    public void Plants_for_indoors_and_outdoors_break_even_on_their_weighted_ratio()
    {
        // A fifth at 40 %, four fifths at 30 %: 0.08 + 0.24 = 0.32; 300,000 / 0.32 = 937,500: 187,500 and 750,000. At 100 a piece 1,875 and 7,500.
        var year = BreakEvenTests.Year(300_000);
        var mix = MixBreakEven.Of(year, [BreakEvenTests.Line(year, 100, 60, 2), BreakEvenTests.Line(year, 100, 70, 8)], null).Value;
        Assert.Equal(937_500m, mix.Revenue);
        Assert.Equal([1875m, 7500m], mix.Units);
    }

    /// <summary>From memory: business mathematics, markup, a jacket bought at 18 and sold at 23.</summary>
    [Fact]
    public void A_jacket_has_one_profit_and_two_percentages()
    {
        // 5 / 18 = 27.78 % of the cost, 5 / 23 = 21.74 % of the price.
        var jacket = Markup.Of(new MarkupValues(18, 23, null, null, null)).Value;
        Assert.Equal((5m, 0.2778m, 0.2174m), (jacket.Profit, Rounding.Nearest(jacket.OnCost!.Value, 4), Rounding.Nearest(jacket.OnPrice!.Value, 4)));
    }

    /// <summary>From memory: business mathematics, markup on cost, a lamp of 100 with 65 %; something sold at 50 with 40 %.</summary>
    [Fact]
    public void A_markup_on_cost_leads_both_ways()
    {
        Assert.Equal(165m, Markup.Of(new MarkupValues(100, null, 0.65m, null, null)).Value.Price); // 100 x 1.65
        Assert.Equal(35.71m, Rounding.Nearest(Markup.Of(new MarkupValues(null, 50, 0.4m, null, null)).Value.Cost, 2)); // 50 / 1.4
    }

    /// <summary>From memory: business mathematics, markup on the selling price, the same lamp with 65 %; something sold at 50 with 40 %.</summary>
    [Fact]
    public void A_markup_on_the_price_leads_both_ways()
    {
        Assert.Equal(285.71m, Rounding.Nearest(Markup.Of(new MarkupValues(100, null, null, 0.65m, null)).Value.Price, 2)); // 100 / 0.35
        Assert.Equal(30m, Markup.Of(new MarkupValues(null, 50, null, 0.4m, null)).Value.Cost); // 50 x 0.6
    }

    /// <summary>From memory: retail mathematics, the table that turns markup on cost into markup on the price.</summary>
    [Theory]
    [InlineData("0.25", "0.2")] // 25 / 125
    [InlineData("0.5", "0.333333")] // 50 / 150
    [InlineData("1", "0.5")] // 100 / 200
    [InlineData("3", "0.75")] // 300 / 400
    public void A_markup_on_cost_is_a_smaller_one_on_the_price(string onCost, string onPrice)
    {
        var known = decimal.Parse(onCost, System.Globalization.CultureInfo.InvariantCulture);
        var found = Markup.Of(new MarkupValues(80, null, known, null, null)).Value;
        Assert.Equal(onPrice, Rounding.Trim(Rounding.Nearest(found.OnPrice!.Value, 6)).ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    /// <summary>From memory: business mathematics, series of trade discounts, a list price of 1,000 less 20, 10 and 5 %.</summary>
    [Fact]
    public void A_thousand_less_three_discounts_is_684()
    {
        // 0.8 x 0.9 x 0.95 = 0.684; one discount of 31.6 %.
        var series = new DiscountSeries([0.20m, 0.10m, 0.05m]);
        Assert.Equal((684m, 316m, 0.316m), (series.FromList(1000).Net, series.FromList(1000).Discount, series.Single));
        Assert.Equal(1000m, series.FromNet(684).Value.List);
    }

    /// <summary>From memory: business mathematics, single discount equivalents of common series.</summary>
    [Theory]
    [InlineData("0.52", "0.4", "0.2")] // 0.6 x 0.8 = 0.48
    [InlineData("0.352", "0.2", "0.1", "0.1")] // 0.8 x 0.9 x 0.9 = 0.648
    [InlineData("0.28", "0.2", "0.1")] // 0.8 x 0.9 = 0.72
    public void Discounts_do_not_add_up(string single, params string[] rates) =>
        Assert.Equal(decimal.Parse(single, System.Globalization.CultureInfo.InvariantCulture), Rounding.Trim(
            new DiscountSeries([.. rates.Select(rate => decimal.Parse(rate, System.Globalization.CultureInfo.InvariantCulture))]).Single));

    /// <summary>
    /// From memory: principles of marketing, markups along a channel of wholesaler and retailer; the method is the books', the figures are ours.
    /// </summary>
    [Fact]
    public void Margins_along_a_channel_lead_back_from_the_shelf()
    {
        // A shelf price of 20.00: the retailer's margin of 40 % leaves 12.00, the wholesaler's 25 % leaves the maker 9.00; together 55 %, not 65 %.
        var hands = MarkupChain.BackFrom(20, [new ChainStep { Margin = 0.25m }, new ChainStep { Margin = 0.4m }]).Value;
        Assert.Equal([9m, 12m], hands.Select(hand => hand.Cost));
        Assert.Equal(0.55m, MarkupChain.AsOneStep(hands).Value.OnPrice);
    }

    private static MixLine Line(decimal fixedCost, decimal price, decimal variableCost, decimal taxRate = 0) =>
        BreakEvenTests.Line(StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = fixedCost, Per = Per.Year }],
            Tax = new TaxRules { Kind = TaxKind.Flat, Rate = taxRate },
        }, default).Value, price, variableCost, 1);

    private static IReadOnlyList<decimal> UnitsWith(MixLine line, decimal surplus, SurplusTax tax) =>
        MixBreakEven.Of(line.UnitCost.Year, [line], new Surplus { Amount = surplus, Tax = tax }).Value.Units;
}
