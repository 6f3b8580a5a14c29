using System.Text;
using PriceFloor.Storage;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.LogLines;

/// <summary>The real service, killed while a sheet comes in: a transaction's lines are all there or none, and sent again each is once.</summary>
public sealed class KilledLogTests : IDisposable
{
    private const int Lines = 45_000, Several = (2 * LogAppend<MovementLine>.MostTogether) + 10_000;

    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-killed-log-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_sheet_is_stored_in_whole_transactions_and_nothing_twice_when_it_is_sent_again()
    {
        var sheet = Sheet(i => $"{i},2027-{1 + (i % 12):00}-14,RB-014,web,1,52.00,\n", Several);
        var found = new List<long>();
        for (var round = 0; round < 4; round++)
        {
            using var service = Start(_folder, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey }).WithoutItsOutput();
            await Ready(service);
            using var client = new HttpClient { BaseAddress = new Uri(service.Address) };
            client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
            if (round == 0)
                await HasAShop(client);
            var sending = Send(client, "source=web-shop", sheet);
            if (round < 3)
                await Task.Delay(400 + (300 * round), Studio.Cancellation);
            else
                (await sending).EnsureSuccessStatusCode();
            service.Process.Kill();
            await service.Process.WaitForExitAsync(Studio.Cancellation);
            await Task.WhenAny(sending);
            found.Add(Stored());
        }

        Assert.All(found, count => Assert.True(count % LogAppend<MovementLine>.MostTogether == 0 || count == Several, $"{count}"));
        Assert.Equal(found.Order(), found);
        Assert.Equal(Several, found[^1]);
        Assert.Empty(StoreCheck.Of(Path.Combine(_folder, "pricefloor.db"), (_, _) => null).Faults);
    }

    [Fact]
    public async Task All_of_some_days_is_there_in_its_new_form_or_in_the_former_and_nothing_between()
    {
        const string Days = "source=web-shop&from=2027-01-01&to=2027-12-31";
        var former = Sheet(i => $"{i},2027-{1 + (i % 12):00}-14,RB-014,web,1,52.00,\n");
        var latter = Sheet(i => $"{i + 15_000},2027-{1 + (i % 12):00}-14,RB-014,web,1,49.00,\n"); // a third leaves, the others are corrected
        var found = new List<(int Count, long Paid)>();
        for (var round = 0; round < 6; round++)
        {
            using var service = Start(_folder, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey }).WithoutItsOutput();
            await Ready(service);
            using var client = new HttpClient { BaseAddress = new Uri(service.Address) };
            client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
            if (round == 0)
            {
                await HasAShop(client);
                (await Send(client, Days, former)).EnsureSuccessStatusCode();
            }

            var sending = Send(client, Days, latter);
            if (round < 5)
                await Task.Delay(500 + (250 * round), Studio.Cancellation);
            else
                (await sending).EnsureSuccessStatusCode();
            service.Process.Kill();
            await service.Process.WaitForExitAsync(Studio.Cancellation);
            await Task.WhenAny(sending);
            Assert.Empty(StoreCheck.Of(Path.Combine(_folder, "pricefloor.db"), (_, _) => null).Faults);
            found.Add(Present());
        }

        Assert.All(found, one => Assert.True(one == (Lines, Lines * 5200L) || one == (Lines, Lines * 4900L), $"{one}"));
        Assert.Equal((Lines, Lines * 4900L), found[^1]);
    }

    private static string Sheet(Func<int, string> line, int lines = Lines) =>
        SentLog.Heading + string.Concat(Enumerable.Range(0, lines).Select(line));

    private static Task<HttpResponseMessage> Send(HttpClient client, string query, string sheet) => client.PostAsync(
        new Uri($"/v1/movements/batch?{query}", UriKind.Relative), new StringContent(sheet, Encoding.UTF8, "text/csv"), Studio.Cancellation);

    private (int Count, long Paid) Present()
    {
        using var store = new Store(new SqliteEngine(Path.Combine(_folder, "pricefloor.db"), TimeProvider.System), TimeProvider.System);
        store.Open();
        var lines = store.Read(async snapshot => await snapshot.Movements(new LogQuestion { UpTo = (await snapshot.LogPosition()).Movements }));
        return (lines.Count, lines.Sum(line => line.Paid ?? 0));
    }

    private static async Task HasAShop(HttpClient client)
    {
        foreach (var (path, json) in new[]
        {
            ("profiles/main", Sample.SmallProfile), ("designs/RB-014", Sample.Pendant), ("channels/web", Sample.Shop),
        })
        {
            using var body = new StringContent(json, Encoding.UTF8, "application/json");
            (await client.PutAsync(new Uri($"/v1/{path}", UriKind.Relative), body, Studio.Cancellation)).EnsureSuccessStatusCode();
        }
    }

    private long Stored()
    {
        using var store = new Store(new SqliteEngine(Path.Combine(_folder, "pricefloor.db"), TimeProvider.System), TimeProvider.System);
        store.Open();
        return store.Read(snapshot => snapshot.LogPosition()).Movements;
    }
}
