namespace PriceFloor.Api.Http;

/// <summary>Why one design or channel of an answer about many has no figures, beside what has none anywhere.</summary>
public static class ReasonCodes
{
    public static readonly Code NotStored = new("not-stored",
        "The design, its profile or the channel was not stored at that time.",
        "Nothing needs doing.");

    public static readonly Code DamagedDocument = new("damaged-document",
        "A stored document that the figures need does not read as it was stored.",
        "PUT it again, or restore a backup; the verb check-store lists every damaged one.");
}
