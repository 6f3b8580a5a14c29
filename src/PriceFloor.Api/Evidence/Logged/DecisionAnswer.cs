using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Evidence.Decisions;
using PriceFloor.Evidence.WholeShelf;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>One word that the evidence suggests for a design. Nothing is changed by itself.</summary>
/// <param name="Because" example="[&quot;#/findings/0&quot;, &quot;#/take&quot;]">What it rests on, as pointers into this answer.</param>
/// <param name="Word">The word.</param>
/// <param name="Instead" example="RB-020">With drop: where its hours would go, the design that earns most of those whose demand is not met.</param>
public sealed record DecisionAnswer(IReadOnlyList<string> Because, DecisionWord Word,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Instead)
{
    public static DecisionAnswer Of(ShelfLine line) => new(line.Decision.BecauseIn(line.Design), line.Decision.Decision.Word, line.Instead);

    /// <summary>The rules of thumb that were used, each once.</summary>
    public static IEnumerable<AssumptionAnswer> AssumedBy(IEnumerable<ShelfLine> lines) => lines.SelectMany(line => line.Decision.Decision.Assumed)
        .Distinct().OrderBy(rule => rule.Name, StringComparer.Ordinal).Select(rule => new AssumptionAnswer("#/decision/" + rule.Name, rule.Value));
}
