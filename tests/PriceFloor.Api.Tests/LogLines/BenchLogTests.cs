using Xunit;

namespace PriceFloor.Api.Tests.LogLines;

/// <summary>The bench log, and pieces that both lists would make.</summary>
public sealed class BenchLogTests
{
    private const string Book = "ref,on,sku,step,started,good,minutes\n1,2027-03-02,RB-014,,12,11,792\n2,2027-03-02,,,,,45.5\n"
        + "3,2027-03-03,RB-014,torch,12,,700\n";

    [Fact]
    public async Task A_bench_book_is_kept_as_it_was_written()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var sent = await studio.BenchSheet("source=bench-book&wholeDays=true", Book);
        Assert.Equal("3 stored, 0 unchanged, 0 corrected, 0 withdrawn, 0 unplaced, 0 refused", sent.Told());
        Assert.Equal("bench-book 2027-03-02 45.5\nbench-book 2027-03-02 RB-014 12 11 792\nbench-book 2027-03-03 RB-014 torch 12 700",
            await studio.Listed("/v1/bench-log"));
        Assert.Equal("0 stored, 3 unchanged, 0 corrected, 0 withdrawn, 0 unplaced, 0 refused",
            (await studio.BenchSheet("source=bench-book", Book)).Told());
        Assert.Equal(204, (await studio.Delete("/v1/bench-log/bench-book/2")).Status);
        Assert.Equal("bench-book 2027-03-02 RB-014 12 11 792\nbench-book 2027-03-03 RB-014 torch 12 700",
            await studio.Listed("/v1/bench-log?sku=RB-014"));
        Assert.Equal("m0+b4", (await studio.Get("/v1/bench-log")).Json.GetProperty("basis").GetProperty("log").GetString());
    }

    [Fact]
    public async Task Pieces_are_made_on_a_day_by_one_list_only()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.BenchSheet("source=bench-book&countsAsMade=true", Book);
        const string Made = "ref,on,sku,pieces\na,2027-03-02,RB-014,11\nb,2027-03-04,RB-014,10\n";
        var sent = await studio.Sheet("source=stock-book&what=made", Made);
        Assert.Equal("1 stored, 0 unchanged, 0 corrected, 0 withdrawn, 0 unplaced, 1 refused", sent.Told());
        Assert.Equal("2 made-twice", sent.Refused());
        var whole = await studio.Sheet("source=stock-book&what=made&from=2027-03-01&to=2027-03-31", Made);
        Assert.Equal(["made-twice"], whole.IsProblem(422, "invalid-input").Codes);
        Assert.Equal("stock-book 2027-03-04 made RB-014 10", await studio.Listed("/v1/movements"));
    }
}
