namespace PriceFloor.Statements;

/// <summary>The outcome of one line. Every line that was read has exactly one.</summary>
public enum LineOutcome
{
    /// <summary>A rule took it into a line of the draft, the money received or the sales tax.</summary>
    Placed,

    /// <summary>No rule matched.</summary>
    Unplaced,

    /// <summary>One half of a transfer between two of the given accounts; the other half is there too.</summary>
    Paired,

    /// <summary>A rule says that it is between own accounts; its other half is not in these files.</summary>
    OwnAccount,

    /// <summary>A rule leaves it out.</summary>
    LeftOut,

    /// <summary>It is in another file, or a second time under the same id.</summary>
    Duplicate,

    /// <summary>Before or after the requested period.</summary>
    OutsidePeriod,

    /// <summary>In another currency; nothing is ever converted.</summary>
    ForeignCurrency,
}
