namespace PriceFloor.Api.Evidence.Logged;

/// <summary>Why the stored lines have no answer.</summary>
public static class EvidenceReasonCodes
{
    public static readonly Code NothingLogged = new("nothing-logged",
        "The log has no line of it within the days asked for.",
        "Send what was made and sold (POST /v1/movements/batch, POST /v1/bench-log/batch), or ask for other days.");

    public static readonly Code NothingMade = new("nothing-made",
        "The log has lines of it, but none of pieces that were begun, made or sold.",
        "Send what was made: movements with what=made, or the bench log with countsAsMade.");

    public static readonly Code NoPriceChange = new("no-price-change",
        "The design had one price only on the channel, so nothing can be compared.",
        "Change the price once, by one step, and ask again after some orders.");
}
