using FluentValidation;
using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Statements;
using PriceFloor.Statements.Files;
using PriceFloor.Storage;

namespace PriceFloor.Api.Statements;

/// <summary>From statements to a draft. The bank's data stays in this request's memory: nothing here stores or logs it.</summary>
public static class StatementRoutes
{
    /// <summary>Rules times lines are bounded, but the bound is high.</summary>
    private static readonly TimeSpan s_longest = TimeSpan.FromSeconds(20);

    private const int MostAccounts = 50;

    public static async Task<Results<JsonAnswer<StatementAnswer>, DraftAnswer<CostProfile>, Problem>> Post(FromQuery<StatementQuery> query,
        CatalogueReader reader, Store store, IValidator<CostProfile> profiles, TimeProvider clock, HttpContext context)
    {
        var found = await DraftContext.OfAsync(query.Value, reader, store, Caller.Of(context));
        if (found.Found is not { } known)
            return Problem.Of(found.Faults);
        if (ContentCoding.Against(context.Request) is { } coded)
            return coded;
        var body = await StatementBody.ReadAsync(context, query.Value.Account);
        if (body.Found is not { } files)
            return Problem.Of(body.Faults);
        var sent = await FileLayouts.OfAsync(files, query.Value, store, Caller.Of(context));
        using var timeout = new CancellationTokenSource(s_longest, clock);
        using var cancel = CancellationTokenSource.CreateLinkedTokenSource(timeout.Token, context.RequestAborted);
        context.Response.Headers.CacheControl = "no-store";
        try
        {
            var draft = Draft(sent, query.Value, known, profiles, cancel.Token);
            return draft.Found is not { } answer ? Problem.Of(draft.Faults)
                : query.Value.OnlyDraft ? DraftAnswer.Of(answer.Draft)
                : JsonAnswer.Of(answer);
        }
        catch (SlowPatternException e)
        {
            return Problem.CannotCompute(FaultCodes.TooLarge, $"{e.Message} Its pattern is \"{known.Rules.Document.Rules[e.Rule].TextMatches}\".");
        }
        catch (OperationCanceledException) when (timeout.IsCancellationRequested && !context.RequestAborted.IsCancellationRequested)
        {
            return Problem.CannotCompute(FaultCodes.TooLarge,
                "Reading and sorting the lines took longer than 20 seconds; send fewer files at a time.");
        }
        catch (OverflowException)
        {
            return Problem.CannotCompute(FaultCodes.TooLarge,
                "The amounts add up to more than can be exact; look for a column that does not have amounts.");
        }
    }

    private static Outcome<StatementAnswer> Draft(IReadOnlyList<SentFile> sent, StatementQuery query, DraftContext known,
        IValidator<CostProfile> profiles, CancellationToken cancel)
    {
        var read = Read(sent, query.Currency ?? known.Against?.Document.Currency, cancel);
        if (read.Found is not { } files)
            return read.Faults.ToList();
        var found = CurrencyOf(query, known.Against?.Document, files);
        if (found.Found is not { } currency)
            return found.Faults.ToList();
        if (files.SelectMany(file => file.Statements).Select(statement => statement.Account).Distinct().Count() is > MostAccounts and var accounts)
            return RequestFault.CannotCompute(FaultCodes.TooLarge, FormattableString.Invariant(
                $"The files name {accounts} accounts; at most {MostAccounts} are read together. Is accountColumn the right column?"));

        var asked = query.From is null && query.To is null ? null
            : (Period?)new Period(query.From ?? DateOnly.MinValue, query.To ?? DateOnly.MaxValue);
        var sorting = Sorting.Sort(files, known.Rules, currency, asked, new PatternTime(() => Environment.TickCount64), cancel);
        var draft = ProfileDraft.Of(sorting,
            new DraftChoices(known.Against?.Document, query.YearStart, query.EquipmentFrom ?? UsualEquipment(currency), query.LifeYears));
        if (FaultOf(draft.Profile, profiles) is { } fault)
            return fault;
        var year = StudioYear.Of(draft.Profile, known.YearStart);
        return year.Found is null ? year.Faults.ToList() : AnswerOf(sent, files, draft, year.Value, known, query);
    }

