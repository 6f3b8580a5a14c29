using System.Globalization;
using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.ReadingRuleSets;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.Demo;

/// <summary>An invented studio to try the service with. Its documents are stored in the same way as everybody's.</summary>
public sealed class DemoStudio(DocumentKind<CostProfile> profiles, DocumentKind<Design> designs, DocumentKind<Channel> channels,
    DocumentKind<ListedPrice> prices, DocumentKind<Plan> plans, DocumentKind<ReadingRules> rules, DocumentKind<Quote> quotes,
    DemoLog log)
{
    /// <summary>
    /// The documents, and then the lines of the log that name them. False if there are documents already, perhaps of another process that starts
    /// at the same time.
    /// </summary>
    public bool Fill(Store store)
    {
        if (!StoreDocuments(store))
            return false;
        log.Fill(store).GetAwaiter().GetResult();
        return true;
    }

    /// <summary>The demo's output: lines to paste, and the key that was made for it, once.</summary>
    /// <param name="madeKey">The key that this start made; null if the operator chose one, which is never printed, or it
    /// was made at an earlier start.</param>
    /// <param name="elsewhere">Where to find the key if it is not printed.</param>
    /// <param name="address">Where the service listens.</param>
    public static string Greeting(string? madeKey, string elsewhere, string address)
    {
        var header = madeKey is null ? "\"Authorization: Bearer $KEY\"" : $"'Authorization: Bearer {madeKey}'";
        return string.Create(CultureInfo.InvariantCulture, $"""

            The demo studio is ready at {address} (an invented studio; figures are no tax or legal advice).
            {(madeKey is null ? $"Its key is {elsewhere}; set KEY to it." : $"Its key, shown only this once: {madeKey}")}
            Try, in another terminal:

              curl -s -H {header} '{address}/v1/profiles/main/requirement'
              curl -s -H {header} '{address}/v1/designs/RB-014/floor-price?workings=true'
              curl -s -H {header} '{address}/v1/price-checks?sku=RB-014&channel=web&price=58.00'

            """);
    }

    private bool StoreDocuments(Store store) => store.Write("demo", async writing =>
    {
        if (!await writing.IsEmpty)
            return false;
        var studio = JsonDocument.Parse(Read("studio.json")).RootElement;
        await Put(writing, profiles, studio.GetProperty("profiles"));
        await Put(writing, channels, studio.GetProperty("channels"));
        await Put(writing, designs, studio.GetProperty("designs"));
        await Put(writing, prices, studio.GetProperty("prices"));
        await Put(writing, plans, studio.GetProperty("plans"));
        await Put(writing, quotes, studio.GetProperty("quotes"));
        await Put(writing, rules, "main", JsonDocument.Parse(StarterRules.Json).RootElement);
        return true;
    });

    private static async ValueTask Put<T>(Writing writing, DocumentKind<T> kind, JsonElement documents) where T : class
    {
        foreach (var document in documents.EnumerateObject())
            await Put(writing, kind, document.Name, document.Value);
    }

    private static async ValueTask Put<T>(Writing writing, DocumentKind<T> kind, string key, JsonElement document) where T : class
    {
        var body = JsonBody<T>.Read(System.Text.Encoding.UTF8.GetBytes(document.GetRawText()), kind.Validator);
        var faults = body.Found is { } read ? (await kind.Save(writing, key, read, ProfileAccess.All)).Faults : body.Faults;
        if (faults.Count > 0)
            throw new InvalidOperationException(
                $"The demo's {kind.Name} {key} is refused: {string.Join(' ', faults.Select(fault => $"{fault.Pointer} {fault.Detail}"))}");
    }

    private static string Read(string name) => System.Text.Encoding.UTF8.GetString(Bytes(name));

    /// <summary>A file beside this one.</summary>
    internal static byte[] Bytes(string name)
    {
        using var stream = typeof(DemoStudio).Assembly.GetManifestResourceStream($"PriceFloor.Api.Demo.{name}")!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
