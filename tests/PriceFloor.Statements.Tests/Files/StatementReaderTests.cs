using PriceFloor.Statements.Files;
using Xunit;

namespace PriceFloor.Statements.Tests.Files;

public sealed class StatementReaderTests
{
    [Fact]
    public void A_file_that_is_not_a_statement_is_refused_as_such()
    {
        var read = StatementReader.Read("Dear customer"u8.ToArray(), "file", new SheetReading(), TestContext.Current.CancellationToken);

        Assert.Equal("unknown-format", Assert.Single(read.Faults).Code);
    }
}
