using System.Globalization;
using System.Text;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>A number in a cell is read exactly, in its sheet's dialect, or refused with a hint on what to remove.</summary>
public sealed class SheetNumberTests
{
    private static readonly PriceAttribute s_price = new();

    [Theory]
    [InlineData("58", "58")]
    [InlineData("58.00", "58")]
    [InlineData("0.1", "0.1")]
    [InlineData("-0", "0")]
    [InlineData("0058.50", "58.5")]
    [InlineData("1000000000000", "1000000000000")]
    public void Digits_with_a_point_are_a_number(string cell, string value) => Assert.Equal((value, null), Read(cell, SheetDialect.Comma));

    [Theory]
    [InlineData("1,5", "1.5")]
    [InlineData("1234,50", "1234.5")]
    [InlineData("58", "58")]
    public void With_semicolons_the_decimal_mark_is_a_comma(string cell, string value) =>
        Assert.Equal((value, null), Read(cell, SheetDialect.Semicolon));

    [Theory]
    [InlineData("1,5", "remove the comma: it does not mark thousands here, and decimals are written with a point, such as 1200.50; "
        + "a sheet with decimal commas and semicolons is sent with dialect=semicolon.")]
    [InlineData("1,234", "remove the comma: it does not mark thousands here, and decimals are written with a point, such as 1200.50; "
        + "a sheet with decimal commas and semicolons is sent with dialect=semicolon.")]
    [InlineData("1,234.00", "remove the thousands comma, so that it reads like 1200.50.")]
    [InlineData("1,234,567.00", "remove the thousands comma, so that it reads like 1200.50.")]
    [InlineData("1.234,50", "write it without thousands marks and with a decimal point, such as 1200.50; "
        + "a sheet with decimal commas and semicolons is sent with dialect=semicolon.")]
    [InlineData("1.234.567", "remove the thousands marks: only one decimal point is read, as in 1200.50.")]
    [InlineData("$58.00", "remove \"$\", so that it reads like 1200.50.")]
    [InlineData("58 USD", "remove \"USD\", so that it reads like 1200.50.")]
    [InlineData("$1,234.00", "remove \"$\", and the thousands comma, so that it reads like 1200.50.")]
    [InlineData("1 234.00", "remove the spaces, so that it reads like 1200.50.")]
    [InlineData("1\u00A0234.00", "remove the spaces, so that it reads like 1200.50.")]
    [InlineData("(58.00)", "remove \"(\" and \")\", so that it reads like 1200.50.")]
    [InlineData("5 %", "remove \"%\", so that it reads like 1200.50.")]
    [InlineData("\u20AC58", "remove \"\u20AC\", so that it reads like 1200.50.")]
    [InlineData("+5", "remove \"+\", so that it reads like 1200.50.")]
    [InlineData("n/a", "that is not a number; write digits, such as 1200.50.")]
    [InlineData("x", "that is not a number; write digits, such as 1200.50.")]
    [InlineData(".5", "write digits on both sides of the point and a minus only in front, such as 1200.50.")]
    [InlineData("5.", "write digits on both sides of the point and a minus only in front, such as 1200.50.")]
    [InlineData("5-", "write digits on both sides of the point and a minus only in front, such as 1200.50.")]
    public void What_was_made_for_eyes_is_refused_with_a_word_on_what_to_strip(string cell, string told)
    {
        var (_, fault) = Read(cell, SheetDialect.Comma);
        Assert.Equal($"not-a-number price is \"{cell}\"; {told}", fault);
    }

