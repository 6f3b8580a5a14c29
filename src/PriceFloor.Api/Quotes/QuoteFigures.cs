using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Quotes;

/// <summary>The figures of a quote from the documents of one moment.</summary>
internal sealed record QuoteFigures(QuoteTerms Terms, QuoteParts Parts, MadeToOrder Work)
{
    /// <summary>What the log filled in.</summary>
    private QuotedLearning Learned { get; init; } = QuotedLearning.None;

    public static Outcome<QuoteFigures> Of(Catalogue catalogue, Quote quote, QuotedLearning learned, bool anyDecimals = false) =>
        Of(catalogue, new KeyOr<CostProfile>(quote.Profile, null), new KeyOr<Channel>(quote.Channel, null), quote, learned, anyDecimals);

    public static Outcome<QuoteFigures> Of(Catalogue catalogue, KeyOr<CostProfile> profile, KeyOr<Channel> channel, QuoteTerms terms,
        QuotedLearning learned, bool anyDecimals = false)
    {
        var found = QuoteParts.Of(catalogue, profile, channel, terms, anyDecimals);
        if (found.Found is not { } parts)
            return found.Faults.ToList();
        var work = QuotedWork.Of(learned.In(terms), parts.Pieces, parts.Year, parts.Channel.Document);
        return work.Found is { } ordered ? new QuoteFigures(terms, parts, ordered) { Learned = learned } : work.Faults.ToList();
    }

    /// <summary>The answer.</summary>
    /// <param name="catalogue">The documents.</param>
    /// <param name="quote">The stored draft, as a basis; null if it came with the request.</param>
    /// <param name="earlier">What is known of other quotes.</param>
    /// <param name="workings">Whether each intermediate quantity is wanted.</param>
    public QuoteFiguresAnswer Answer(Catalogue catalogue, string? quote, EarlierQuotes earlier, bool workings)
    {
        var (money, price) = (Parts.Year.Currency, Terms.Price);
        decimal? net = price is { } asked ? Work.NetOf(asked) : null;
        return new QuoteFiguresAnswer
        {
            Verdict = price is { } total ? Work.CarriesItsShare(total) ? OrderVerdict.MeetsFloor : OrderVerdict.BelowFloor : null,
            CarriesItsShare = price is { } whole ? Work.CarriesItsShare(whole) : null,
            Currency = money.Code,
            Floor = money.RoundUp(Work.Floor),
            FloorTotal = Rounding.WithDecimals(Work.FloorTotal, money.Decimals),
            PerPiece = Work.Pieces > 0 ? money.RoundUp(Work.PerPiece) : null,
            RushTotal = Terms.Rush > 0 ? Work.RushTotal(Work.FloorTotal, Terms.Rush) : null,
            Price = price is { } listed ? Rounding.WithDecimals(listed, money.Decimals) : null,
            NetProceeds = net is { } kept ? money.Round(kept) : null,
            AboveFloor = net is { } left ? money.Round(left - Work.Floor) : null,
            OutOfPocket = money.Round(Work.OutOfPocket),
            LeastDeposit = Work.LeastDeposit,
            EarnedPerBenchHour = price is { } paid ? money.Round(Work.EarnedPerHour(paid)) : null,
            BenchHours = Answers.Hours(Work.Hours),
            Materials = money.Round(Work.Materials),
            Bought = money.Round(Work.Bought),
            Lines = [.. Terms.Lines.Zip(Work.Runs, Parts.Designs).Select(one => LineOf(one.First, one.Second, one.Third.Document, money))],
            QuotesRun = earlier.Run is { } run ? Answers.Ratio(run.Median) : null,
            Basis = new QuoteBasisAnswer
            {
                Quote = quote,
                Profile = Parts.Profile.Basis,
                Channel = Parts.Channel.Basis,
                Designs = [.. Parts.Designs.Select(design => design.Basis)],
                Log = Learned.Log,
            },
            Assumed = AssumptionAnswer.Of(Assumptions),
            Warnings = WarningAnswer.Of(WarningsOn(catalogue, earlier).Distinct()),
            Workings = WorkingAnswer.Of(workings, () => WorkingsOf(earlier)),
        };
    }

    /// <summary>What it is now beside what was issued.</summary>
    public static QuoteMovedAnswer Moved(Outcome<QuoteFigures> now, QuoteIssue issued)
    {
        if (now.Found is not { } found)
            return new QuoteMovedAnswer { FloorTotal = null, CostsMoved = null, Reason = now.Faults[0].Code, Warnings = [] };
        var total = Rounding.WithDecimals(found.Work.FloorTotal, found.Parts.Year.Currency.Decimals);
        return new QuoteMovedAnswer
        {
            FloorTotal = total,
            CostsMoved = total != issued.FloorTotal,
            Warnings = WarningAnswer.Of(QuoteWarnings.OfMoved(issued.FloorTotal, total)),
        };
    }

    private IEnumerable<Working> WorkingsOf(EarlierQuotes earlier) =>
    [
        .. Workings.Of(Parts.Year),
        .. Workings.Of(Work),
        .. Terms.Rush > 0 ? Workings.OfRush(Work, Terms.Rush) : [],
        .. Terms.Price is { } price ? Workings.OfPrice(Work, price) : [],
        .. earlier.Run is { } run ? Workings.Of(run) : [],
    ];

    private static QuoteLineAnswer LineOf(QuoteLine line, Run run, Design design, Currency money) => new()
    {
        Name = line.Name ?? design.Name,
        Quantity = Rounding.Trim(line.Quantity),
        Starts = Answers.Ratio(run.Starts),
        StartsToBeSure = run.StartsToBeSure,
        BenchHours = Answers.Hours(run.BenchHours),
        Materials = money.Round(run.Materials),
    };

    /// <summary>Those that an order rests on: all of it is sold, and nothing of it comes back.</summary>
    private IEnumerable<Assumption> Assumptions => Assumed.In(Parts.Profile.Document)
        .Concat(Parts.Pieces.SelectMany((piece, i) => Assumed.In(piece).Where(one => one.Pointer != "/profile/soldShare")
            .Select(one => one with { Pointer = AtLine(one.Pointer, i) })))
        .Concat(Assumed.In(Parts.Channel.Document, "/channel").Where(one => one.Pointer is "/channel/salesTax" or "/channel/selling"))
        .Concat(Learned.Assumed(Terms));

    private IEnumerable<Warning> WarningsOn(Catalogue catalogue, EarlierQuotes earlier) => Warnings.In(Parts.Year, catalogue.Today)
        .Concat(Parts.Pieces.SelectMany((piece, i) => Warnings.In(piece).Where(one => one.Code != WarningCodes.LimitBeforeHours)
            .Select(one => one with { Pointer = AtLine(one.Pointer, i) })))
        .Concat(Warnings.In(Parts.Channel.Document, Parts.Year, "/channel", catalogue.SoundChannels))
        .Concat(QuoteWarnings.In(Work, Terms, catalogue.Today))
        .Concat(Terms.Promised is { } promised ? QuoteWarnings.OfPromise(Work, promised, catalogue.Today, earlier.Load) : [])
        .Concat(earlier.Run is { } run ? QuoteWarnings.OfEarlier(run.Done.Count, run.Median) : []);

    private static string AtLine(string pointer, int line) =>
        pointer.StartsWith("/design", StringComparison.Ordinal) ? FormattableString.Invariant($"/lines/{line}{pointer}") : pointer;
}
