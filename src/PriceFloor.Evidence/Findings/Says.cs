namespace PriceFloor.Evidence.Findings;

/// <summary>What a finding says of the number that is stored.</summary>
public enum Says { Agrees, StoredTooLow, StoredTooHigh, TooFew }
