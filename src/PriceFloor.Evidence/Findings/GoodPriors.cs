using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>
/// What the designs of one profile say of the good share of any of them: of whole pieces, and of each step by its name, since torch work is like
/// torch work. Fewer than eight designs say nothing.
/// </summary>
public sealed class GoodPriors
{
    private readonly Dictionary<string, SharePrior> _byStep;

    private GoodPriors(Dictionary<string, SharePrior> byStep) => _byStep = byStep;

    /// <summary>Nothing is known before a design's own lots.</summary>
    public static GoodPriors Nothing { get; } = new([]);

    /// <summary>The priors of designs of one profile.</summary>
    public static GoodPriors Of(IEnumerable<GoodLots> designs) => new(designs.SelectMany(design => design.ByStep)
        .GroupBy(share => share.Key, share => share.Value, StringComparer.Ordinal)
        .Select(shares => (shares.Key, Prior: SharePrior.OfShelf([.. shares]))).Where(step => step.Prior != SharePrior.Nothing)
        .ToDictionary(step => step.Key, step => step.Prior, StringComparer.Ordinal));

    /// <summary>Of a step, or of the whole piece for null.</summary>
    internal SharePrior For(string? step) => _byStep.GetValueOrDefault(step ?? "", SharePrior.Nothing);

    /// <summary>All of them as one text: equal texts are equal priors.</summary>
    public override string ToString() => string.Join(';', _byStep.OrderBy(step => step.Key, StringComparer.Ordinal)
        .Select(step => FormattableString.Invariant($"{step.Key}={step.Value.Counted}/{step.Value.Others}")));
}
