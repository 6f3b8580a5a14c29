using PriceFloor.Pricing.Tests.ExactReckoning;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>A studio and a plan of its year, drawn from a seed.</summary>
internal sealed class RandomPlan
{
    private static readonly string[] s_channels = ["x", "y", "z"];
    private static readonly string[] s_skus = ["a", "b"];
    private readonly Random _random;
    private readonly RandomStudio _studio;
    private readonly List<FloorPrice> _floors;
    private readonly List<SellingTerms> _channels;

    public RandomPlan(int seed)
    {
        (_random, _studio) = (new Random(seed), new RandomStudio(seed));
        Year = StudioYear.Of(_studio.Profile(), default).Value;
        _floors = [.. Enumerable.Range(0, 3).Select(_ => FloorPrice.Of(UnitCost.Of(_studio.Design(), Year).Value, null).Value)];
        _channels = [.. Enumerable.Range(0, 3).Select(_ => SellingTerms.Of(_studio.Channel()).Value)];
        Plan = Draw();
        Lines = [.. Plan.Lines.Select(line => new PlannedLine(
            ChannelPrices.Of(_floors[line.Sku[0] - 'a'], _channels[line.Channel[0] - 'x']).Value.Check(line.Price!.Value).Value, line.Units))];
    }

    public StudioYear Year { get; }

    public Plan Plan { get; }

    public IReadOnlyList<PlannedLine> Lines { get; }

    public YearByMonth ByMonth(Plan? other = null) => YearByMonth.Of(Year, other ?? Plan, Lines).Value;

    private bool Rarely => _random.Next(3) == 0;

    private Plan Draw()
    {
        var steady = Rarely;
        return new Plan
        {
            Profile = "main",
            Lines = [.. Enumerable.Range(0, 1 + _random.Next(6)).Select(_ => new PlanLine
            {
                Sku = $"{(char)('a' + _random.Next(3))}",
                Channel = $"{(char)('x' + _random.Next(3))}",
                Price = _random.Next(100, 20_000) / 100m,
                Units = Rarely ? 0 : _random.Next(300),
                Season = Rarely ? null : _random.Next(2) == 0 ? "one" : "two",
            })],
            Seasons = new Dictionary<string, IReadOnlyList<decimal>> { ["one"] = Weights(), ["two"] = Weights() },
            Work = Rarely ? null : Weights(),
            Terms = [.. s_channels.Where(_ => Rarely).Select(channel => new PlanTerms
            {
                Channel = channel,
                DepositShare = _random.Next(101) / 100m,
                DepositMonthsBefore = _random.Next(12),
                PaidAfterMonths = _random.Next(12),
                RemittedByChannel = Rarely,
            })],
            PaidIn = Year.Profile.Expenses.Count > 0 && Rarely ? [new PaidIn { At = "/expenses/0", Months = [2, 7, 11] }] : [],
            TaxPaid = [.. Enumerable.Range(1, 12).Where(_ => Rarely).Select(month => _random.Next(2) == 0
                ? new TaxPayment { Month = month, Share = _random.Next(100) / 100m }
                : new TaxPayment { Month = month, Amount = _random.Next(1_000_000) / 100m })],
            Opening = new Opening
            {
                Cash = _random.Next(-500_000, 500_000) / 100m,
                TaxSetAside = _random.Next(100_000) / 100m,
                SalesTaxHeld = _random.Next(10_000) / 100m,
                OwedToUs = steady || !Rarely ? [] : [new OwedToUs { Month = 1 + _random.Next(12), Amount = _random.Next(100_000) / 100m }],
                Stock = steady ? [] : [.. s_skus.Where(_ => Rarely).Select(sku =>
                    new StockOfPieces { Sku = sku, Pieces = _random.Next(200) })],
            },
            SalesTaxPaid = [.. Enumerable.Range(1, 12).Where(_ => Rarely).Select(month => (decimal)month)],
            HoursKeptBack = Rarely ? _random.Next(200) : 0,
            Steady = steady,
        };
    }

    private decimal[] Weights()
    {
        decimal[] weights = [.. Enumerable.Range(0, 12).Select(_ => Rarely ? 0m : _random.Next(1, 300) / 10m)];
        weights[_random.Next(12)] += 1;
        return weights;
    }
}
