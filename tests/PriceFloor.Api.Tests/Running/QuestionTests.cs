using System.Security.Cryptography;
using PriceFloor.Storage;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The program answers from the store without serving it, as HTTP does, and changes nothing there.</summary>
public sealed class QuestionTests : IDisposable
{
    private const string Sheet = "Item,Price\nRB-014,58\nRB-014,120\nRB-014,61.74\n";

    private static readonly (string Kind, string Key, string Json)[] s_shop =
        [("profile", "main", Sample.SmallProfile), ("design", "RB-014", Sample.Pendant), ("channel", "web", Sample.Shop)];

    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-question-").FullName;

    private string Data => Path.Combine(_folder, "data");

    private string Db => Path.Combine(Data, "pricefloor.db");

    private string Prices => Path.Combine(_folder, "prices.csv");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_sheet_is_checked_beside_a_running_service_with_its_answers_to_the_byte()
    {
        await File.WriteAllTextAsync(Prices, Sheet, Studio.Cancellation);
        using var service = Start(Data, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey }).WithoutItsOutput();
        await Ready(service);
        using var client = new HttpClient { BaseAddress = new Uri(service.Address) };
        client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
        await HasASmallShop(client);
        var before = Files(but: ["-shm", ".highwater"]);
        var sheet = await Run(Data, "check", Prices, "--channel", "web", "--skuColumn", "Item", "--priceColumn=price", "--csv");
        Assert.Equal((1, ""), (sheet.Code, sheet.Errors));
        Assert.Equal(await Checked(client, "text/csv"), sheet.Output);
        var json = await Run(Data, "check", Prices, "--channel", "web", "--skuColumn", "Item", "--json");
        Assert.Equal((1, ""), (json.Code, json.Errors));
        Assert.Equal(await Checked(client, "application/json"), json.Output);
        var floor = await Run(Data, "floor", "RB-014", "--json");
        Assert.Equal(await client.GetStringAsync(new Uri("/v1/designs/RB-014/floor-price", UriKind.Relative), Studio.Cancellation),
            floor.Output.TrimEnd());
        Assert.Equal(before, Files(but: ["-shm", ".highwater"]));
        Assert.Equal(0, await Terminate(service));
    }

    [Fact]
    public async Task Without_a_service_nothing_in_the_folder_is_changed_to_the_byte()
    {
        Stored();
        var before = Files();
        await File.WriteAllTextAsync(Prices, Sheet, Studio.Cancellation);
        Assert.Equal(1, (await Run(Data, "check", Prices, "--channel=web", "--skuColumn=Item")).Code);
        Assert.Equal(0, (await Run(Data, "floor", "RB-014", "web")).Code);
        Assert.Equal(before, Files());
    }

    [Fact]
    public async Task What_is_only_in_the_log_of_a_service_that_writes_is_seen()
    {
        Stored();
        using var store = new Store(new SqliteEngine(Db, TimeProvider.System), TimeProvider.System);
        store.Open();
        store.Write("test", writing => writing.Save("channel", "web", """{"sells":"retail","currency":"USD"}""", []));
        Assert.True(new FileInfo(Db + "-wal").Length > 0);
        var before = Files(but: ["-shm", ".highwater"]); // the store writes its high water a moment after the revision
        // 60.00 a piece, and the channel takes nothing any more
        Assert.Contains("60.00", (await Run(Data, "floor", "RB-014", "web")).Output, StringComparison.Ordinal);
        Assert.Equal(before, Files(but: ["-shm", ".highwater"]));
    }

    [Fact]
    public async Task People_get_a_table_and_the_exit_code_says_the_worst()
    {
        Stored();
        // floor 61.74: (60 + 0.25) / 0.976 = 61.7316, up; target 2 x 60 = 120
        foreach (var (rows, code, told) in new (string, int, string)[]
        {
            ("RB-014,web,120", 0, "Meet the target: 1. Below the target: 0. Below the floor: 0. Not checked: 0."),
            ("RB-014,web,61.74", 0, "Below the target: 1."),
            ("RB-014,web,61.73\nRB-014,web,120", 1, "Below the floor: 1."),
            ("RB-014,web,61.73\nNOPE,web,1", 2, "not checked: Line 3, column 1: There is no design \"NOPE\""),
            ("\u001b[2JRB-014,web,1", 2, "Not checked: 1."),
        })
        {
            await File.WriteAllTextAsync(Prices, $"sku,channel,price\n{rows}\n", Studio.Cancellation);
            var answered = await Run(Data, "check", Prices);
            Assert.Equal((code, ""), (answered.Code, answered.Errors));
            Assert.Contains(told, answered.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("\u001b", answered.Output, StringComparison.Ordinal);
        }

        var table = (await Run(Data, "check", Prices)).Output.Split('\n');
        Assert.Equal(["Line", "Design", "Channel", "Price", "Floor", "Target", "Verdict"],
            table[0].Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
    }

    [Fact]
    public async Task What_cannot_be_asked_is_a_sentence_and_ends_with_2()
    {
        await File.WriteAllTextAsync(Prices, "a;b\n1;2\n", Studio.Cancellation);
        var none = await Run(Data, "check", Prices);
        Assert.Equal((2, ""), (none.Code, none.Output));
        OneSentence(none.Errors, Db, "--data");
        Assert.False(Directory.Exists(Data));
        Stored();
        foreach (var (arguments, told) in new (string[], string)[]
        {
            (["check", "no.csv"], "no.csv"), (["check", Prices], "no column \"sku\""), (["check", Prices, "--channel=x"], "no channel \"x\""),
            (["check", Prices, "--dialect=tabs"], "dialect must be one of"), (["check", Prices, "--csv", "--json"], "not both"),
            (["check"], "check SHEET"), (["floor", "rb-014"], "but there is \"RB-014\""), (["floor", "RB-014", "wbe"], "but there is \"web\""),
        })
        {
            var refused = await Run(Data, arguments);
            Assert.Equal((2, ""), (refused.Code, refused.Output));
            OneSentence(refused.Errors, told);
        }
    }

    [Fact]
    public async Task What_another_channel_charges_is_not_said_to_be_recovered_nowhere()
    {
        Stored();
        const string Stalls = """{"amount":600,"per":"year","costKind":"shows-and-stalls","tracedTo":"sale"}""";
        Save("profile", "main", Sample.SmallProfile.Replace("\"expenses\":[", $"\"expenses\":[{Stalls},", StringComparison.Ordinal));
        Assert.Contains("recovered nowhere", (await Run(Data, "floor", "RB-014", "web")).Output, StringComparison.Ordinal);
        Save("channel", "fair", """{"sells":"retail","currency":"USD","stall":{"cost":60,"pieces":20}}""");
        var told = await Run(Data, "floor", "RB-014", "web");
        Assert.Equal((0, false), (told.Code, told.Output.Contains("recovered nowhere", StringComparison.Ordinal)));

        void Save(string kind, string key, string body)
        {
            using var store = new Store(new SqliteEngine(Db, TimeProvider.System), TimeProvider.System);
            store.Open();
            store.Write("test", writing => writing.Save(kind, key, body, []));
        }
    }

    [Fact]
    public async Task A_store_of_an_earlier_program_is_refused_and_stays_as_it_is()
    {
        Directory.CreateDirectory(Data);
        OldStore.Make(Db, schema: 3);
        var before = Files();
        await File.WriteAllTextAsync(Prices, Sheet, Studio.Cancellation);
        var refused = await Run(Data, "check", Prices);
        Assert.Equal(2, refused.Code);
        OneSentence(refused.Errors, Db, "schema 3", "verb serve");
        Assert.Equal(before, Files());
    }

    [Fact]
    public async Task The_folder_can_be_named_on_the_command_line_and_another_moment_be_asked()
    {
        Stored();
        Assert.Equal(0, (await Run(Path.Combine(_folder, "elsewhere"), "floor", "RB-014", "--data", Data)).Code);
        await File.WriteAllTextAsync(Prices, "sku,channel,price\nRB-014,web,120\n", Studio.Cancellation);
        // on that day nothing was stored
        Assert.Equal(2, (await Run(Data, "check", Prices, "--asOf", "2020-01-01T00:00:00Z")).Code);
    }

    private void Stored()
    {
        using var store = new Store(new SqliteEngine(Db, TimeProvider.System), TimeProvider.System);
        store.Open();
        foreach (var (kind, key, body) in s_shop)
            store.Write("test", writing => writing.Save(kind, key, body, []));
    }

    private static async Task HasASmallShop(HttpClient client)
    {
        foreach (var (kind, key, json) in s_shop)
        {
            using var body = new StringContent(json, new System.Net.Http.Headers.MediaTypeHeaderValue("application/json"));
            using var put = await client.PutAsync(new Uri($"/v1/{kind}s/{key}", UriKind.Relative), body, Studio.Cancellation);
            Assert.Equal(201, (int)put.StatusCode);
        }
    }

    private static async Task<string> Checked(HttpClient client, string accept)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/price-checks/batch?channel=web&skuColumn=Item&priceColumn=price");
        request.Content = new StringContent(Sheet, new System.Net.Http.Headers.MediaTypeHeaderValue("text/csv"));
        request.Headers.Accept.ParseAdd(accept);
        using var answer = await client.SendAsync(request, Studio.Cancellation);
        return await answer.Content.ReadAsStringAsync(Studio.Cancellation);
    }

    /// <summary>
    /// Every file of the data folder with its hash; beside a service without what it writes by itself: SQLite's note of who reads, and how far
    /// the store has come.
    /// </summary>
    private List<string> Files(params string[] but) =>
        [.. Directory.GetFiles(Data).Where(file => !but.Any(end => file.EndsWith(end, StringComparison.Ordinal))).Order(StringComparer.Ordinal)
            .Select(file => $"{Path.GetFileName(file)} {HashOf(file)}")];

    private static string HashOf(string file)
    {
        if (Path.GetFileName(file) == StoreLock.FileName)
            return ""; // a service that runs lets nobody read it
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
