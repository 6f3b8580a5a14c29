namespace PriceFloor.Evidence.Decisions;

/// <summary>One word for a design, and what it rests on.</summary>
/// <param name="Word">The word.</param>
/// <param name="Because">What it rests on, in the order of an answer.</param>
/// <param name="Assumed">The rules of thumb that were used.</param>
public sealed record Decision(DecisionWord Word, IReadOnlyList<DecisionGround> Because, IReadOnlyList<DecisionRule> Assumed)
{
    /// <summary>Whether what an hour must earn lies within what it may have earned.</summary>
    public bool IsTooCloseToTell { get; init; }

    /// <summary>The first rule that holds.</summary>
    public static Decision Of(DecisionFacts facts)
    {
        var rules = new List<DecisionRule> { DecisionRule.FewOrders, DecisionRule.FewDays };
        if (facts.Orders < DecisionRules.FewOrders || facts.DaysOnOffer < DecisionRules.FewDays || facts.Earned is not { } earned)
            return new Decision(DecisionWord.Wait, [DecisionGround.Take], rules);
        if (earned.Low.Reaches(facts.PerHour))
            return Earning(facts, rules);
        if (earned.High.Reaches(facts.PerHour))
            return new Decision(DecisionWord.Keep, [DecisionGround.Minutes, DecisionGround.Take], rules) { IsTooCloseToTell = true };
        return Short(facts, rules);
    }

    /// <summary>Whether more is wanted than is there.</summary>
    public static bool IsDemandUnmet(DecisionFacts facts) => facts.SoldOutShare >= DecisionRules.SoldOutShare
        || facts.NextPieces >= DecisionRules.DemandOverStock * facts.PiecesToBeHad;

    private static Decision Earning(DecisionFacts facts, List<DecisionRule> rules)
    {
        rules.AddRange(DecisionRule.SoldOutShare, DecisionRule.DemandOverStock);
        return IsDemandUnmet(facts)
            ? new Decision(DecisionWord.Raise, [DecisionGround.Minutes, DecisionGround.Take, DecisionGround.Days], rules)
            : new Decision(DecisionWord.Keep, [DecisionGround.Minutes, DecisionGround.Take], rules);
    }

    private static Decision Short(DecisionFacts facts, List<DecisionRule> rules)
    {
        rules.Add(DecisionRule.RaiseWithin);
        DecisionGround[] because = [DecisionGround.Minutes, DecisionGround.Take];
        var word = facts.FloorPrice <= facts.Price * DecisionRules.RaiseWithin ? DecisionWord.Raise
            : facts.EnoughMinutesWereReached ? DecisionWord.MakeFaster
            : facts.Rate >= facts.MedianRate ? DecisionWord.Redesign
            : facts is { Contribution: > 0, Scarcity: < 1 } ? DecisionWord.FillIn
            : DecisionWord.Drop;
        return new Decision(word, word == DecisionWord.Raise ? [.. because, DecisionGround.Floor] : because, rules);
    }
}

/// <summary>What a decision rests on.</summary>
public enum DecisionGround
{
    /// <summary>The finding of the minutes of a piece.</summary>
    Minutes,

    /// <summary>The floor as found.</summary>
    Floor,

    /// <summary>What its pieces really brought.</summary>
    Take,

    /// <summary>How fast it sells.</summary>
    Days,
}

/// <summary>A rule of thumb.</summary>
/// <param name="Name">Its name on the wire.</param>
/// <param name="Value">Its number.</param>
public sealed record DecisionRule(string Name, decimal Value)
{
    public static DecisionRule FewOrders { get; } = new("fewOrders", DecisionRules.FewOrders);

    public static DecisionRule FewDays { get; } = new("fewDays", DecisionRules.FewDays);

    public static DecisionRule SoldOutShare { get; } = new("soldOutShare", DecisionRules.SoldOutShare);

    public static DecisionRule DemandOverStock { get; } = new("demandOverStock", DecisionRules.DemandOverStock);

    public static DecisionRule RaiseWithin { get; } = new("raiseWithin", DecisionRules.RaiseWithin);
}
