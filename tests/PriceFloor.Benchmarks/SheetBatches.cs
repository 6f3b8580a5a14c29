namespace PriceFloor.Benchmarks;

/// <summary>
/// A sheet of price checks, answered row by row, beside a plain copy of the same stream and a script in Python that answers the same.
/// </summary>
public static class SheetBatches
{
    private const int Port = 5491, BarePort = 5492;

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (rows, rounds) = Numbers.Of(args, 1_000_000, 5) is [var a, var b] ? (a, b) : default;
        var published = await Published.Folder;
        using var files = new TemporaryFolder();
        var sheet = files.File("sheet.csv");
        SheetOfChecks.Write(sheet, rows);
        await using var bare = await BareApi.StartAsync(published, BarePort);
        await using var studio = await BenchStudio.StartAsync(published, Port);
        await studio.ArrangeAsync(200);
        var priceList = files.File("price-list.csv");
        await File.WriteAllTextAsync(priceList, await studio.SendAsync(HttpMethod.Get, "/v1/price-list", accept: "text/csv"));
        var key = await studio.MakeKeyAsync();
        await Load.AskAsync(Port, WireRequest.Check(key));
        await Task.Delay(1000);
        var idle = studio.Process.Memory.Now;
        studio.Process.ForgetPeak();
        for (var round = 0; round <= rounds; round++)
        {
            var copy = await ExchangeAsync(bare, "/copy", "", sheet, rows);
            var ours = await ExchangeAsync(studio.Process, "/v1/price-checks/batch", key, sheet, rows);
            var python = await PythonScript.RunAsync(priceList, sheet, files.File("by-python.csv"));
            if (round > 0) // the first makes all of them ready
                Add(figures, rows, copy, ours, python);
        }

        figures.Add("sheet: memory at its peak above idle", " MiB", studio.Process.Memory.Peak - idle, "at most 40 MB");
        await HoldToTheSameAnswerAsync(studio, files);
    }

    private static void Add(Figures figures, int rows, Stretch copy, Stretch ours, (double Seconds, double CpuSeconds)? python)
    {
        figures.Add("sheet: rows/s beside a plain copy", "", "copy", rows / copy.Seconds, rows / ours.Seconds);
        figures.Add("sheet: rows for each second of one core", "", rows / ours.CpuSeconds, "at least 1,000,000");
        figures.Add("sheet: server CPU for all of it", " s", ours.CpuSeconds); // a copy's is a few of the system's ticks of 10 ms: no figure
        if (python is not { } script)
        {
            Console.WriteLine("skipped: beside Python: there is no python3 here");
            return;
        }

        figures.Add("sheet: rows/s beside Python", "", "python", rows / script.Seconds, rows / ours.Seconds, "at least 4");
        figures.Add("sheet: rows for each second of one core, beside Python", "", "python", rows / script.CpuSeconds, rows / ours.CpuSeconds);
    }

    private static async Task<Stretch> ExchangeAsync(ServedProcess service, string path, string key, string sheet, int rows)
    {
        var before = service.Cpu;
        var (took, lines) = await SheetExchange.RunAsync(service.Port, path, key, sheet);
        return lines == rows + 1
            ? new Stretch(took.TotalSeconds, (service.Cpu - before).TotalSeconds)
            : throw new InvalidOperationException($"{path} answered {lines} lines to {rows + 1}.");
    }

    /// <summary>What Python answers is what we answer, byte by byte.</summary>
    private static async Task HoldToTheSameAnswerAsync(BenchStudio studio, TemporaryFolder files)
    {
        var (sheet, answer) = (files.File("short.csv"), files.File("short-by-python.csv"));
        SheetOfChecks.Write(sheet, 10_000);
        var ours = await studio.SendAsync(HttpMethod.Post, "/v1/price-checks/batch", await File.ReadAllTextAsync(sheet), "text/csv");
        if (await PythonScript.RunAsync(files.File("price-list.csv"), sheet, answer) is not null && await File.ReadAllTextAsync(answer) != ours)
            throw new InvalidOperationException("The script in Python answers differently.");
    }

    private sealed record Stretch(double Seconds, double CpuSeconds);
}
