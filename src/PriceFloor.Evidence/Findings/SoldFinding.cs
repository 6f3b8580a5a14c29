using PriceFloor.Evidence.Shelves;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>The share of finished pieces that sells, from how old they were when they went.</summary>
internal sealed class SoldFinding
{
    private const int Days = 730, FewAtRisk = 5, FewGone = 10, YoungDays = 180;

    private SoldFinding(SoldCurve curve, Estimate estimate, (int Pieces, bool IsEnough, bool IsYoung) seen) =>
        (Curve, Estimate, Pieces, IsEnough, IsYoung) = (curve, estimate, seen.Pieces, seen.IsEnough, seen.IsYoung);

    public SoldCurve Curve { get; }

    public Estimate Estimate { get; }

    public int Pieces { get; }

    public bool IsEnough { get; }

    /// <summary>Too few pieces are two years old, so the share is a least one.</summary>
    public bool IsYoung { get; }

    /// <summary>The share of pieces with a day on which they were made; null where there are none.</summary>
    public static SoldFinding? Of(ShelfTimes shelf, decimal level)
    {
        var times = shelf.Times;
        if (times.Count == 0)
            return null;
        var curve = SoldCurve.Of(times);
        var isYoung = curve.AtRisk(Days) < FewAtRisk;
        var age = isYoung ? curve.OldestWith(FewAtRisk) ?? 0 : Days;
        var gone = times.Where(time => time.End != ShelfEnd.OnShelf).Sum(time => time.Pieces);
        var estimate = curve.SoldBy(age, level);
        var isEnough = gone >= FewGone && shelf.Oldest >= YoungDays && estimate.Value > 0;
        return new SoldFinding(curve, estimate, (times.Sum(time => time.Pieces), isEnough, isYoung));
    }

    public Found<T> As<T>(decimal stored, Func<T, decimal, T> change) => new(
        new Finding
        {
            Pointer = "/soldShare",
            Estimate = Estimate,
            Observations = Pieces,
            Of = "pieces made",
            Stored = stored,
            Says = Finding.Judge(Estimate, stored, IsEnough),
        },
        document => change(document, Estimate.Value));
}
