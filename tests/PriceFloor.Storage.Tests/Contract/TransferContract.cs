using System.Text;
using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>Exports and imports: all that is stored, from one store into another, whichever engine it has.</summary>
public abstract class TransferContract<TEngine> : StoreWithALog<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public async Task What_is_exported_and_imported_is_exported_the_same_but_for_the_life()
    {
        await Fill();
        var first = await Export(Store);
        Assert.True(first.Count > 12);
        Assert.All(["revision", "reference", "key", "event", "name", "logSecret", "logSource", "logBatch", "movement", "bench"],
            label => Assert.Contains(first, line => line.StartsWith($"{{\"{label}\":", StringComparison.Ordinal)));

        using var place = new TEngine();
        using (var other = place.Open())
        {
            await Import(other, first);
            var second = await Export(other);
            Assert.Equal(first.Skip(1), second.Skip(1));
            Assert.NotEqual(first[0], second[0]);
        }

        using var again = place.Open();
        Assert.Empty(place.Faults());
        Assert.Equal(Store.Position, again.Position);
        Assert.NotEqual(await Store.MarkAt(Store.Position), await again.MarkAt(again.Position)); // no cursor goes over
        var next = await again.WriteAsync("test", writing =>
            writing.Save("design", "a", """{"n":9}""", [new DocumentName("profile", "main")]));
        Assert.True(next.Number > 1000, "a number that the first store may give too");
        Assert.Equal((4, 1, 1), (again.Read(snapshot => snapshot.History("design", "a")).Count,
            again.Read(snapshot => snapshot.Movements(new LogQuestion { UpTo = long.MaxValue })).Count,
            again.Read(snapshot => snapshot.UsersOf("profile", "main")).Count));
    }

    [Fact]
    public async Task Nothing_is_imported_where_something_was_stored_or_from_lines_that_were_changed()
    {
        await Fill();
        var lines = await Export(Store);
        Assert.False(await Store.ReadAsync(StoreImport.IsFor));
        using var place = new TEngine();
        using var other = place.Open();
        Assert.True(await other.ReadAsync(StoreImport.IsFor));
        foreach (var (changed, line) in new (List<string>, long)[]
        {
            ([.. lines.Skip(1)], 1), // no life
            ([lines[0], "{\"revision\":7}"], 2),
            ([lines[0], "not JSON"], 2),
            ([lines[0], "{\"stranger\":{}}"], 2),
            ([lines[0], lines[1].Replace("\"kind\":\"profile\"", "\"kind\":7", StringComparison.Ordinal)], 2),
            ([lines[0], lines[1].Replace("\"kind\"", "\"kinds\"", StringComparison.Ordinal)], 2),
            ([lines[0], lines[1], lines[1]], 3), // the same revision twice
            ([.. lines.Where(one => !one.StartsWith("{\"name\"", StringComparison.Ordinal))], 0), // lines of the log without their names
            ([.. lines.Select(one => one.Replace("\\\"n\\\":1", "\\\"broken\\\":1", StringComparison.Ordinal))], 0), // a document that is not one
        })
        {
            var refused = await Assert.ThrowsAsync<ImportException>(() => Import(other, changed));
            if (line > 0)
                Assert.Equal(line, refused.Line);
            Assert.True(await other.ReadAsync(StoreImport.IsFor), "a part was kept");
        }

        await Import(other, lines);
        Assert.Empty(place.Faults());
    }

    private async Task Fill()
    {
        await Store.WriteAsync("owner", async writing =>
        {
            await writing.Save("profile", "main", """{"n":1}""", []);
            await writing.Save("design", "a", """{"n":1}""", [new DocumentName("profile", "main")]);
            await writing.Save("design", "b", """{"n":2}""", []);
            await writing.AddKey(new StoredKey("shop", [1, 2, 255], "check read", 5, 9, "main"));
            await writing.AddKey(new StoredKey("turned", [3], "read", 5, null));
            await writing.RotateKey("turned", [4], 77);
            return true;
        });
        Save("a", """{"n":"ä€𝄞 \"quoted\""}""");
        await Store.WriteAsync("owner", writing => writing.Save("design", "a", """{"n":3}""", [new DocumentName("profile", "main")]));
        Delete("b");
        Send(Sold("1"), Sold("2"));
        Send(Sold("1"), Sold("2", pieces: 2)); // a correction
        await Store.AppendAsync("owner", new LogAppend<MovementLine> { Source = Shop, Withdrawn = [Marks.OfRef(Shop, "1")], Lines = [] },
            _ => ValueTask.CompletedTask);
        Append(new LogAppend<BenchLine> { Source = Book, Lines = [Bench("1")], WholeDays = true });
    }

    private static async Task<List<string>> Export(Store store)
    {
        var lines = new List<string>();
        await store.ReadAsync(async snapshot =>
        {
            await snapshot.Export(line =>
            {
                lines.Add(Encoding.UTF8.GetString(line.Span));
                return ValueTask.CompletedTask;
            });
            return true;
        });
        return lines;
    }

    private static Task Import(Store store, List<string> lines) => store.WriteAsync("host", async writing =>
    {
        var import = new StoreImport(writing);
        foreach (var line in lines)
            await import.Add(Encoding.UTF8.GetBytes(line));
        await import.Finish((_, body) => body.Contains("broken", StringComparison.Ordinal) ? "is broken." : null);
        return true;
    });
}