    [Theory]
    [InlineData("0.5%", "0.005")]
    [InlineData("45 %", "0.45")]
    [InlineData("100%", "1")]
    public void A_percentage_in_a_column_of_shares_is_the_share_it_is(string cell, string share)
    {
        var bounds = new ShareAttribute();
        foreach (var (field, meant) in new[] { (bounds, (ShareAttribute?)null), (null, bounds) })
        {
            var (value, code, _) = SheetNumber.Read(Encoding.UTF8.GetBytes(cell), "rate", field, SheetDialect.Comma, meant);
            Assert.Null(code);
            Assert.Equal(share, value.ToString(CultureInfo.InvariantCulture));
        }

        Assert.Equal(0.005m, SheetNumber.Read("0,5%"u8, "rate", null, SheetDialect.Semicolon, bounds).Value);
        var (_, refused, detail) = SheetNumber.Read("120%"u8, "rate", bounds, SheetDialect.Comma);
        Assert.Equal(("out-of-range", "rate is \"120%\"; a share is at least 0% and at most 100%."), (refused!.Word, detail));
    }

    [Theory]
    [InlineData("1.5", "remove the point: it does not mark thousands here, and decimals are written with a comma, such as 1200,50; "
        + "a sheet with decimal points and commas is sent without dialect=semicolon.")]
    [InlineData("1.234,50", "remove the thousands point, so that it reads like 1200,50.")]
    [InlineData("1,234.50", "write it without thousands marks and with a decimal comma, such as 1200,50; "
        + "a sheet with decimal points and commas is sent without dialect=semicolon.")]
    [InlineData("1,234,567", "remove the thousands marks: only one decimal comma is read, as in 1200,50.")]
    [InlineData("58,00 \u20AC", "remove \"\u20AC\", so that it reads like 1200,50.")]
    public void With_semicolons_the_marks_change_places(string cell, string told)
    {
        var (_, fault) = Read(cell, SheetDialect.Semicolon);
        Assert.Equal($"not-a-number price is \"{cell}\"; {told}", fault);
    }

    [Theory]
    [InlineData("", "required")]
    [InlineData("1e3", "exponent")]
    [InlineData("1.5E3", "exponent")]
    [InlineData("-1", "out-of-range")]
    [InlineData("1000000000001", "out-of-range")]
    [InlineData("1234567890123456789", "too-many-digits")]
    [InlineData("1.23456", "too-many-decimals")]
    [InlineData("\u0665", "not-a-number")]
    [InlineData("=1+1", "not-a-number")]
    public void The_rules_of_the_service_hold_in_cells(string cell, string code) =>
        Assert.StartsWith(code + " price ", Read(cell, SheetDialect.Comma).Fault, StringComparison.Ordinal);

    [Theory]
    [InlineData("-1,50", "out-of-range price must be at least 0 and at most 1000000000000; it is -1,5.")]
    [InlineData("1,23456", "too-many-decimals price has at most 4 decimals; it was sent with 5. Round it yourself.")]
    [InlineData("1,5e3", "exponent price is written with an exponent; write the digits out, such as 1200,50.")]
    public void With_semicolons_a_fault_has_commas(string cell, string told) => Assert.Equal(told, Read(cell, SheetDialect.Semicolon).Fault);

    [Fact]
    public void A_cell_of_a_thousand_characters_is_not_a_number_and_is_shortened()
    {
        var (_, fault) = Read(new string('9', 1000) + "x", SheetDialect.Comma);
        Assert.StartsWith($"not-a-number price is \"{new string('9', 40)}...\"; remove \"x\"", fault, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a,b\n  58.00 ,x\n")]
    [InlineData("a,b\n\" 58.00\",x\n")]
    [InlineData("a,b\n'58.00,x\n", false)]
    public async Task Plain_spaces_around_a_number_do_not_count(string sheet, bool isNumber = true)
    {
        using var reader = new SheetReader(Dripping.Whole(sheet), SheetDialect.Comma);
        await reader.ReadHeaderAsync(TestContext.Current.CancellationToken);
        Assert.True(reader.TryNext(out var row));
        Assert.Equal(isNumber, SheetNumber.Read(row.Cell(0), "price", s_price, SheetDialect.Comma) is (58m, null, null));
    }

    private static (string Value, string? Fault) Read(string cell, SheetDialect dialect)
    {
        var (value, code, detail) = SheetNumber.Read(Encoding.UTF8.GetBytes(cell), "price", s_price, dialect);
        return (value.ToString(CultureInfo.InvariantCulture), code is null ? null : $"{code} {detail}");
    }
}
