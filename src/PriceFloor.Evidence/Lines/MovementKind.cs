namespace PriceFloor.Evidence.Lines;

/// <summary>What happened to pieces.</summary>
public enum MovementKind
{
    /// <summary>Finished good pieces.</summary>
    Made,

    /// <summary>To a gallery, a fair, a shop on consignment.</summary>
    Sent,

    /// <summary>Back from there.</summary>
    Back,

    /// <summary>Sold, at what was paid after discounts.</summary>
    Sold,

    /// <summary>Came back from the buyer.</summary>
    Returned,

    /// <summary>Gift, display.</summary>
    Given,

    /// <summary>Broken, stolen.</summary>
    Lost,

    /// <summary>Remelted, taken apart.</summary>
    Reworked,

    /// <summary>So many are there that evening.</summary>
    Counted,
}

/// <summary>Whether pieces are good ones or seconds.</summary>
public enum Grade { Good, Second }
