using PriceFloor.Api.Http;
using PriceFloor.Api.Statements;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Statements;

namespace PriceFloor.Api.Evidence;

/// <summary>The lines of the two sheets of a request, before names are looked up. Kept nowhere else.</summary>
public sealed record EvidenceSheets(IReadOnlyList<SentMovement> Movements, IReadOnlyList<SentBenchEntry> Bench)
{
    /// <summary>The lines, or what is wrong with the sheets as a whole.</summary>
    public static Outcome<EvidenceSheets> Read(IReadOnlyList<SentFile> files, EvidenceQuery query)
    {
        var (movements, bench, faults) = (new List<SentMovement>(), new List<SentBenchEntry>(), new List<Fault>());
        foreach (var file in files)
            if (file.Name == EvidenceQuery.MovementsPart)
                Take(MovementSheet.Read(file.Bytes.Span, query.Movements), movements, file.Name, faults);
            else if (file.Name == EvidenceQuery.BenchPart)
                Take(BenchSheet.Read(file.Bytes.Span, query.BenchSheet), bench, file.Name, faults);
            else
                faults.Add(RequestFault.Invalid(new InputError
                {
                    Pointer = "#",
                    Code = InputCodes.UnknownProperty,
                    Detail = "The form has a field that is neither \"movements\" nor \"bench\"; send a sheet under each of these names, or one of "
                        + "them.",
                }));
        return faults.Count > 0 ? faults : new EvidenceSheets(movements, bench);
    }

    /// <summary>Both sheets in their places.</summary>
    public (SettledLines<Movement> Movements, SettledLines<BenchEntry> Bench) Settled(EvidenceQuery query, KnownNames names)
    {
        var window = new LogWindow(query.Asked.From, query.Asked.To);
        return (MovementSettling.Settle(Movements, query.MovementSource, names, window),
            BenchSettling.Settle(Bench, query.BenchSource.Name, names, window));
    }

    private static void Take<T>(Outcome<List<T>> read, List<T> into, string part, List<Fault> faults)
    {
        if (read.Found is { } lines)
            into.AddRange(lines);
        else
            faults.AddRange(read.Faults.Select(fault => FaultOf(fault, part)));
    }

    /// <summary>A fault that a parameter can fix is invalid input; any other is unreadable.</summary>
    private static RequestFault FaultOf(Fault fault, string part)
    {
        if (fault.Code == FileCodes.TooMany)
            return RequestFault.Of(ProblemTypes.TooLarge, fault.Detail);
        var detail = fault.Detail.Replace(" ?", " ?" + EvidenceQuery.Prefix(part), StringComparison.Ordinal);
        if (fault.Pointer.Length > 0)
            return RequestFault.Invalid(new InputError
            {
                Parameter = EvidenceQuery.Prefix(part) + fault.Pointer,
                Code = fault.Code,
                Detail = detail
            });
        var error = new InputError { Pointer = "#/" + part, Code = fault.Code, Detail = detail };
        return fault.Code == FileCodes.Dialect ? RequestFault.Invalid(error) : RequestFault.Unreadable(error);
    }
}
