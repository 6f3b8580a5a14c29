using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.LogLines;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.Demo;

/// <summary>The invented studio's sales, bench book and two timed weeks of one year, stored in the same way as everybody's lines.</summary>
public sealed class DemoLog(CatalogueSource catalogues)
{
    public async Task Fill(Store store)
    {
        var catalogue = await catalogues.SeenBy(ProfileAccess.All).Whole(null);
        using var marks = await store.ReadAsync(snapshot => snapshot.Marks());
        var names = new LogNamesIn(catalogue).Known;
        await Append("studio-book", MovementSheet.Read(DemoStudio.Bytes("movements.csv"), new LogSheet()),
            lines => MovementSettling.Settle(lines, "studio-book", names, new LogWindow()), (stored, used) => stored.Of(used));
        foreach (var source in new[] { "bench-book", "day-book" })
            await Append(source, BenchSheet.Read(DemoStudio.Bytes(source + ".csv"), new LogSheet()),
                lines => BenchSettling.Settle(lines, source, names, new LogWindow()), (stored, used) => stored.Of(used));

        async Task Append<TSent, TEntry, TLine>(string source, Outcome<List<TSent>> sheet, Func<List<TSent>, SettledLines<TEntry>> settle,
            Func<StoredLines, UsedLine<TEntry>, TLine> lineOf) where TLine : LogLine
        {
            var settled = settle(sheet.Value);
            if (settled.Refused.Count + settled.Unplaced.Count > 0)
                throw new InvalidOperationException($"The demo's {source} has lines that are refused or placed nowhere.");
            var stored = new StoredLines(catalogue, marks, source);
            await store.AppendAsync("demo", new LogAppend<TLine>
            {
                Source = source,
                Lines = [.. settled.Used.Select(line => lineOf(stored, line))],
                WholeDays = source == "day-book",
            }, _ => ValueTask.CompletedTask);
        }
    }
}
