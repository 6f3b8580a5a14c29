using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>Makes a part of all plans smaller, by what its relaxation has shown, and cuts what is left in two.</summary>
internal sealed class MixCutting(MixRelaxation relaxation)
{
    /// <summary>
    /// Leaves out plans that gain less than is needed. Each unit by which a choice departs from where the worths put it costs its margin: with a
    /// bound of 70, 55 needed and a margin of 10, it departs by one unit at most.
    /// </summary>
    public void Narrow(MixNode part, decimal needed)
    {
        var spare = decimal.Max(0, relaxation.BoundAtWorths - needed) + MixProgramme.LastDecimal;
        foreach (var i in relaxation.Open)
        {
            var (open, margin) = (part.Open[i], decimal.Abs(relaxation.Margins[i]));
            if (margin * open <= spare)
                continue;
            var departs = MixProgramme.Whole(spare / margin);
            if (departs >= open)
                continue;
            if (relaxation.Margins[i] < 0)
            {
                part.Narrow(i, 0, departs);
                continue;
            }

            relaxation.Units[i] -= open - departs;
            part.Narrow(i, open - departs, open);
        }
    }

    /// <summary>Puts both halves on the pile, the likelier one on top; false where nothing is open any more.</summary>
    public bool Cut(MixNode part, Stack<MixNode> onto)
    {
        var (choice, at) = MostBroken(part) ?? Widest(part);
        if (choice < 0)
            return false;
        var open = part.Open[choice];
        var below = decimal.Min(open - 1, MixProgramme.Whole(at));
        var (low, high) = (part.Between(choice, 0, below), part.Between(choice, below + 1, open));
        var lowIsLikelier = at - below < 0.5m;
        onto.Push(lowIsLikelier ? high : low);
        onto.Push(lowIsLikelier ? low : high);
        return true;
    }

    /// <summary>The split choice that is furthest from whole pieces.</summary>
    private (int Choice, decimal At)? MostBroken(MixNode part)
    {
        (int, decimal)? found = null;
        var broken = 0m;
        foreach (var i in part.Split)
        {
            if (!relaxation.Solved || part.Open[i] == 0)
                continue;
            var at = decimal.Max(0, relaxation.Units[i]);
            var over = at - MixProgramme.Whole(at);
            if (Rounding.Settle(decimal.Min(over, 1 - over)) is var by && by > broken)
                (found, broken) = ((i, at), by);
        }

        return found;
    }

    /// <summary>Without one, the choice with the most open units, in the middle.</summary>
    private (int Choice, decimal At) Widest(MixNode part)
    {
        var choice = -1;
        foreach (var i in relaxation.Open)
            if (part.Open[i] > 0 && (choice < 0 || part.Open[i] > part.Open[choice]))
                choice = i;
        return (choice, choice < 0 ? 0 : decimal.Truncate(part.Open[choice] / 2));
    }
}
