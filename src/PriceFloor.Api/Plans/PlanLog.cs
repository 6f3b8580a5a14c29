using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.LogLines;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Orders;
using PriceFloor.Storage;

namespace PriceFloor.Api.Plans;

/// <summary>What the log says of a plan's year: what was sold in it, and the finished pieces that lie ready.</summary>
internal sealed class PlanLog
{
    private readonly Catalogue _catalogue;
    private readonly PlanInQuestion _asked;
    private readonly LogPosition _position;
    private readonly List<MovementLine> _year;
    private readonly IReadOnlyDictionary<string, int> _ready;

    private PlanLog(Catalogue catalogue, PlanInQuestion asked, LogPosition position, List<MovementLine> year,
        IReadOnlyDictionary<string, int> ready) =>
            (_catalogue, _asked, _position, _year, _ready) = (catalogue, asked, position, year, ready);

    /// <summary>Whether the log says of any design of the plan what lies ready.</summary>
    public bool SaysWhatIsReady => _ready.Count > 0;

    /// <summary>How far the log had come.</summary>
    public string Basis => LogBasisAnswer.Of(_position).Log;

    /// <summary>Pieces that lie ready: as the log says, and of designs of which it says nothing those that the year began with.</summary>
    public IReadOnlyList<StockOfPieces> Stock =>
    [
        .. _asked.Months.Plan.Opening.Stock.Where(item => !_ready.ContainsKey(item.Sku)),
        .. _ready.OrderBy(item => item.Key, StringComparer.Ordinal).Select(item => new StockOfPieces { Sku = item.Key, Pieces = item.Value }),
    ];

    /// <param name="store">Where the log is.</param>
    /// <param name="catalogue">The documents as the caller sees them.</param>
    /// <param name="access">What the caller sees.</param>
    /// <param name="asked">The plan.</param>
    /// <param name="days">The last day that has passed, and the moment of which the log is asked; now if null.</param>
    public static async ValueTask<PlanLog> Of(Store store, Catalogue catalogue, ProfileAccess access, PlanInQuestion asked,
        (DateOnly Through, DateTimeOffset? AsOf) days)
    {
        var plan = asked.Months.Plan;
        HashSet<string> skus = [.. plan.Lines.Select(line => line.Sku), .. plan.Opening.Stock.Select(item => item.Sku)];
        return await store.ReadAsync(async snapshot =>
        {
            var end = await snapshot.LogPosition(days.AsOf is { } at ? Moment.Of(at) : null);
            if (end is { Movements: 0, Bench: 0 })
                return new PlanLog(catalogue, asked, end, [], new Dictionary<string, int>());
            var through = new LogQuestion { UpTo = end.Movements, To = days.Through.DayNumber };
            var ready = ReadyPieces.Of(
                [.. (await snapshot.Movements(through with { Designs = skus })).Select(StoredEntries.Of)],
                [.. (await snapshot.BenchEntries(through with { UpTo = end.Bench, Designs = skus })).Select(StoredEntries.Of)],
                [.. (await snapshot.LogSources()).Select(StoredEntries.Of)], KnownOf(catalogue, asked, skus), days.Through);
            var year = through with { From = asked.Months.Months[0].From.DayNumber, Designs = LogRequest.DesignsOf(catalogue, access) };
            return new PlanLog(catalogue, asked, end, await snapshot.Movements(year), ready);
        });
    }

    /// <summary>What was sold through the day, and the warning for pieces of which nothing can be calculated.</summary>
    public LoggedSales Sales()
    {
        var (sold, leftOut) = (new List<SoldSoFar>(), new List<string>());
        var pieces = 0;
        foreach (var sale in SoldOnChannel.Of(_year.Where(IsOnChannel).Select(StoredEntries.Of), ChannelOf))
            if (_catalogue.Design(sale.Sku) is not { } design)
                LeaveOut(sale.Sku, sale.Channel, sale.Pieces);
            else if (design.Sound?.Profile != _asked.Plan.Document.Profile)
                continue; // another studio's
            else if (IsInMoney(sale.Channel) && _catalogue.Floor(_asked.Profile, design).Found is { Floor.UnitCost: var piece })
                sold.Add(new SoldSoFar(sale.Sku, sale.Channel, sale.Pieces, sale.Net, piece.Materials, piece.SecondsCredit));
            else
                LeaveOut(sale.Sku, sale.Channel, sale.Pieces);
        foreach (var line in _year.Where(line => StoredLines.KindOf(line.What) == MovementKind.Sold && !IsOnChannel(line)))
            LeaveOut(line.Design!, line.Place ?? "", line.Pieces);
        return new LoggedSales(sold, [.. PlanWarnings.OfSalesLeftOut(pieces, leftOut.Distinct().ToList())]);

        void LeaveOut(string sku, string channel, int count)
        {
            pieces += count;
            leftOut.Add($"{sku} on {channel}");
        }
    }

    private static List<KnownDesign> KnownOf(Catalogue catalogue, PlanInQuestion asked, IEnumerable<string> skus) =>
        [.. skus.Select(sku => catalogue.Design(sku)).OfType<Stored<Design>>()
            .Select(design => (design.Key, catalogue.Floor(asked.Profile, design).Found)).Where(design => design.Found is not null)
            .Select(design => new KnownDesign(design.Key, design.Found!.Floor.UnitCost))];

    private Channel? ChannelOf(string key) => _catalogue.Channel(key)?.Sound;

    /// <summary>Whether its channel is stored, and sells in the same money as then.</summary>
    private bool IsOnChannel(MovementLine line) => line.Place is { } key && ChannelOf(key)?.Currency == line.Currency;

    private bool IsInMoney(string channel) => ChannelOf(channel)?.Currency == _asked.Months.Year.Currency.Code;
}

/// <summary>What was sold in a year so far.</summary>
/// <param name="Sold">By design and channel.</param>
/// <param name="Warnings">What is not in it.</param>
internal sealed record LoggedSales(IReadOnlyList<SoldSoFar> Sold, IReadOnlyList<Warning> Warnings);
