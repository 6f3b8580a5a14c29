using PriceFloor.Evidence.Demand;

namespace PriceFloor.Evidence.WholeShelf;

/// <summary>What is kept of a design beside the others of its profile: what was found, and its orders, but none of its lines.</summary>
/// <param name="Evidence">What its lines said; null where it has none, or no floor.</param>
/// <param name="Offers">Where it was sold or is listed.</param>
public sealed record ShelvedDesign(DesignEvidence? Evidence, IReadOnlyList<OfferedDesign> Offers)
{
    /// <summary>The design with its offers. Its lines are let go, so nothing that needs them can be asked of it any more.</summary>
    /// <param name="design">The design.</param>
    /// <param name="offers">Its offers.</param>
    public static ShelvedDesign Of(DesignEvidence design, IReadOnlyList<OfferedDesign> offers)
    {
        design.Release();
        return new ShelvedDesign(design, offers);
    }
}
