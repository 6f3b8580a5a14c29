using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>What must hold for any figures.</summary>
public sealed class LevelProperties
{
    [Property]
    public Property A_surer_level_holds_the_less_sure_ones() => Prop.ForAll(Gen.Choose(1, 40).ListOf().Resize(30).ToArbitrary(), sizes =>
    {
        if (sizes.Count == 0)
            return true;
        var lots = sizes.Select((size, i) => new Lot(size, (size * (i % 5 + 1) / 5))).ToList();
        var parts = sizes.Select((size, i) => new RatioPart(size * 3 + i % 7, size)).ToList();
        return Hold(level => LotShare.Of(lots)!.At(level)) && Hold(level => Ratio.Of(parts)!.At(level, 2))
            && Hold(level => new RatePrior(0.5m, 0).At(new Sales(sizes.Sum(), sizes.Count), level))
            && Hold(level => SoldCurve.Of(sizes.Select((size, i) => new ShelfTime(size, (ShelfEnd)(i % 3)))).SoldBy(730, level));
    });

    [Property]
    public Property One_more_good_piece_never_lowers_the_good_share_of_a_load() => Prop.ForAll(
        Gen.Choose(1, 200).ToArbitrary(), Gen.Choose(0, 200).ToArbitrary(), (pieces, good) =>
            good >= pieces || LotShare.Of([new Lot(pieces, good + 1)])!.At(0.9m).Value >= LotShare.Of([new Lot(pieces, good)])!.At(0.9m).Value);

    /// <summary>Where some are given or lost it can: a later sale is then one of fewer that got so old.</summary>
    [Property]
    public Property One_more_unsold_piece_never_raises_the_share_sold_where_none_is_given() => Prop.ForAll(
        Gen.Choose(0, 800).ListOf().Resize(40).ToArbitrary(), Gen.Choose(0, 800).ToArbitrary(), (ages, age) =>
        {
            var pieces = ages.Select((days, i) => new ShelfTime(days, i % 3 == 0 ? ShelfEnd.OnShelf : ShelfEnd.Sold)).ToList();
            var before = SoldCurve.Of(pieces).ShareAt(730).Share;
            return SoldCurve.Of([.. pieces, new ShelfTime(age, ShelfEnd.OnShelf)]).ShareAt(730).Share <= before + 1e-12;
        });

    [Property]
    public Property The_order_of_pieces_does_not_matter(int[] ages)
    {
        var pieces = ages.Select((days, i) => new ShelfTime(int.Abs(days % 900), (ShelfEnd)(i % 3))).ToList();
        var forth = SoldCurve.Of(pieces);
        pieces.Reverse();
        return (forth.SoldBy(730, 0.9m) == SoldCurve.Of(pieces).SoldBy(730, 0.9m)).ToProperty();
    }

    private static bool Hold(Func<decimal, Estimate> at)
    {
        var (half, nine, most) = (at(0.5m), at(0.9m), at(0.99m));
        return half.Low is null || (most.Low <= nine.Low && nine.Low <= half.Low && half.High <= nine.High && nine.High <= most.High
            && half.Low <= half.High);
    }
}
