using System.ComponentModel.DataAnnotations;
using PriceFloor.Api.Changes;

namespace PriceFloor.Api.WhatIfs;

/// <summary>What if numbers were other than stored? Scenarios side by side; nothing is stored.</summary>
public sealed record WhatIfRequest
{
    /// <summary>How many scenarios stand side by side at most.</summary>
    public const int MostScenarios = 8;

    /// <summary>Key of the cost profile whose year it is.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>Key of a plan of the profile: each scenario then says what becomes of it.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public string? Plan { get; init; }

    /// <summary>
    /// With a plan: the day on which costs rise, within the profile's year; its first if absent. With this, notice or phases the answer says what
    /// holding prices costs.
    /// </summary>
    /// <example>2027-04-01</example>
    public DateOnly? From { get; init; }

    /// <summary>With a plan: how many weeks before it a rise is announced, by channel; 0 to 52.</summary>
    /// <example>{"wholesale": 8}</example>
    [MaxLength(Limits.Lines), Pieces(Maximum = "52")]
    public IReadOnlyDictionary<string, decimal>? Notice { get; init; }

    /// <summary>With a plan: steps in which listed prices rise to the suggested ones. Days and shares rise, and the last share is 1.</summary>
    [MinLength(1), MaxLength(Limits.Months)]
    public IReadOnlyList<PricePhaseRequest>? Phases { get; init; }

    /// <summary>With a plan: <c>plan</c> adds the smallest change of each kind that alone closes it.</summary>
    public WhatIfRemedies? Remedies { get; init; }

    /// <summary>Which prices are listed: <c>moved</c> (default), <c>all</c> or <c>none</c>.</summary>
    public WhatIfList List { get; init; } = WhatIfList.Moved;

    /// <summary>True adds what all scenarios' changes give together, in order.</summary>
    public bool Combined { get; init; }

    /// <summary>Scenarios, or keys of stored ones: 1 to 8, with at most 200 changes in all.</summary>
    [MinLength(1), MaxLength(MostScenarios)]
    public required IReadOnlyList<KeyOr<ScenarioRequest>> Scenarios { get; init; }
}

/// <summary>Changes that are made together.</summary>
public sealed record ScenarioRequest
{
    /// <summary>A name for people.</summary>
    /// <example>rent +10 %</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>In the order in which they are made.</summary>
    [MaxLength(DocumentChangeRules.MostChanges)]
    public required IReadOnlyList<DocumentChange> Changes { get; init; }
}

/// <summary>A step of rising prices.</summary>
public sealed record PricePhaseRequest
{
    /// <summary>The day from which its prices count.</summary>
    /// <example>2027-04-01</example>
    public required DateOnly On { get; init; }

    /// <summary>The share of the whole rise that is reached by then, above 0.</summary>
    /// <example>0.5</example>
    [Share(Above = true)]
    public required decimal Share { get; init; }
}

/// <summary>What remedies are wanted for.</summary>
public enum WhatIfRemedies
{
    /// <summary>The plan, now and in each scenario.</summary>
    Plan,
}

/// <summary>Which prices a what-if lists.</summary>
public enum WhatIfList
{
    /// <summary>Those whose floor price, target price or verdict differs in any scenario.</summary>
    Moved,

    /// <summary>Every design on every channel of the profile's currency.</summary>
    All,

    /// <summary>None.</summary>
    None,
}
