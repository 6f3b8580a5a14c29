namespace PriceFloor.Benchmarks;

/// <summary>What all verbs print: the machine, and their figures in a table.</summary>
public static class Verb
{
    public static async Task PrintAsync(Func<Figures, Task> measure)
    {
        Machine.Print();
        var figures = new Figures();
        await measure(figures);
        figures.Print();
    }
}
