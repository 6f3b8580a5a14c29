namespace PriceFloor.Evidence.Decisions;

/// <summary>What the evidence suggests for a design. A suggestion, and it reads as one.</summary>
public enum DecisionWord
{
    /// <summary>It earns its hours; leave it as it is.</summary>
    Keep,

    /// <summary>Ask more for it.</summary>
    Raise,

    /// <summary>Make it in less time, which has been reached before.</summary>
    MakeFaster,

    /// <summary>People want it, but not at what it takes: change the design.</summary>
    Redesign,

    /// <summary>Make it in hours that would be idle, and never more.</summary>
    FillIn,

    /// <summary>Stop making it.</summary>
    Drop,

    /// <summary>Too little is known.</summary>
    Wait,
}
