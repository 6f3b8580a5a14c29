using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

public sealed class PricePartsTests
{
    private static readonly CostProfile s_profile = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 24000, Per = Per.Year }],
        Household = [new HouseholdLine { Amount = 3000, Per = Per.Month }],
    };

    private static readonly Design s_design = new() { Profile = "main", Making = new Making { PiecesPerDay = 4 } };

    private static readonly Channel s_web = new()
    {
        Sells = Sells.Retail,
        Currency = "USD",
        Fees = [new Fee { Rate = 0.024m, Fixed = 0.25m, Of = FeeBase.Paid }],
    };

    [Fact]
    public void A_price_below_the_floor_is_short_in_its_last_part()
    {
        // 58.00 x 2.4 % + 0.25 = 1.642. The floor of 60.00 is 24 parts expenses and 36 parts household of 60; 56.358 - 60.00 = -3.642.
        var parts = Of(s_profile, s_design, s_web, 58);
        Assert.Equal(
            [(PricePart.Fees, 1.64m), (PricePart.Expenses, 24m), (PricePart.Household, 36m), (PricePart.AboveFloor, -3.64m)], NotNothing(parts));
    }

    [Fact]
    public void Tax_inside_the_price_shipping_and_the_gallery_are_taken_first()
    {
        // Two pieces at 120 and 12 for shipping, 20 % inside: the buyer pays 126 a piece, 21 of it tax (20 of the price, 1 of the shipping).
        // 100 before tax: 30 to the gallery; shipping 8 / 2 = 4; packing 1 + 60 / 20 = 4. 105 - 30 - 4 - 4 = 67 reach the studio: 7 above.
        var channel = new Channel
        {
            Sells = Sells.Retail,
            Currency = "USD",
            PiecesPerOrder = 2,
            SalesTax = new SalesTax { Rate = 0.2m, Included = true },
            Shipping = new Shipping { Charged = 12, Cost = 8 },
            ShopShare = 0.3m,
            CostPerPiece = 1,
            Stall = new Stall { Cost = 60, Pieces = 20 },
        };
        var parts = Of(s_profile, s_design, channel, 120);
        Assert.Equal(126m, parts.Paid);
        Assert.Equal([(PricePart.SalesTax, 21m), (PricePart.ShopShare, 30m), (PricePart.Shipping, 4m), (PricePart.PackingAndStall, 4m),
            (PricePart.Expenses, 24m), (PricePart.Household, 36m), (PricePart.AboveFloor, 7m)], NotNothing(parts));
    }

    [Fact]
    public void Pieces_that_come_back_are_paid_for_by_those_that_stay()
    {
        // Kept 80 - 4 = 76. A fifth comes back and costs 4 + 6 = 10; half of it sells again: (0.8 x 76 - 0.2 x 10) / 0.9 = 65.333; 76 - 65.333.
        var channel = new Channel
        {
            Sells = Sells.Retail,
            Currency = "USD",
            Shipping = new Shipping { Cost = 4, ReturnCost = 6 },
            Returns = new Returns { Share = 0.2m, ResaleShare = 0.5m },
        };
        Assert.Equal(10.67m, Of(s_profile, s_design, channel, 80).Rounded.Single(part => part.Part == PricePart.Returns).Amount);
    }

    [Fact]
    public void What_seconds_bring_pays_materials_first_and_bench_time_with_the_rest()
    {
        // Half the starts are lost: 2 starts, 4 h and 120.00 of bench time a good piece. One second at 10.00 for each good piece.
        var lossy = s_design with { Making = new Making { PiecesPerDay = 4, GoodShare = 0.5m }, Seconds = new Seconds { Share = 1, Price = 10 } };
        var dear = Of(s_profile, lossy with { Materials = [new MaterialLine { Amount = 8 }] }, s_web, 150); // 2 x 8.00 - 10.00
        Assert.Equal((6m, 120m), (dear.ForMaterials, dear.ForBenchTime));
        var cheap = Of(s_profile, lossy with { Materials = [new MaterialLine { Amount = 3 }] }, s_web, 150); // 2 x 3.00 - 10.00 = -4.00
        Assert.Equal((0m, 116m), (cheap.ForMaterials, cheap.ForBenchTime));
    }

    [Fact]
    public void Tax_is_a_part_of_its_own()
    {
        // 36,000 to live on at a flat 20 % is a profit of 45,000: 9,000 tax. 69,000 over 1,000 pieces: 24.00, 9.00, 36.00.
        var taxed = s_profile with { Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m } };
        Assert.Equal([(PricePart.Expenses, 24m), (PricePart.Tax, 9m), (PricePart.Household, 36m), (PricePart.AboveFloor, 31m)],
            NotNothing(Of(taxed, s_design, s_web with { Fees = [] }, 100)));
    }

    [Fact]
    public void Other_taxable_income_lightens_all_three_in_proportion()
    {
        // 6,900 earned elsewhere is a tenth of 69,000: 21.60, 8.10 and 32.40 are left of 24.00, 9.00 and 36.00.
        var taxed = s_profile with
        {
            Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m },
            OtherIncome = [new OtherIncome { Amount = 6900, Per = Per.Year, Kind = IncomeKind.Taxable }],
        };
        Assert.Equal([(PricePart.Expenses, 21.6m), (PricePart.Tax, 8.1m), (PricePart.Household, 32.4m), (PricePart.AboveFloor, 37.9m)],
            NotNothing(Of(taxed, s_design, s_web with { Fees = [] }, 100)));
    }

    [Fact]
    public void A_year_that_owes_nothing_leaves_the_whole_price()
    {
        var free = s_profile with { Expenses = [], Household = [] };
        Assert.Equal([(PricePart.AboveFloor, 10m)], NotNothing(Of(free, s_design, s_web with { Fees = [] }, 10)));
    }

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void The_parts_add_up_to_what_the_buyer_pays_rounded_or_not(NonNegativeInt seed, PositiveInt cents)
    {
        var studio = new RandomStudio(seed.Get);
        var parts = Of(studio.Profile(), studio.Design(), studio.Channel(), cents.Get % 90_000 / 100m + 0.01m);
        Near.Equal(parts.Paid, parts.Parts.Sum(part => part.Amount));
        Assert.Equal(Rounding.Nearest(parts.Paid, 2), parts.Rounded.Sum(part => part.Amount));
        Assert.Equal(Enum.GetValues<PricePart>(), parts.Rounded.Select(part => part.Part));
        Assert.All(parts.Parts.Zip(parts.Rounded), pair => Assert.InRange(pair.Second.Amount - pair.First.Amount, -0.015m, 0.015m));
        Assert.All(parts.Parts.Where(part =>
            part.Part is not (PricePart.AboveFloor or PricePart.Returns or PricePart.Losses or PricePart.Tax or PricePart.Household)),
            part => Assert.True(part.Amount >= 0, part.ToString()));
    }

    [Property(MaxTest = 100, EndSize = 1_000_000)]
    public void Every_part_can_be_redone_by_hand(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var parts = Of(studio.Profile(), studio.Design(), studio.Channel(), 41.37m);
        var floor = parts.Check.Prices.Floor;
        var redone = Redone.From(Workings.Of(floor.UnitCost.Year).Concat(Workings.Of(floor.UnitCost)).Concat(Workings.Of(floor))
            .Concat(Workings.Of(parts.Check.Prices)).Concat(Workings.Of(parts.Check.Sale)).Concat(Workings.Of(parts.Check))
            .Concat(Workings.Of(parts)));
        Near.Equal(redone["paidAPiece"], redone["salesTaxPart"] + redone["shopPart"] + redone["feesPart"] + redone["shippingPart"]
            + redone["perPieceCosts"] + redone.GetValueOrDefault("discountPart") + redone.GetValueOrDefault("lossesPart")
            + redone["returnsPart"] + redone["forMaterials"] + redone["expensesPart"] + redone["taxPart"] + redone["householdPart"]
            + redone["aboveFloor"]);
    }

    private static PriceParts Of(CostProfile profile, Design design, Channel channel, decimal price)
    {
        var floor = FloorPrice.Of(UnitCost.Of(design, StudioYear.Of(profile, default).Value).Value, null).Value;
        return PriceParts.Of(ChannelPrices.Of(floor, SellingTerms.Of(channel).Value).Value.Check(price).Value).Value;
    }

    private static IEnumerable<(PricePart, decimal)> NotNothing(PriceParts parts) => parts.Rounded.Where(part => part.Amount != 0);
}
