namespace PriceFloor.Api.Changes;

/// <summary>Where ranges come from if nobody types them.</summary>
public enum GuessSource
{
    /// <summary>The stored log: what it says of the profile and of the design in question, eight times in ten.</summary>
    Evidence,
}
