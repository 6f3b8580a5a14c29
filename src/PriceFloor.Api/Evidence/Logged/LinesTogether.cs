using System.Collections;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>
/// The movements of some designs, read in one go through the list. Lines of a design lie as far apart as they were sold, so to look each of them up
/// costs forty times what it costs to read one in passing.
/// </summary>
internal sealed class LinesTogether
{
    /// <summary>So many lines are held at once, about 5 MB; a design with more of them is read alone.</summary>
    private const int Most = 200_000;

    /// <summary>Reading all lines pays if one in so many of them is wanted.</summary>
    private const int Worth = 30;

    private readonly Snapshot _snapshot;
    private readonly LogRowQuestion _question;
    private readonly LogWatch _watch;

    /// <summary>The positions of the group's own lines that are in orders with others.</summary>
    private readonly BitArray _own;

    /// <param name="snapshot">The store.</param>
    /// <param name="question">Which lines.</param>
    /// <param name="watch">Knows the lines of other designs in their orders, which are read too.</param>
    public LinesTogether(Snapshot snapshot, LogRowQuestion question, LogWatch watch) =>
        (_snapshot, _question, _watch, _own) = (snapshot, question, watch, new BitArray(checked((int)question.UpTo + 1)));

    /// <summary>The lines of the group that was read last, and those of other designs in their orders.</summary>
    public HeldMovements Lines { get; } = new();

    /// <summary>Which designs are best read together; those that are best read alone are in no group.</summary>
    /// <param name="wanted">Numbers of the designs that are wanted.</param>
    public async ValueTask<List<IReadOnlyList<long>>> Groups(IReadOnlyCollection<long> wanted)
    {
        var lines = await _snapshot.MovementsByDesign(_question.UpTo);
        var (all, groups, group, held) = (lines.Sum(design => design.Lines), new List<IReadOnlyList<long>>(), new List<long>(), 0L);
        foreach (var (design, own) in lines.Where(design => wanted.Contains(design.Design) && design.Lines <= Most).OrderBy(design => design.Design))
        {
            if (held + own > Most)
                Close();
            group.Add(design);
            held += own;
        }

        Close();
        return groups;

        void Close()
        {
            if (group.Count > 1 && held * Worth >= all)
                groups.Add(group);
            (group, held) = ([], 0);
        }
    }

    /// <summary>Reads a group of designs in place of the one before.</summary>
    public async ValueTask Read(IReadOnlyList<long> designs)
    {
        Lines.Clear(designs);
        _own.SetAll(false);
        var isShared = await _watch.Sharing();
        await _snapshot.MovementRows(_question with { Designs = designs },
            row => Lines.Add(row, _own[(int)row.Position] = isShared(row.Position)));
        var others = await _watch.OfOrders(Lines.Orders, position => position <= _question.UpTo && !_own[(int)position]);
        others.Sort();
        await _snapshot.MovementRowsAt(others, _question, row => Lines.AddOther(row));
    }
}
