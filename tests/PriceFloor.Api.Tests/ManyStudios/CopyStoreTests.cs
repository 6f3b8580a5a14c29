using System.Text;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Api.Running;
using PriceFloor.Storage;
using PriceFloor.Storage.Tests.Postgres;
using Xunit;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>The verb that copies a store between a data folder and a database, there and back.</summary>
public sealed class CopyStoreTests : IDisposable
{
    private readonly PostgresCluster _cluster = PostgresCluster.One;
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-copy-").FullName;
    private readonly string _database;

    public CopyStoreTests() => _database = _cluster.NewDatabase();

    private string Connection => _cluster.ConnectionString(_database);

    public void Dispose()
    {
        _cluster.Drop(_database);
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task A_studio_goes_into_a_database_and_back_with_its_keys_and_its_log()
    {
        await using var inFile = new Studio();
        await Furnish(inFile, inFile.Client);
        var shop = await inFile.ClientFor("read");
        var floor = await inFile.FloorOf(shop);
        var first = Path.Combine(_folder, "first");
        CopyFolder(await inFile.Stopped(), first);
        Assert.Contains("0 studios", Copy("--from", first), StringComparison.Ordinal);
        Assert.Equal(Lines(InFolder(first)), Lines(InDatabase()));
        Assert.Contains("All is well.", Verb("check-store"), StringComparison.Ordinal);

        await using var onServer = new Studio(configure: host => host.UseSetting("PRICEFLOOR_STORE", Connection));
        Assert.Equal(floor, await onServer.FloorOf(SameKey(onServer, shop)));
        Assert.Equal(1, (await onServer.Get("/v1/movements")).Json.GetProperty("items").GetArrayLength());
        var next = await onServer.Put("/v1/designs/RB-014/prices/web", """{"price":63.00}""");
        Assert.True(int.Parse(next["ETag"]!.Trim('"'), System.Globalization.CultureInfo.InvariantCulture) > 1000); // a number that was never given

        var back = Path.Combine(_folder, "back"); // while it serves
        Copy("--to", back);
        Assert.Equal(Lines(InDatabase()), Lines(InFolder(back)));
        await using var again = new Studio(configure: host => host.UseSetting("PRICEFLOOR_DATA", back));
        Assert.Equal("63.00", (await again.Get("/v1/designs/RB-014/prices/web", SameKey(again, shop))).Json.GetProperty("price").GetRawText());
    }

    [Fact]
    public async Task A_host_goes_with_all_its_studios()
    {
        await using var inFiles = HostedService.Start();
        var (harbour, tower) = (await inFiles.HasStudio("harbour", """{"documents":4}"""), await inFiles.HasStudio("tower"));
        await Furnish(inFiles, harbour);
        await inFiles.Put("/v1/profiles/main", Sample.SmallProfile, tower);
        var floor = await inFiles.FloorOf(harbour);
        var first = Path.Combine(_folder, "first");
        CopyFolder(await inFiles.Stopped(), first);
        Copy("--from", first);
        await using (var onServer = HostedService.Start(host => host.UseSetting("PRICEFLOOR_STORE", Connection)))
        {
            Assert.Equal(floor, await onServer.FloorOf(SameKey(onServer, harbour)));
            Assert.Equal(404, (await onServer.Get("/v1/designs/RB-014", SameKey(onServer, tower))).Status);
            (await onServer.Put("/v1/channels/fair", Sample.Shop, SameKey(onServer, harbour))).IsProblem(422, "quota");
            Assert.Equal(2, (await onServer.Get("/v1/studios")).Json.GetProperty("items").GetArrayLength());
        }

        var back = Path.Combine(_folder, "back");
        Copy("--to", back);
        Assert.Equal(Lines(InFolder(first)), Lines(InFolder(back)));
        foreach (var key in new[] { "harbour", "tower" })
        {
            Assert.Equal(Lines(InFolder(Path.Combine(first, "studios", key))), Lines(InDatabase().OfStudio(key)));
            Assert.Equal(Lines(InDatabase().OfStudio(key)), Lines(InFolder(Path.Combine(back, "studios", key))));
        }

        await using var again = HostedService.Start(host => host.UseSetting("PRICEFLOOR_DATA", back));
        Assert.Equal(floor, await again.FloorOf(SameKey(again, harbour)));
    }

    [Fact]
    public async Task Nothing_is_copied_over_something_or_from_what_is_in_use()
    {
        await using var inFile = new Studio();
        await Furnish(inFile, inFile.Client);
        Assert.Contains(StoreLock.FileName, Refused("--from", inFile.Folder), StringComparison.Ordinal); // it is served
        var first = Path.Combine(_folder, "first");
        CopyFolder(await inFile.Stopped(), first);
        Copy("--from", first);
        var before = Lines(InDatabase());
        Assert.Contains("has documents, keys or a log already", Refused("--from", first), StringComparison.Ordinal);
        Assert.Equal(before, Lines(InDatabase()));
        Assert.Contains("is not empty", Refused("--to", first), StringComparison.Ordinal);
        Assert.Contains("There is no store", Refused("--from", Path.Combine(_folder, "nowhere")), StringComparison.Ordinal);
        Assert.Equal(["first"], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
        foreach (var arguments in new[] { Array.Empty<string>(), ["--from", first, "--to", first] })
            Assert.Contains("--from FOLDER", Assert.Throws<SettingsException>(() => Copy(arguments)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_host_of_which_one_studio_is_damaged_is_not_copied_in_part()
    {
        await using var inFiles = HostedService.Start();
        await inFiles.HasStudio("harbour");
        await Furnish(inFiles, await inFiles.HasStudio("tower"));
        var first = Path.Combine(_folder, "first");
        CopyFolder(await inFiles.Stopped(), first);
        using (var store = Opened(InFolder(Path.Combine(first, "studios", "tower"))))
            store.Write("test", writing => writing.Save("channel", "odd", """{"sells":"nothing"}""", []));
        Assert.Contains("channel odd", Refused("--from", first), StringComparison.Ordinal);
        Assert.False(InDatabase().OfStudio("harbour").Exists);
        Assert.False(InDatabase().OfStudio("tower").Exists);
        Assert.True(InDatabase().Read(StoreImport.IsFor));
    }

    private static async Task Furnish(Studio studio, HttpClient client)
    {
        await studio.HasASmallShop(client);
        await studio.Put("/v1/designs/RB-014/prices/web", """{"price":61.00}""", client);
        var sold = await studio.Send("POST", "/v1/movements/batch?source=book",
            """[{"ref":"1","on":"2027-01-01","sku":"RB-014","channel":"web","pieces":1,"price":58}]""", client);
        Assert.Equal(200, sold.Status);
    }

    private static HttpClient SameKey(Studio service, HttpClient client) => service.ClientWith(client.DefaultRequestHeaders.Authorization!.Parameter);

    private StorePlace InDatabase() => StoreChoice.Read(Of(), _folder);

    private static StorePlace InFolder(string folder) => StoreChoice.InFolder(folder);

    private static Store Opened(StorePlace place)
    {
        var store = new Store(place.Engine(TimeProvider.System), TimeProvider.System);
        store.Open();
        return store;
    }

    /// <summary>Everything that is stored but the life.</summary>
    private static List<string> Lines(StorePlace place) => place.Read(async snapshot =>
    {
        var lines = new List<string>();
        await snapshot.Export(line =>
        {
            lines.Add(Encoding.UTF8.GetString(line.Span));
            return ValueTask.CompletedTask;
        });
        Assert.True(lines.Count > 2);
        return lines[1..];
    });

    private string Copy(params string[] arguments)
    {
        using var output = new StringWriter();
        Assert.Equal(0, CopyCommand.Run(CommandLine.Of([CopyCommand.Name, .. arguments]).Options, Of(), output));
        return output.ToString();
    }

    private string Refused(params string[] arguments) => Assert.Throws<StoreException>(() => Copy(arguments)).Message;

    private string Verb(string verb)
    {
        using var output = new StringWriter();
        Assert.Equal(0, StoreCommands.Run(verb, [], Of(), output));
        return output.ToString();
    }

    private IConfiguration Of() => new ConfigurationBuilder()
        .AddInMemoryCollection([new("PRICEFLOOR_DATA", Path.Combine(_folder, "data")), new("PRICEFLOOR_STORE", Connection)]).Build();

    private static void CopyFolder(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (var folder in Directory.GetDirectories(from))
            CopyFolder(folder, Path.Combine(to, Path.GetFileName(folder)));
        foreach (var file in Directory.GetFiles(from))
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
    }
}
