using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Changes;

/// <summary>A stored scenario: changes to a profile's documents that are made together. It changes nothing itself.</summary>
[ReadOnlyFields("key", "revision", "savedAt")]
public sealed record Scenario
{
    /// <summary>A name for people.</summary>
    /// <example>glass +12 %</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Key of the cost profile whose documents are changed.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>In the order in which they are made. Their places are looked for when the scenario is used.</summary>
    [MaxLength(DocumentChangeRules.MostChanges)]
    public required IReadOnlyList<DocumentChange> Changes { get; init; }
}

/// <summary>Each change says one thing.</summary>
public sealed class ScenarioValidator : AbstractValidator<Scenario>
{
    public ScenarioValidator() => RuleFor(scenario => scenario).Custom((scenario, context) =>
    {
        foreach (var fault in DocumentChangeRules.Faults(scenario.Changes))
            if (context.IsSound(fault.Pointer))
                context.Add(fault, certain: true);
    });
}
