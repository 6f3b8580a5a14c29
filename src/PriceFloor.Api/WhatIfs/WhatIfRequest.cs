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
