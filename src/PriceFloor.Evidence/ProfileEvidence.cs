using PriceFloor.Evidence.Findings;

namespace PriceFloor.Evidence;

/// <summary>What the profile's designs and days say of it, and the profile with that.</summary>
public sealed record ProfileEvidence(IReadOnlyList<Finding> Findings, CostProfile Draft, bool IsYoung);
