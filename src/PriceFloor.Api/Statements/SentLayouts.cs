using FluentValidation;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>The parts of a form that say how its files are written: "card.layout" is the layout of the files that are named "card".</summary>
public sealed class SentLayouts
{
    private const string Ending = ".layout";

    private readonly List<(string Account, byte[] Json)> _sent = [];

    public int Count => _sent.Count;

    /// <summary>Keeps the part if it is a layout; any other part is a file.</summary>
    public bool Takes(string name, byte[] bytes)
    {
        if (name.Length == Ending.Length || !name.EndsWith(Ending, StringComparison.Ordinal))
            return false;
        _sent.Add((name[..^Ending.Length], bytes));
        return true;
    }

    /// <summary>The files with their layouts, or every fault of the layouts.</summary>
    public Outcome<List<SentFile>> Laid(IReadOnlyList<SentFile> files, IValidator<StatementLayout> validator)
    {
        var (layouts, faults) = (new Dictionary<string, StatementLayout>(), new List<Fault>());
        foreach (var (account, json) in _sent)
        {
            var read = JsonBody<StatementLayout>.Read(json, validator);
            faults.AddRange(read.Faults.Select(fault => At(account, fault)));
            if (files.All(file => file.Name != account))
                faults.Add(At(account, FaultCodes.Unexpected,
                    $"No file of the form is named \"{account}\"; a layout has its file's name before {Ending}."));
            else if (read.Found is { } layout && !layouts.TryAdd(account, layout))
                faults.Add(At(account, FaultCodes.Duplicate, $"The form has more than one layout for \"{account}\"."));
        }

        return faults.Find(fault => fault is RequestFault { Type: var type } && type == ProblemTypes.UnreadableRequest) is { } unreadable ? unreadable
            : faults.Count > 0 ? faults
            : files.Select(file => layouts.TryGetValue(file.Name, out var layout) ? file with { Layout = layout } : file).ToList();
    }

    private static Fault At(string account, Fault fault) => fault is RequestFault { Error: { } error } request
        ? request with { Error = error with { Pointer = $"#/{account}{Ending}{error.Pointer?[1..]}" } }
        : fault;

    private static RequestFault At(string account, Code code, string detail) =>
        RequestFault.Invalid(new InputError { Pointer = $"#/{account}{Ending}", Code = code, Detail = detail });
}
