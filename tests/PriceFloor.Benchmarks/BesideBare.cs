namespace PriceFloor.Benchmarks;

/// <summary>Single price checks of the published service beside a bare Minimal API.</summary>
public static class BesideBare
{
    private static readonly WantedOfChecks s_wanted = new(Rate: "at least 0.85", Cpu: "at most 1.3", P99: "at most 1.15", Peak: "at most 1.4");

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var published = await Published.Folder;
        await new ChecksInTurn("bare", s_wanted).MeasureAsync(figures, args,
            () => BareApi.AsCheckingAsync(published, ChecksInTurn.ReferencePort), () => CheckingService.OursAsync(published, ChecksInTurn.OurPort));
    }
}
