using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Plans;

namespace PriceFloor.Api.WhatIfs;

/// <summary>Scenarios beside what is stored. Everything is computed from catalogues, as every answer is.</summary>
internal sealed class WhatIf
{
    public required Stored<CostProfile> Profile { get; init; }

    public required WhatIfRequest Request { get; init; }

    public WhatIfList Wanted => Request.List;

    /// <summary>What is stored.</summary>
    public required WhatIfScenario Now { get; init; }

    /// <summary>In the order of the request.</summary>
    public required IReadOnlyList<WhatIfScenario> Scenarios { get; init; }

    /// <summary>All changes together; null if that is not asked.</summary>
    public WhatIfScenario? Combined { get; init; }

    /// <summary>Every stored document that a change names, with its revision.</summary>
    public required IReadOnlyList<string> ChangedDocuments { get; init; }

    /// <summary>The stored scenarios among them, with their revisions.</summary>
    public required IReadOnlyList<string> StoredScenarios { get; init; }

    /// <summary>The scenarios, then all of them together if that is asked.</summary>
    public IReadOnlyList<WhatIfScenario> All => Combined is null ? Scenarios : [.. Scenarios, Combined];
}

/// <summary>The documents with changes in them, and the year and the plan that follow.</summary>
/// <param name="Name">Its name for people.</param>
/// <param name="Catalogue">All documents as they would be stored.</param>
/// <param name="Year">The profile's year.</param>
/// <param name="Plan">The plan, if the request names one.</param>
internal sealed record WhatIfScenario(string? Name, WholeCatalogue Catalogue, StudioYear Year, PlanInQuestion? Plan);
