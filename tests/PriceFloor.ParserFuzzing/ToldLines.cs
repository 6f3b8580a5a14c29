using System.Text;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.LogLines;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.ParserFuzzing;

/// <summary>Lines of the log, from sheets of any shop and bench and from JSON: each ends up in exactly one place, in any order.</summary>
internal static class ToldLines
{
    private static readonly KnownNames s_names = new(
        name => name is "RB-014" or "GLOBE" ? name : null,
        key => key is "web" or "fair" ? new KnownChannel(key, Currency.Of(key == "web" ? "USD" : "JPY")) : null);

    private static readonly NoRules<MovementRequest> s_movements = new();
    private static readonly NoRules<BenchEntryRequest> s_bench = new();

    public static Task OfMovements(byte[] input)
    {
        var read = MovementSheet.Read(input, SheetOf(input));
        Insist(read.Found is not null || read.Faults.Count > 0, "neither lines nor a fault");
        Settle(read.Found ?? []);
        return Task.CompletedTask;
    }

    public static Task OfBench(byte[] input)
    {
        var read = BenchSheet.Read(input, SheetOf(input));
        Insist(read.Found is not null || read.Faults.Count > 0, "neither lines nor a fault");
        Settle(read.Found ?? []);
        return Task.CompletedTask;
    }

    /// <summary>A body in lines, as both lists take them.</summary>
    public static Task OfJson(byte[] input)
    {
        var (movements, bench) = (new List<SentMovement>(), new List<SentBenchEntry>());
        foreach (var (i, text) in Encoding.UTF8.GetString(input).Split('\n').Index())
        {
            var bytes = Encoding.UTF8.GetBytes(text);
            var movement = JsonBody<MovementRequest>.Read(bytes, s_movements);
            var entry = JsonBody<BenchEntryRequest>.Read(bytes, s_bench);
            Insist(movement.Found is null == movement.Faults.Count > 0 && entry.Found is null == entry.Faults.Count > 0,
                "neither a line nor a fault");
            if (movement.Found is { } sold)
                movements.Add(sold.AsSent(i + 1, new LogSheet()));
            if (entry.Found is { } made)
                bench.Add(made.AsSent(i + 1));
        }

        Settle(movements);
        Settle(bench);
        return Task.CompletedTask;
    }

    private static void Settle(List<SentMovement> sent)
    {
        SettledLines<Movement> Settled(IReadOnlyList<SentMovement> lines) => MovementSettling.Settle(lines, "shop", s_names, new LogWindow());
        var settled = Settled(sent);
        Insist(settled.Read.Lines == sent.Count, $"{settled.Read.Lines} of {sent.Count} movements have a place");
        Insist(settled.Used.All(line => line.Entry is { Pieces: >= 0 and <= LogRanges.MostPieces, Paid: null or (>= 0 and <= LogRanges.MostMoney) }),
            "a movement that cannot be");
        Insist(Counts(settled) == Counts(Settled([.. sent.AsEnumerable().Reverse()])), "other places in another order");
    }

    private static void Settle(List<SentBenchEntry> sent)
    {
        SettledLines<BenchEntry> Settled(IReadOnlyList<SentBenchEntry> lines) => BenchSettling.Settle(lines, "book", s_names, new LogWindow());
        var settled = Settled(sent);
        Insist(settled.Read.Lines == sent.Count, $"{settled.Read.Lines} of {sent.Count} entries have a place");
        Insist(settled.Used.All(line => !(line.Entry.Good > line.Entry.Started) && line.Entry.Minutes is null or (>= 0 and <= LogRanges.MostMinutes)),
            "an entry that cannot be");
        Insist(Counts(settled) == Counts(Settled([.. sent.AsEnumerable().Reverse()])), "other places in another order");
    }

    private static (LineCount Used, LineCount Refused, LineCount Unplaced, LineCount Duplicate) Counts<T>(SettledLines<T> settled) =>
        (settled.UsedCount, settled.RefusedCount, settled.UnplacedCount, settled.Duplicate);

    /// <summary>Sheets are written in several ways; the length of the input says in which.</summary>
    private static LogSheet SheetOf(byte[] input) => new()
    {
        Semicolon = input.Length % 2 == 1,
        Channel = input.Length % 3 == 0 ? "web" : null,
        What = input.Length % 7 == 0 ? MovementKind.Made : MovementKind.Sold,
        Cancelled = ["cancelled"],
        Columns = input.Length % 5 == 0 ? new Dictionary<LogField, string> { [LogField.Sku] = "Item" } : new Dictionary<LogField, string>(),
    };

    private static void Insist(bool holds, string otherwise)
    {
        if (!holds)
            throw new InvalidOperationException(otherwise);
    }
}
