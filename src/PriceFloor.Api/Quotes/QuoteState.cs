namespace PriceFloor.Api.Quotes;

/// <summary>How far a quote has come.</summary>
public enum QuoteState
{
    /// <summary>Not issued: it can be changed and deleted, and its figures follow the costs.</summary>
    Draft,

    /// <summary>Offered, and the client can still accept it.</summary>
    Issued,

    /// <summary>The client accepted it.</summary>
    Accepted,

    /// <summary>The client declined it.</summary>
    Declined,

    /// <summary>The maker withdrew it.</summary>
    Withdrawn,

    /// <summary>The day after its last valid day has come.</summary>
    Lapsed,

    /// <summary>A later quote replaces it.</summary>
    Superseded,

    /// <summary>Accepted, and what it really took is known.</summary>
    Done,
}
