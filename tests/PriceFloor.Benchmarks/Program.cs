using BenchmarkDotNet.Running;
using PriceFloor.Benchmarks;

// micro: the pricing library alone; http: the published service beside a bare Minimal API; bare: that API, as the harness starts it.
switch (args.FirstOrDefault())
{
    case "micro":
        BenchmarkSwitcher.FromAssembly(typeof(PricingBenchmarks).Assembly).Run(args[1..]);
        return 0;
    case "http":
        return await HttpHarness.RunAsync(args[1..]);
    case "compare":
        return await HttpHarness.CompareAsync(args[1..]);
    case "bare":
        await BareApi.RunAsync();
        return 0;
    default:
        Console.Error.WriteLine("dotnet run -c Release --project tests/PriceFloor.Benchmarks -- micro --filter '*' | http [seconds a round, rounds, fresh processes] | compare folder folder [the same]");
        return 1;
}
