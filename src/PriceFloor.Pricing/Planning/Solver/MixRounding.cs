namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// Makes a plan of whole pieces from a relaxed one: the split choices are rounded down or up in every way, and what fits is improved piece
/// by piece. It finds good plans early; nothing rests on how good they are.
/// </summary>
internal sealed class MixRounding(MixProgramme programme, MixRelaxation relaxation)
{
    private const int MostSplit = 4;

    public long Effort { get; private set; }

    /// <summary>The best plan of whole pieces found near the relaxed one, or null.</summary>
    public decimal[]? Round(MixNode part)
    {
        decimal[]? best = null;
        var bestGain = 0m;
        var ways = relaxation.Solved && part.Split.Length <= MostSplit ? 1 << part.Split.Length : 1;
        for (var way = 0; way < ways; way++)
        {
            var units = Rounded(part, way);
            var room = RoomOf(part, units);
            if (!Array.TrueForAll(room, left => left >= 0))
                continue;
            Improve(part, units, room);
            var gain = MixProgramme.Sum(programme.Gains, units);
            if (best is null || gain > bestGain)
                (best, bestGain) = (units, gain);
        }

        if (best is null)
            return null;
        for (var i = 0; i < best.Length; i++)
            best[i] += part.Decided[i];
        return programme.Holds(best) ? best : null;
    }

    private decimal[] Rounded(MixNode part, int way)
    {
        if (!relaxation.Solved)
            return new decimal[programme.Count];
        decimal[] units = [.. relaxation.Units];
        for (var s = 0; s < part.Split.Length; s++)
        {
            var i = part.Split[s];
            units[i] = decimal.Min(part.Open[i], MixProgramme.Whole(decimal.Max(0, units[i])) + (way >> s & 1));
        }

        return units;
    }

    private decimal[] RoomOf(MixNode part, decimal[] units)
    {
        decimal[] room = [.. part.Room];
        for (var r = 0; r < room.Length; r++)
            foreach (var i in relaxation.Open)
                if (units[i] != 0)
                    room[r] -= units[i] * programme.Rows[r].Takes[i];
        Effort += relaxation.Open.Length * room.Length + programme.Count / 4;
        return room;
    }

    /// <summary>Gives each choice as many more units, or the last ones first as many less, as gain something and fit.</summary>
    private void Improve(MixNode part, decimal[] units, decimal[] room)
    {
        var open = relaxation.Open.ToArray();
        if (!relaxation.Solved)
            Array.Sort(Array.ConvertAll(open, i => -relaxation.Margins[i]), open);
        for (var o = 0; o < open.Length; o++)
        {
            var i = programme.Gains[open[o]] > 0 ? open[o] : open[^(o + 1)];
            var gains = programme.Gains[i];
            var steps = gains > 0 ? part.Open[i] - units[i] : gains < 0 ? units[i] : 0;
            var way = gains > 0 ? 1 : -1;
            for (var r = 0; r < room.Length && steps > 0; r++)
                if (way * programme.Rows[r].Takes[i] is var takes && takes > 0 && takes * steps > room[r])
                    steps = MixProgramme.Whole(decimal.Max(0, room[r]) / takes);
            if (steps <= 0)
                continue;
            units[i] += way * steps;
            for (var r = 0; r < room.Length; r++)
                room[r] -= way * steps * programme.Rows[r].Takes[i];
        }

        Effort += relaxation.Open.Length * room.Length;
    }
}