    private static StatementAnswer AnswerOf(IReadOnlyList<SentFile> sent, IReadOnlyList<StatementFile> files, ProfileDraft draft, StudioYear year,
        DraftContext known, StatementQuery query)
    {
        var (sorting, money, against) = (draft.Sorting, draft.Sorting.Currency, known.Against);
        var pace = YearToDate.Of(against is null ? year : StudioYear.Of(against.Document, known.YearStart).Value, draft, known.Season);
        return new StatementAnswer
        {
            Currency = money.Code,
            Files = [.. sent.Zip(files, (file, read) =>
                new FileAnswer(file.Name, read.Format, file.LayoutBasis,
                    [.. read.Statements.Select(statement => FileAccountAnswer.Of(statement, money))]))],
            Coverage = [.. sorting.Coverage.Select(CoverageAnswer.Of)],
            Accounted = AccountedAnswer.Of(sorting),
            Refused = RefusedAnswer.Of(sent, files, sorting),
            Draft = draft.Profile,
            Lines = [.. draft.Lines.Select(line => DraftLineAnswer.Of(line, money))],
            Equipment = [.. draft.Bought.Select(one => BoughtAnswer.Of(one, draft.Profile, money))],
            Unplaced = [.. Unplaced.In(sorting).Take(200).Select(group => UnplacedAnswer.Of(group, money))],
            NotCovered = [.. year.NotCovered],
            MoneyReceived = MoneyReceivedAnswer.Of(MoneyReceived.In(sorting), year),
            Pace = PaceAnswer.Of(pace, money),
            Differences = against is null ? null
                : [.. ProfileDifference.Between(against.Document, draft.Profile).Select(one => DifferenceAnswer.Of(one, money))],
            Transactions = query.Lines ? [.. sorting.All.Select(sorted => LineAnswer.Of(sorted, sent, money))] : null,
            Basis = known.Basis,
            Assumed = AssumptionAnswer.Of(Assumed(draft, pace, known, query)),
            Warnings = WarningAnswer.Of(StatementWarnings.In(sent, draft, pace, known.HasRules, against?.Document)),
        };
    }

    private static IEnumerable<Assumption> Assumed(ProfileDraft draft, YearToDate? pace, DraftContext known, StatementQuery query)
    {
        var against = known.Against;
        if (against is null)
        {
            yield return new("/draft/calendar/weeksPerYear", draft.Profile.Calendar.WeeksPerYear);
            yield return new("/draft/calendar/daysPerWeek", draft.Profile.Calendar.DaysPerWeek);
            yield return new("/draft/calendar/hoursPerDay", draft.Profile.Calendar.HoursPerDay);
        }

        foreach (var index in Enumerable.Range(0, draft.Profile.Equipment.Count)
                .Where(index => draft.Bought.Any(one => one.Name == draft.Profile.Equipment[index].Name)))
            yield return new(FormattableString.Invariant($"/draft/equipment/{index}/depreciation/lifeYears"), query.LifeYears);
        foreach (var index in draft.IncomeWithoutDays(against?.Document))
            yield return new(FormattableString.Invariant($"/draft/otherIncome/{index}/daysPerYear"), 0m);
        if (pace is not null && known.Season is null)
            yield return new("/pace/season", "even");
        foreach (var assumption in Pricing.Explaining.Assumed.In(draft.Profile))
            yield return assumption with { Pointer = "/draft" + assumption.Pointer["/profile".Length..] };
    }

    private static Outcome<List<StatementFile>> Read(IReadOnlyList<SentFile> sent, string? currency, CancellationToken cancel)
    {
        var (files, refused) = (new List<StatementFile>(), new List<Fault>());
        foreach (var (index, file) in sent.Index())
        {
            cancel.ThrowIfCancellationRequested();
            var read = StatementReader.Read(file.Bytes, file.Name, file.Layout.AsReading(currency) with { IsCashBook = file.IsCashBook }, cancel);
            if (read.Found is { } found)
                files.Add(found);
            else
                refused.AddRange(new FileFaults(sent, index).Unreadable(read.Faults));
        }

        if (refused.Count > 0) // of one kind: what can be said is invalid, what cannot be read at all comes first
            return refused.Where(fault => ((RequestFault)fault).Type == Worst(refused)).ToList();

        var failed = files.Index().SelectMany(file => new FileFaults(sent, file.Index).Failed(file.Item)).ToList();
        return failed.Count > 0 ? failed : files;
    }

    private static ProblemType Worst(IReadOnlyList<Fault> refused) => refused.Cast<RequestFault>().Select(fault => fault.Type)
        .FirstOrDefault(type => type != ProblemTypes.InvalidInput) ?? ProblemTypes.InvalidInput;

    private static Outcome<Currency> CurrencyOf(StatementQuery query, CostProfile? against, IReadOnlyList<StatementFile> files)
    {
        if (query.Currency is { } asked && against is not null && against.Currency != asked)
            return RequestFault.Of(ProblemTypes.CurrencyMismatch,
                $"The profile \"{query.Against}\" is in {against.Currency}; nothing is ever converted.");
        var code = query.Currency ?? against?.Currency
            ?? files.SelectMany(file => file.Statements).SelectMany(statement => statement.Transactions).Select(transaction => transaction.Currency)
                .FirstOrDefault(known => known is not null && Currency.Find(known) is not null);
        return code is null
            ? RequestFault.Invalid(new InputError
            {
                Parameter = "currency",
                Code = FaultCodes.Required,
                Detail = "No file gives its currency; add ?currency=USD or the code that the accounts are in.",
            })
            : Currency.Of(code);
    }

    private static decimal UsualEquipment(Currency currency) => currency.Decimals == 0 ? 100_000 : 1_000;

    /// <summary>
    /// A draft that is not a valid document is not answered: amounts beyond the bounds come from a column that does not have amounts.
    /// </summary>
    private static RequestFault? FaultOf(CostProfile draft, IValidator<CostProfile> validator)
    {
        var faults = RecordReader.Check(draft);
        return faults.Concat(Rules.Faults(validator, draft, faults)).FirstOrDefault() is { } first
            ? RequestFault.CannotCompute(first.Code, $"The draft would not be a valid profile: {first.Pointer} {first.Detail}")
            : null;
    }
}
