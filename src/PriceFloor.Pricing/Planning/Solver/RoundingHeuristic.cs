namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// A primal heuristic: rounds the basic variables of a relaxed solution down or up in every combination and improves what is feasible greedily. It
/// finds good incumbents early; correctness does not depend on how good they are.
/// </summary>
internal sealed class RoundingHeuristic(IntegerProgramme programme, Relaxation relaxation)
{
    private const int MostBasic = 4;

    public long Effort { get; private set; }

    /// <summary>The best feasible integer solution found near the relaxed one, or null.</summary>
    public decimal[]? Round(Node node)
    {
        decimal[]? best = null;
        var bestObjective = 0m;
        var combinations = relaxation.Solved && node.Basic.Length <= MostBasic ? 1 << node.Basic.Length : 1;
        for (var combination = 0; combination < combinations; combination++)
        {
            var units = Rounded(node, combination);
            var slack = SlackOf(node, units);
            if (!Array.TrueForAll(slack, left => left >= 0))
                continue;
            Improve(node, units, slack);
            var objective = IntegerProgramme.Sum(programme.Objective, units);
            if (best is null || objective > bestObjective)
                (best, bestObjective) = (units, objective);
        }

        if (best is null)
            return null;
        for (var i = 0; i < best.Length; i++)
            best[i] += node.LowerBounds[i];
        return programme.IsFeasible(best) ? best : null;
    }

    private decimal[] Rounded(Node node, int combination)
    {
        if (!relaxation.Solved)
            return new decimal[programme.Count];
        decimal[] units = [.. relaxation.Units];
        for (var s = 0; s < node.Basic.Length; s++)
        {
            var i = node.Basic[s];
            units[i] = decimal.Min(node.Ranges[i], IntegerProgramme.Floor(decimal.Max(0, units[i])) + (combination >> s & 1));
        }

        return units;
    }

    private decimal[] SlackOf(Node node, decimal[] units)
    {
        decimal[] slack = [.. node.Slack];
        for (var r = 0; r < slack.Length; r++)
            foreach (var i in relaxation.Free)
                if (units[i] != 0)
                    slack[r] -= units[i] * programme.Constraints[r].Coefficients[i];
        Effort += relaxation.Free.Length * slack.Length + programme.Count / 4;
        return slack;
    }

    /// <summary>Raises each variable, or lowers it, the last ones first, as far as that improves the objective and the slack allows.</summary>
    private void Improve(Node node, decimal[] units, decimal[] slack)
    {
        var free = relaxation.Free.ToArray();
        if (!relaxation.Solved)
            Array.Sort(Array.ConvertAll(free, i => -relaxation.ReducedCosts[i]), free);
        for (var o = 0; o < free.Length; o++)
        {
            var i = programme.Objective[free[o]] > 0 ? free[o] : free[^(o + 1)];
            var coefficient = programme.Objective[i];
            var steps = coefficient > 0 ? node.Ranges[i] - units[i] : coefficient < 0 ? units[i] : 0;
            var direction = coefficient > 0 ? 1 : -1;
            for (var r = 0; r < slack.Length && steps > 0; r++)
                if (direction * programme.Constraints[r].Coefficients[i] is var takes && takes > 0 && takes * steps > slack[r])
                    steps = IntegerProgramme.Floor(decimal.Max(0, slack[r]) / takes);
            if (steps <= 0)
                continue;
            units[i] += direction * steps;
            for (var r = 0; r < slack.Length; r++)
                slack[r] -= direction * steps * programme.Constraints[r].Coefficients[i];
        }

        Effort += relaxation.Free.Length * slack.Length;
    }
}
