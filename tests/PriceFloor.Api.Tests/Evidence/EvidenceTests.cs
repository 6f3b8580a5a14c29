using System.Text;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.Evidence;

/// <summary>Sheets of sales and of the bench, sent as a form: nothing of them is kept, and a key learns only of what it may see.</summary>
public sealed class EvidenceTests
{
    private const string Profile = """
        {"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"household":[{"name":"Living","amount":90000,"per":"year"}]}
        """;

    private const string Design = """
        {"name":"River drop pendant","profile":"main","soldShare":1,"materials":[{"name":"Glass","amount":6}],"making":{"steps":
        [{"name":"torch","handsOnMinutes":30},{"name":"anneal","handsOnMinutes":8,"mayBeHurried":false,"goodShare":0.95}]}}
        """;

    private const string Web = """
        {"sells":"retail","currency":"USD","costPerPiece":0.8,"shipping":{"charged":5,"cost":6.2},"fees":[{"rate":0.029,"fixed":0.3,"of":"paid"}]}
        """;

    /// <summary>The bench book of the worked example.</summary>
    private static string Bench
    {
        get
        {
            int[] minutes = [792, 706, 668, 655, 622, 640, 610, 598, 607, 585, 590, 571], good = [11, 12, 9, 11, 12, 6, 11, 10, 11, 12, 10, 11];
            return "date,sku,started,good,minutes\n" + string.Concat(minutes.Zip(good).Select((load, i) =>
                FormattableString.Invariant($"{new DateOnly(2026, 1, 1).AddDays(30 * i):yyyy-MM-dd},RB-014,12,{load.Second},{load.First}\n")));
        }
    }

    [Fact]
    public async Task The_bench_book_of_the_worked_example_moves_the_floor()
    {
        await using var studio = await Stored();
        var answer = await Send(studio, "?to=2027-01-01", studio.Client, ("bench", Bench));
        var design = answer.Json.GetProperty("designs")[0];
        // Minutes 48.20 and good 0.8695: (45 * 48.20/60 + 6)/0.8695 = 48.4762, up 48.48. Stored: (45 * 38/60 + 6)/0.95 = 36.3158.
        Assert.Equal("""{"stored":36.32,"asFound":48.48}""", design.GetProperty("floor").GetRawText());
        Assert.Equal("48.20 0.8695", string.Join(' ',
            design.GetProperty("findings").EnumerateArray().Select(found => found.GetProperty("value").GetRawText())));

        // Its draft is ready to be stored, and then agrees.
        await studio.Has("/v1/designs/RB-014", design.GetProperty("draft").GetRawText());
        var again = await Send(studio, "?to=2027-01-01", studio.Client, ("bench", Bench));
        Assert.All(again.Json.GetProperty("designs")[0].GetProperty("findings").EnumerateArray(),
            found => Assert.Equal("agrees", found.GetProperty("says").GetString()));
    }

    [Fact]
    public async Task A_draft_in_which_nothing_was_found_is_the_stored_document()
    {
        await using var studio = await Stored();
        var answer = await Send(studio, "", studio.Client, ("movements", "on,sku,channel,pieces,price\n2026-03-01,RB-014,web,1,52.00\n"));
        foreach (var (path, draft) in new[]
        {
            ("/v1/designs/RB-014", answer.Json.GetProperty("designs")[0].GetProperty("draft")),
            ("/v1/channels/web", answer.Json.GetProperty("channels")[0].GetProperty("draft")),
            ("/v1/profiles/main", answer.Json.GetProperty("profile").GetProperty("draft")),
        })
        {
            Assert.DoesNotContain("null", draft.GetRawText(), StringComparison.Ordinal);
            Assert.Equal(1, (await studio.Put(path, draft.GetRawText())).Json.GetProperty("revision").GetInt64());
        }
    }

