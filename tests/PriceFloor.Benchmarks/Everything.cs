namespace PriceFloor.Benchmarks;

/// <summary>Every verb in turn, at lengths that come to about thirteen minutes, in one table.</summary>
public static class Everything
{
    public static Task RunAsync(string[] args) => Verb.PrintAsync(async figures =>
    {
        await Starts.MeasureAsync(figures, ["10"]);
        await BesideBare.MeasureAsync(figures, ["2", "2", "4"]);
        await BesideNode.MeasureAsync(figures, ["2", "3", "2"]);
        await OrdersBesideChecks.MeasureAsync(figures, ["2", "3"]);
        await SheetBatches.MeasureAsync(figures, ["1000000", "7"]);
        await PriceListAfterAChange.MeasureAsync(figures, ["10000", "9"]);
        await StatementsByRules.MeasureAsync(figures, ["100", "21"]);
        await ChangesOfNumbers.MeasureAsync(figures, ["10000", "9"]);
        await PlansAndQuotes.MeasureAsync(figures, ["15"]);
        await ShelfOfTheLog.MeasureAsync(figures, ["1000000", "5"]);
        await LinesOfTheLog.MeasureAsync(figures, ["1000000", "1"]);
        await Writes.MeasureAsync(figures, ["2", "3"]);
        await Growth.MeasureAsync(figures, ["1", "3"]);
        Micro.Measure(figures);
    });
}
