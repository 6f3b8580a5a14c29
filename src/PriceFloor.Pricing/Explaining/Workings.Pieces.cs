using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    public static IEnumerable<Working> Of(Piece piece)
    {
        var time = piece.Time;
        var making = piece.Design.Making;
        if (making.Steps is { } steps)
            foreach (var (i, step) in steps.Index().Reverse())
                yield return new($"entering{i + 1}", $"pieces that enter step {i + 1}{Named(step.Name)} for each good one",
                    i + 1 < steps.Count ? $"entering{i + 2} / {Number(step.GoodShare)}" : $"1 / {Number(step.GoodShare)}", time.Entering[i]);
        yield return new("starts", "pieces started for each good one", making.Steps is null ? $"1 / {Number(making.GoodShare)}" : "entering1", time.Starts);
        yield return new("hoursPerGoodPiece", "bench hours for each good piece", HoursFormula(making, piece.Year.Profile.Calendar), time.Hours);
        yield return new("benchHours", "bench hours a sold piece", $"hoursPerGoodPiece / {Number(piece.SoldShare)}", piece.BenchHours);
        foreach (var (i, line) in piece.Design.Materials.Index())
            yield return new($"material{i + 1}", $"{line.Material ?? line.Name ?? "material"} for each good piece, used at {line.At}",
                $"{CostFormula(line, piece.Year)} * {AtFormula(line.At, making)}", piece.MaterialCosts[i]);
        yield return new("materials", "materials a sold piece",
            $"({Sum(piece.MaterialCosts.Select((_, i) => $"material{i + 1}"))}) / {Number(piece.SoldShare)}", piece.Materials);
        yield return new("secondsCredit", "what its rejected pieces bring as seconds",
            piece.Design.Seconds is { } seconds ? $"{Number(seconds.Share)} * {Number(seconds.Price)} * (starts - 1) / {Number(piece.SoldShare)}" : "0", piece.SecondsCredit);
        yield return new("benchCost", "what its bench time must recover", "perBenchHour * benchHours", piece.BenchCost);
        yield return new("floor", "what one sold piece must bring in", "max(0, benchCost + materials - secondsCredit)", piece.Floor);
        yield return new("piecesPerYear", "pieces that the year's bench hours make", "benchHoursOfTheYear / benchHours", piece.PiecesPerYear);
    }

    private static string HoursFormula(Making making, StudioCalendar calendar)
    {
        var minutes = making switch
        {
            { PiecesPerDay: { } pieces } => $"starts * 60 * {Number(calendar.HoursPerDay)} * {Number(calendar.BenchShare)} / {Number(pieces)}",
            { PiecesPerBenchDay: { } pieces } => $"starts * 60 * {Number(calendar.HoursPerDay)} / {Number(pieces)}",
            { MinutesPerPiece: { } each } => $"starts * {Number(each)}",
            _ => Sum((making.Steps ?? []).Select((step, i) => $"entering{i + 1} * {Number(step.HandsOnMinutes)} / {Number(step.BatchSize)}")),
        };
        return $"({minutes} + starts * {Number(making.SetupMinutes)} / {Number(making.RunSize ?? 1)}) / 60";
    }

    private static string CostFormula(MaterialLine line, StudioYear year) => line.Material is { } material
        ? $"{Number(year.PriceOf(material) ?? 0)} * {Number(line.Quantity ?? 0)} / (1 - {Number(line.WasteShare)}) / {Number(line.BatchSize)}"
        : Number(line.Amount ?? 0);

    private static string AtFormula(string at, Making making) => at switch
    {
        "start" => "starts",
        "finish" => "1",
        _ => $"entering{(making.Steps ?? []).Index().First(step => step.Item.Name == at).Index + 1}",
    };
}
