namespace PriceFloor.Api.Http;

/// <summary>Why one design or channel has no figures in an answer about many, beside the reasons of the model.</summary>
public static class ReasonCodes
{
    public static readonly Code NotStored = new("not-stored",
        "The design, its profile or the channel was not stored at that time.",
        "Nothing needs doing.");

    public static readonly Code DamagedDocument = new("damaged-document",
        "A stored document that the figures need is damaged.",
        "PUT it again, or restore a backup; the verb check-store lists every damaged one.");
}
