namespace PriceFloor.Statements.Files;

/// <summary>Reads OFX 1.x.</summary>
internal static class OfxSgml
{
    private static readonly Fault s_cutOff = new("", FileCodes.Malformed, "The file ends before </OFX>; it may have been cut off. Export it again.");

    public static Outcome<StatementFile> Read(string text, string account)
    {
        var statements = new OfxStatements(account);
        var ended = false;
        foreach (var token in new OfxTokens(text).Read())
        {
            statements.Take(token);
            ended |= token is { Kind: OfxTokenKind.Close, Text: "OFX" };
            if (statements.IsFull)
                return ParseResult.TooMany;
        }
        // A statement that was cut off would lack money without any sign of it.
        return ended ? statements.As(StatementFormat.OfxSgml) : s_cutOff;
    }
}
