using System.Collections.Concurrent;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Plans;
using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>
/// A plan in every draw. Its names are found once; what a draw does not change, such as the sales on a channel that nobody doubts, is computed once
/// too.
/// </summary>
internal sealed class DrawnPlan
{
    private const int MostKept = 100_000;

    private readonly Stored<Plan> _plan;
    private readonly PlannedPiece[] _pieces;
    private readonly int[] _pieceOf;
    private readonly SoldOn[] _sold;
    private readonly StudioYear _likelyYear;
    private readonly YearByMonth _likely;
    private readonly DueLine[] _dues;
    private readonly bool _namesByAlias;
    private readonly ConcurrentDictionary<decimal, decimal[]> _nets = new();

    private DrawnPlan(Stored<Plan> plan, YearByMonth months, ChangedDocuments documents, WholeCatalogue catalogue, StudioYear year)
    {
        (_plan, _likely, _likelyYear) = (plan, months, year);
        var likely = months.Plan;
        _pieces = [.. likely.Lines.Select(line => catalogue.DesignNamed(line.Sku)!).DistinctBy(design => design.Key)
            .Select(design => new PlannedPiece(design, documents, year))];
        _pieceOf = [.. likely.Lines.Select(line => Array.FindIndex(_pieces, piece => piece.Key == catalogue.DesignNamed(line.Sku)!.Key))];
        _dues = [.. months.Dues];
        _namesByAlias = !plan.Document.Lines.Select(line => line.Sku).SequenceEqual(likely.Lines.Select(line => line.Sku))
            || !plan.Document.Opening.Stock.Select(item => item.Sku).SequenceEqual(likely.Opening.Stock.Select(item => item.Sku));
        _sold = [.. likely.Lines.Select((line, i) => new SoldOn(line, _pieces[_pieceOf[i]].Key, documents, catalogue))];
    }

    /// <summary>How many lines it has.</summary>
    public int Lines => _sold.Length;

    /// <summary>The plan of a question, which has an answer at the likely values; else why it has none.</summary>
    public static Outcome<DrawnPlan> Of(ChangeScope scope, ChangedDocuments likely, StudioYear year)
    {
        var catalogue = likely.All.Count == 0 ? scope.Catalogue : scope.Catalogue.Changed(likely.All);
        var plan = catalogue.Plan(scope.Plan!.Key)!;
        var asked = PlanInQuestion.Of(catalogue, plan, anyDecimals: true);
        return asked.Found is { } found
            ? new DrawnPlan(scope.Plan, found.Months, likely, scope.Catalogue, year)
            : asked.Faults.ToList();
    }

    /// <summary>The plan in a draw; null if it has no answer there.</summary>
    /// <param name="documents">The draw's documents.</param>
    /// <param name="year">The draw's year.</param>
    /// <param name="line">The line that is a decision; null if none is.</param>
    public PlanDraw? Of(ChangedDocuments documents, StudioYear year, int? line)
    {
        var plan = WithKeys(documents.Find<Plan>(Kinds.Plan, _plan.Key) ?? _plan.Document);
        var pieces = new UnitCost[_pieces.Length];
        for (var i = 0; i < pieces.Length; i++)
            if (_pieces[i].In(documents, year, ReferenceEquals(year, _likelyYear)) is { } piece)
                pieces[i] = piece;
            else
                return null;
        var lines = new PlannedLine[_sold.Length];
        for (var i = 0; i < lines.Length; i++)
            if (_sold[i].In(documents, plan.Lines[i]) is { } sale)
                lines[i] = new PlannedLine(pieces[_pieceOf[i]], sale, plan.Lines[i].Units);
            else
                return null;
        return MonthsOf(year, plan, lines) is not { } months ? null : new PlanDraw(
            months.Totals.SurplusBeforeTax, months.Totals.Closes, months.Totals.WithinHours, months.Cash,
            months.Totals.Closes ? 0 : CommonRise.Of(share => LeftAt(lines, share), year.BenchMustEarn),
            line is { } one ? GainOf(lines[one]) : null);
    }

    /// <summary>
    /// Ranges change amounts and no lines, so each line is due when it is due at the likely values, unless these months are themselves drawn.
    /// </summary>
    private LowestCash? MonthsOf(StudioYear year, Plan plan, PlannedLine[] lines) =>
        DuesOf(year, plan) is { } dues ? _likely.LowestCashWith(year, plan, lines, dues).Found : null;

    private IReadOnlyList<DueLine>? DuesOf(StudioYear year, Plan plan) => !ReferenceEquals(plan.PaidIn, _likely.Plan.PaidIn)
        ? DueLine.Of(year.Profile, plan.PaidIn).Found
        : ReferenceEquals(year, _likely.Year) ? _likely.Dues : Array.ConvertAll(_dues, due => due.In(year.Profile));

