using System.IO.Pipelines;
using System.Text;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

public sealed class NdjsonReaderTests
{
    [Theory]
    [InlineData("{\"a\":1}\n{\"b\":2}\n", "1 {\"a\":1}", "2 {\"b\":2}")]
    [InlineData("{\"a\":1}\r\n{\"b\":2}", "1 {\"a\":1}", "2 {\"b\":2}")]
    [InlineData("\uFEFF{\"a\":1}\n", "1 {\"a\":1}")]
    [InlineData("\n\r\n \t\n{\"a\":1}\n\n{}\n\n", "4 {\"a\":1}", "6 {}")]
    [InlineData("not JSON\n1\n", "1 not JSON", "2 1")]
    [InlineData("{\"a\":\r1}\n", "1 {\"a\":\r1}")]
    [InlineData("")]
    [InlineData("\uFEFF")]
    [InlineData("\n\n")]
    public async Task Each_line_is_read_with_its_number(string body, params string[] lines) => Assert.Equal(lines, await Read(body));

    [Theory]
    [InlineData("1234567890\n1\n", "1 1234567890", "2 1")]
    [InlineData("1234567890\r\n1\r\n", "1 1234567890", "2 1")]
    [InlineData("12345678901\n1\n", "1 too-long 1:1", "2 1")]
    [InlineData("1\n12345678901\r\n\n1", "1 1", "2 too-long 2:1", "4 1")]
    [InlineData("1\n1234567890123456789012345678901234567890123456789012345678901234567890\n1", "1 1", "2 too-long 2:1", "3 1")]
    [InlineData("1\n1234567890123456789012345678901234567890123456789012345678901234567890", "1 1", "2 too-long 2:1")]
    [InlineData("           \n1", "1 too-long 1:1", "2 1")]
    public async Task A_line_longer_than_the_limit_is_a_fault_and_reading_continues(string body, params string[] lines) =>
        Assert.Equal(lines, await Read(body));

    private static async Task<List<string>> Read(string body)
    {
        List<string>? first = null;
        foreach (var pipe in Dripping.EveryWay(Encoding.UTF8.GetBytes(body)))
        {
            var lines = await Once(pipe);
            Assert.Equal(first ??= lines, lines);
        }

        return first!;
    }

    private static async Task<List<string>> Once(PipeReader pipe)
    {
        using var reader = new NdjsonReader(pipe, 10);
        var lines = new List<string>();
        while (await reader.WaitAsync(TestContext.Current.CancellationToken))
            while (reader.TryNext(out var line))
                lines.Add(
                    $"{line.Number} {(line.Fault is { } fault ? $"{fault.Code} {fault.Line}:{fault.Column}" : Encoding.UTF8.GetString(line.Bytes))}");
        return lines;
    }
}
