using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Documents;

/// <summary>The rules between the fields of a design: one way to give its bench time, steps that materials can find.</summary>
public static class DesignRules
{
    /// <summary>Every rule that the document breaks. Missing required fields are reported elsewhere.</summary>
    public static IEnumerable<Fault> Faults(Design design)
    {
        var points = (design.Making?.Steps ?? []).Select(step => step.Name).Append("start").Append("finish").ToHashSet();
        return
        [
            .. design.Making is { } making ? MakingFaults(making) : [],
            .. Twice(design.Aliases).Select(index => new Fault(FormattableString.Invariant($"/aliases/{index}"), FaultCodes.Duplicate,
                $"\"{design.Aliases[index]}\" stands in the list already; leave one out.")),
            .. design.Materials.SelectMany((line, i) => LineFaults(line)
                .Select(fault => fault with { Pointer = FormattableString.Invariant($"/materials/{i}{fault.Pointer}") })),
            .. design.Materials.SelectMany((line, i) => PointFaults(line, points, i)),
        ];
    }

    private static IEnumerable<Fault> MakingFaults(Making making)
    {
        var ways = new[]
        {
            making.PiecesPerDay is not null,
            making.PiecesPerBenchDay is not null,
            making.MinutesPerPiece is not null,
            making.Steps is not null,
        }.Count(given => given);
        if (ways != 1)
            yield return new("/making", FaultCodes.ExactlyOne,
                "Give the bench time in exactly one way: piecesPerDay, piecesPerBenchDay, minutesPerPiece or steps.");
        if (making.Steps is { Count: 0 })
            yield return new("/making/steps", FaultCodes.Required, "Give at least one step, or give the bench time in another way.");
        if (making.Steps is not null && making.GoodShare != 1)
            yield return new("/making/goodShare", FaultCodes.Unexpected, "With steps, each step has its own goodShare; leave this one out.");
        if (making.SetupMinutes > 0 && making.RunSize is null)
            yield return new("/making/runSize", FaultCodes.Required, "setupMinutes needs runSize: how many pieces are started in one run.");
        var names = (making.Steps ?? []).Select(step => step.Name).ToList();
        foreach (var index in Twice(names))
            yield return new(FormattableString.Invariant($"/making/steps/{index}/name"), FaultCodes.Duplicate,
                $"Another step is named \"{names[index]}\"; give each its own name.");
    }

    private static Fault[] PointFaults(MaterialLine line, HashSet<string?> points, int index) => points.Contains(line.At) ? [] :
    [
        new(FormattableString.Invariant($"/materials/{index}/at"), FaultCodes.UnknownStep,
            $"No step is named \"{line.At}\"; use \"start\", \"finish\" or the name of one of the steps."),
    ];

    /// <summary>A line is either a material with its quantity, or an amount of money.</summary>
    private static IEnumerable<Fault> LineFaults(MaterialLine line)
    {
        if (line.Material is not null == line.Amount is not null)
            return [new("", FaultCodes.ExactlyOne, "A line is either a material of the price list with its quantity, or an amount of money.")];
        return line.Material is not null ? MaterialFaults(line) : AmountFaults(line);
    }

    private static IEnumerable<Fault> MaterialFaults(MaterialLine line)
    {
        if (line.Quantity is null)
            yield return new("/quantity", FaultCodes.Required, "A material needs its quantity.");
        if (line.Name is not null)
            yield return new("/name", FaultCodes.Unexpected, "name is only for a line with an amount; a material has its name already.");
    }

    private static IEnumerable<Fault> AmountFaults(MaterialLine line)
    {
        if (line.Quantity is not null)
            yield return new("/quantity", FaultCodes.Unexpected, "quantity goes with material, not with amount.");
        if (line.WasteShare != 0)
            yield return new("/wasteShare", FaultCodes.Unexpected, "wasteShare goes with material, not with amount; put the waste into the amount.");
        if (line.BatchSize != 1)
            yield return new("/batchSize", FaultCodes.Unexpected, "batchSize goes with material, not with amount; give the amount for one piece.");
    }

    /// <summary>Indices of the names that occur earlier in the list.</summary>
    private static IEnumerable<int> Twice(IReadOnlyList<string?> names)
    {
        var before = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < names.Count; i++)
            if (names[i] is { } name && !before.Add(name))
                yield return i;
    }
}