    /// <summary>A plan may name designs by aliases; ranges change amounts and no names, so their keys are those of the likely plan.</summary>
    private Plan WithKeys(Plan drawn) => !_namesByAlias ? drawn : drawn with
    {
        Lines = [.. drawn.Lines.Select((line, i) => line with { Sku = _likely.Plan.Lines[i].Sku })],
        Opening = drawn.Opening with
        {
            Stock = [.. drawn.Opening.Stock.Select((item, i) => item with { Sku = _likely.Plan.Opening.Stock[i].Sku })],
        },
    };

    /// <summary>
    /// What the lines leave at prices that are higher by a share. What a sale then leaves is the same in every draw that doubts neither the channel
    /// nor the price, so some of it is kept.
    /// </summary>
    private decimal LeftAt(PlannedLine[] lines, decimal share)
    {
        if (!_nets.TryGetValue(share, out var nets))
        {
            nets = [.. _sold.Select(line => line.Likely is { } sale ? CommonRise.NetOf(sale, share) : 0)];
            if (_nets.Count < MostKept / _sold.Length)
                _nets.TryAdd(share, nets);
        }

        var left = 0m;
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i];
            var net = ReferenceEquals(line.Sale, _sold[i].Likely) ? nets[i] : CommonRise.NetOf(line.Sale, share);
            left += line.Units * (net - line.UnitCost.Materials + line.UnitCost.SecondsCredit);
        }

        return left;
    }

    /// <summary>Make it or drop it: what all its pieces bring above their floors on the channel.</summary>
    private static decimal GainOf(PlannedLine line) =>
        line.Units * (line.Sale.Net - new ChannelFloor(line.UnitCost, line.Sale.Channel).Floor);

    /// <summary>A design of the plan.</summary>
    private sealed class PlannedPiece(Stored<Design> stored, ChangedDocuments likely, StudioYear year)
    {
        private readonly Storage.DocumentName _name = new(Kinds.Design, stored.Key);
        private readonly Design _likely = likely.Find<Design>(Kinds.Design, stored.Key) ?? stored.Document;
        private readonly UnitCost? _piece = UnitCost.Of(likely.Find<Design>(Kinds.Design, stored.Key) ?? stored.Document, year).Found;

        public string Key => stored.Key;

        public UnitCost? In(ChangedDocuments documents, StudioYear year, bool isLikelyYear)
        {
            var design = (Design?)documents.Find(_name) ?? stored.Document;
            return isLikelyYear && ReferenceEquals(design, _likely) ? _piece : UnitCost.OnlyCostOf(design, year).Found;
        }
    }

    /// <summary>Where a line of the plan is sold.</summary>
    private sealed class SoldOn
    {
        private readonly Stored<Channel> _channel;
        private readonly string _listedKey;
        private readonly decimal? _listed;

        public SoldOn(PlanLine line, string sku, ChangedDocuments likely, WholeCatalogue catalogue)
        {
            _channel = catalogue.Channel(line.Channel)!;
            _listedKey = new ListedPriceKey(sku, line.Channel).ToString();
            _listed = catalogue.ListedPrices(sku).GetValueOrDefault(line.Channel)?.Document.Price;
            Likely = In(likely, line);
        }

        /// <summary>The sale at the likely values.</summary>
        public Sale? Likely { get; }

        /// <summary>The sale at the line's price, else at the listed one.</summary>
        public Sale? In(ChangedDocuments documents, PlanLine line)
        {
            var channel = documents.Find<Channel>(Kinds.Channel, _channel.Key) ?? _channel.Document;
            if ((line.Price ?? documents.Find<ListedPrice>(Kinds.ListedPrice, _listedKey)?.Price ?? _listed) is not { } price)
                return null;
            return Likely is { } likely && ReferenceEquals(likely.Channel, channel) && likely.Price == price ? likely : Sale.Of(price, channel);
        }
    }
}

/// <summary>The figures of a plan in one draw, unrounded.</summary>
/// <param name="Surplus">Contribution less what bench time must recover; negative when short.</param>
/// <param name="Closes">Whether it carries the year.</param>
/// <param name="WithinHours">Whether the bench hours are enough.</param>
/// <param name="LowestCash">The least cash at the end of a month.</param>
/// <param name="Rise">The smallest common rise of its prices that closes it; null if none does.</param>
/// <param name="Gain">What the line in question gains; null if none is.</param>
internal sealed record PlanDraw(decimal Surplus, bool Closes, bool WithinHours, decimal LowestCash, decimal? Rise, decimal? Gain);
