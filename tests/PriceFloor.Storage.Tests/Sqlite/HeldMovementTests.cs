using PriceFloor.Storage.Tests.Contract;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Rows of the log in blocks of memory. A database would not take a name as long as this one.</summary>
public sealed class HeldMovementTests : StoreWithALog<SqliteUnderTest>
{
    [Fact]
    public void Many_rows_come_back_as_they_were_held_also_after_one_that_is_long()
    {
        Send(Sold("1"), Sold("2") with { Piece = new string('p', 300_000) }, Sold("3") with { Piece = "7/25" });
        var (rows, held, end) = (new List<MovementRow>(), new HeldMovements(), Position.Movements);
        Store.Read(async snapshot =>
        {
            await snapshot.MovementRows(new LogRowQuestion { UpTo = end }, rows.Add);
            return true;
        });
        var many = Enumerable.Repeat(new[] { rows[0], rows[2] }, 9000).SelectMany(two => two).ToList();
        many.InsertRange(9000, [rows[1], rows[1]]);
        for (var turn = 0; turn < 2; turn++)
        {
            held.Clear([rows[0].Design]);
            Assert.All(many, row => held.Add(row, isShared: true));
            Assert.Equal(many, Taken(take => held.Of(rows[0].Design, take)));
            Assert.Equal(9000, Taken(take => held.OfOrder(rows[0].OrderMark!.Value, take)).Count);
            many.Reverse();
        }
    }
}