    [Fact]
    public async Task Every_line_is_accounted_for()
    {
        await using var studio = await Stored();
        var answer = await Send(studio, "?from=2027-01-01&cancelled=void", studio.Client, ("movements",
            "date,sku,channel,pieces,price,order,status,ref\n2027-01-01,RB-014,web,1,52.00,1,,a\n2027-01-01,RB-014,web,2,50.00,2,void,b\n"
            + "2026-12-31,RB-014,web,1,10.00,3,,c\n2027-01-01,Nobody,web,1,7.00,4,,d\n"
            + "when,RB-014,web,1,3.00,5,,e\n2027-01-01,RB-014,web,1,52.00,1,,a\n"));
        // 52.00 used, 100.00 cancelled, 52.00 twice, 10.00 outside, 7.00 unplaced, 3.00 refused: 224.00 read.
        Assert.Equal("""{"read":{"lines":6,"money":224.00},"used":{"lines":1,"money":52.00},"cancelled":{"lines":1,"money":100.00}"""
            + ""","duplicate":{"lines":1,"money":52.00},"outside":{"lines":1,"money":10.00},"unplaced":{"lines":1,"money":7.00}"""
            + ""","refused":{"lines":1,"money":3.00}}""", answer.Json.GetProperty("accounted").GetRawText());
        Assert.Equal("""[{"sheet":"movements","line":6,"code":"bad-date"}]""", answer.Json.GetProperty("refused").GetRawText());
    }

    [Fact]
    public async Task A_key_held_to_another_profile_sees_the_design_as_nobody_does()
    {
        await using var studio = await Stored();
        await studio.Has("/v1/profiles/onyx", Profile);
        await studio.Has("/v1/designs/ON-1", """{"profile":"onyx","making":{"minutesPerPiece":40}}""");
        var sheet = "date,sku,channel,pieces,price\n2027-01-01,RB-014,web,1,52.00\n2027-01-01,ON-1,web,1,30.00\n2027-01-01,None,web,1,20.00\n";
        var mine = await Send(studio, "?against=onyx", studio.Client, ("movements", sheet));
        Assert.Equal(["ON-1"], mine.Json.GetProperty("designs").EnumerateArray().Select(design => design.GetProperty("sku").GetString()));
        Assert.Equal(["RB-014", "None"], mine.Json.GetProperty("unplaced").EnumerateArray().Select(one => one.GetProperty("name").GetString()));
        foreach (var scope in new[] { "check", "verdict", "write" })
        {
            using var other = await studio.ClientFor(scope);
            Assert.Equal(403, (await Send(studio, "", other, ("movements", sheet))).Status);
        }
    }

    [Fact]
    public async Task Nothing_of_the_sheets_is_stored_or_logged()
    {
        var log = new CapturedLog();
        await using var studio = await Stored(log);
        var secret = "Zaunkoenig" + Guid.NewGuid().ToString("N");
        var answer = await Send(studio, "", studio.Client, ("movements", "date,sku,channel,pieces,price,order,ref,buyer\n"
            + $"2027-01-01,RB-014,web,1,52.00,o{secret},r{secret},{secret}\nno day,RB-014,web,1,52.00,o{secret},s{secret},{secret}\n"));
        Assert.Equal(200, answer.Status);
        Assert.DoesNotContain(secret, answer.Text, StringComparison.Ordinal);
        Assert.Contains(log.Lines, line => line.Contains("/v1/evidence", StringComparison.Ordinal));
        Assert.DoesNotContain(log.Lines, line => line.Contains(secret, StringComparison.Ordinal));
        foreach (var file in Directory.EnumerateFiles(studio.Folder).Where(file => !file.EndsWith(".lock", StringComparison.Ordinal)))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var memory = new MemoryStream();
            await stream.CopyToAsync(memory, Studio.Cancellation);
            Assert.True(memory.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(secret)) < 0, file);
        }
    }

    private static async Task<Studio> Stored(CapturedLog? log = null)
    {
        var studio = log is null ? new Studio() : new Studio(configure: log.Of);
        await studio.Has("/v1/profiles/main", Profile);
        await studio.Has("/v1/designs/RB-014", Design);
        await studio.Has("/v1/channels/web", Web);
        return studio;
    }

    private static async Task<Answer> Send(Studio studio, string query, HttpClient client, params (string Part, string Text)[] sheets)
    {
        using var form = new MultipartFormDataContent();
        foreach (var (part, text) in sheets)
            form.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(text)), part, part + ".csv");
        using var response = await client.PostAsync("/v1/evidence" + query, form, Studio.Cancellation);
        return await Answer.Of(response);
    }
}
