namespace PriceFloor.Benchmarks;

/// <summary>Single price checks of two published folders of the service: "ours" is the second.</summary>
public static class BeforeAndAfter
{
    public static Task RunAsync(string[] args) => args.Length < 2
        ? throw new ArgumentException("Name two published folders.", nameof(args))
        : Verb.PrintAsync(figures => new ChecksInTurn("before", new WantedOfChecks()).MeasureAsync(figures, args[2..],
            () => CheckingService.OursAsync(args[0], ChecksInTurn.ReferencePort), () => CheckingService.OursAsync(args[1], ChecksInTurn.OurPort)));
}
