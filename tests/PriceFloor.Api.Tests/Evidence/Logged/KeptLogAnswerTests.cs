using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.Evidence.Logged;

/// <summary>An answer about the log is kept, and given again as long as it would come out the same.</summary>
public sealed class KeptLogAnswerTests
{
    private static readonly string[] s_paths =
    [
        $"/v1/designs/RB-014/evidence?to={RiverDropLog.LastDay}", $"/v1/designs/RB-014/learning.svg?to={RiverDropLog.LastDay}",
        $"/v1/channels/web/evidence?to={RiverDropLog.LastDay}", $"/v1/profiles/main/evidence?to={RiverDropLog.LastDay}",
        $"/v1/shelf?profile=main&to={RiverDropLog.LastDay}", $"/v1/shelf.svg?profile=main&to={RiverDropLog.LastDay}",
        $"/v1/designs/RB-014/demand?to={RiverDropLog.LastDay}", $"/v1/stock?olderThan=1&to={RiverDropLog.LastDay}",
    ];

    [Fact]
    public async Task The_same_question_is_not_asked_of_the_store_again()
    {
        Assert.SkipWhen(ServerStore.IsForAll, "Another process may write to a database, so it is asked each time.");
        var asked = 0;
        await using var studio = new Studio(configure: host => CountedEngine.Count(host, () => Interlocked.Increment(ref asked)));
        await RiverDropLog.Fill(studio);
        var first = await Answers(studio);
        var before = Volatile.Read(ref asked);
        Assert.Equal(first, await Answers(studio));
        Assert.Equal(before, Volatile.Read(ref asked));
        await studio.Get(s_paths[0] + "&level=0.8");
        Assert.True(Volatile.Read(ref asked) > before); // another question
    }

    [Fact]
    public async Task A_line_that_comes_is_corrected_or_goes_is_in_the_next_answer()
    {
        await using var studio = new Studio();
        await RiverDropLog.Fill(studio);
        var before = await Answers(studio);
        await studio.Sheet("source=late", SentLog.Heading + "1,2027-12-01,RB-014,web,1,52.00,A\n");
        var (once, held) = (await Answers(studio), await Net(studio));
        AllDiffer(before, once);
        await studio.Sheet("source=late", SentLog.Heading + "1,2027-12-01,RB-014,web,1,80.00,A\n");
        Assert.NotEqual(held, await Net(studio));
        await studio.Delete("/v1/movements/late/1");
        // The log went on, so what it rests on is another; its figures are what they were.
        Assert.Equal(before[0].Split("\"basis\"")[0], (await Answers(studio))[0].Split("\"basis\"")[0]);
    }

    [Fact]
    public async Task Another_document_another_day_and_another_key_have_answers_of_their_own()
    {
        await using var studio = new Studio();
        await RiverDropLog.Fill(studio);
        const string Path = "/v1/designs/RB-014/evidence";
        var first = (await studio.Get(Path)).Text;
        studio.Clock.Advance(TimeSpan.FromDays(300));
        var later = (await studio.Get(Path)).Text;
        Assert.NotEqual(first, later); // pieces that are not sold are older
        await studio.Has("/v1/designs/RB-014", RiverDropLog.Design.Replace("\"amount\":6", "\"amount\":7", StringComparison.Ordinal));
        Assert.NotEqual(later, (await studio.Get(Path)).Text);

        await studio.Has("/v1/profiles/other", RiverDropLog.Profile);
        var made = await studio.Post("/v1/keys", """{"name":"held","scopes":["read"],"profiles":["other"]}""");
        using var other = studio.ClientWith(made.Json.GetProperty("key").GetString());
        (await studio.Get(Path, other)).IsProblem(404, "not-found");
        var channel = $"/v1/channels/web/evidence?to={RiverDropLog.LastDay}";
        Assert.Equal(200, (await studio.Get(channel)).Status);
        (await studio.Get(channel, other)).IsProblem(422, "cannot-compute"); // of no design that it may see
    }

    [Fact]
    public async Task A_kept_answer_keeps_its_tag()
    {
        await using var studio = new Studio();
        await RiverDropLog.Fill(studio);
        var first = await studio.Get(s_paths[0]);
        Assert.Equal(first["ETag"], (await studio.Get(s_paths[0]))["ETag"]);
        Assert.Equal(304, (await studio.Get(s_paths[0], null, ("If-None-Match", first["ETag"]!))).Status);
    }

    private static void AllDiffer(IReadOnlyList<string> some, IReadOnlyList<string> others)
    {
        // One more sale hardly shows in pictures.
        foreach (var (path, one, other) in s_paths.Zip(some, others).Where(answer => !answer.First.Contains(".svg", StringComparison.Ordinal)))
            Assert.True(one != other, path);
    }

    private static async Task<List<string>> Answers(Studio studio)
    {
        var answers = new List<string>();
        foreach (var path in s_paths)
        {
            var answer = await studio.Get(path);
            Assert.True(answer.Status == 200, path + answer.Text);
            answers.Add(answer.Text);
        }

        return answers;
    }

    private static async Task<decimal> Net(Studio studio) =>
        (await studio.Get(s_paths[0])).Json.GetProperty("take").GetProperty("net").GetDecimal();
}
