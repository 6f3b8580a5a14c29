using System.Text;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Statements;
using Xunit;

namespace PriceFloor.Evidence.Tests.Sheets;

public sealed class BenchSheetTests
{
    [Fact]
    public void A_bench_book_is_read_with_steps_without_steps_and_away_from_pieces()
    {
        var settled = Settled("""
            on,sku,step,started,good,minutes,ref
            2027-03-02,RB-014,torch,12,11,792,1
            2027-03-02,RB-014,,12,12,706.5,2
            2027-03-03,,,,,45,3
            2027-03-03,RB-014,torch,12,,,4
            """);

        Assert.Equal(["torch 12 11 792", " 12 12 706.5", "   45", "torch 12  "], settled.Used.Select(line => Told(line.Entry)));
        Assert.Equal([1L, 2L, 3L, 4L], settled.Used.Select(line => line.Entry.Position));
        Assert.Null(settled.Used[2].Entry.Sku);
    }

    [Fact]
    public void More_good_than_started_no_minutes_and_steps_away_from_pieces_are_refused()
    {
        var settled = Settled("""
            on,sku,step,started,good,minutes
            2027-03-02,RB-014,torch,12,13,792
            2027-03-02,RB-014,torch,0,0,792
            2027-03-02,RB-014,torch,,,
            2027-03-02,RB-014,torch,,11,792
            2027-03-02,,packing,,,45
            2027-03-02,,,12,,45
            2027-03-02,RB-014,torch,12,11,-1
            2027-03-02,RB-014,torch,12,11,0.001
            2027-03-02,NEW-1,torch,12,11,792
            """);

        Assert.Equal("2 out-of-range, 3 out-of-range, 4 required, 5 required, 6 required, 7 required, 8 out-of-range, 9 out-of-range",
            string.Join(", ", settled.Refused.Select(line => $"{line.Line} {line.Code.Word}")));
        Assert.Equal("NEW-1", Assert.Single(settled.Unplaced).Name);
        Assert.Equal(new LineCount(9, 0), settled.Read);
    }

    [Fact]
    public void A_bench_sheet_needs_days_and_minutes_or_pieces()
    {
        Assert.Equal(["minutesColumn"], BenchSheet.Read("on,sku\n"u8, new LogSheet()).Faults.Select(fault => fault.Pointer));
        Assert.Equal(FileCodes.MissingColumn, BenchSheet.Read("sku,minutes\n"u8, new LogSheet()).Faults[0].Code);
    }

    private static string Told(BenchEntry entry) => FormattableString.Invariant($"{entry.Step} {entry.Started} {entry.Good} {entry.Minutes}");

    private static SettledLines<BenchEntry> Settled(string text) =>
        BenchSettling.Settle(BenchSheet.Read(Encoding.UTF8.GetBytes(text), new LogSheet()).Value, "bench-book", Shop.Names, new LogWindow());
}
