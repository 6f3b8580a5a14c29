using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>Section 2 of RFC 4180, rule by rule.</summary>
public sealed class Rfc4180Tests
{
    [Fact]
    public async Task Rule_1_each_row_is_on_a_line_of_its_own() =>
        Assert.Equal(["aaa|bbb|ccc", "zzz|yyy|xxx"], await ReadSheet.Told("a,b,c\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"));

    [Fact]
    public async Task Rule_2_the_last_row_may_have_a_line_end_or_not()
    {
        var without = await ReadSheet.Rows("a,b,c\r\naaa,bbb,ccc\r\nzzz,yyy,xxx");
        Assert.Equal(["\r\n", ""], without.Select(row => row.LineEnd));
        Assert.Equal(["aaa|bbb|ccc", "zzz|yyy|xxx"], without.Select(row => row.Values));
    }

    [Fact]
    public async Task Rule_3_the_first_row_names_the_columns() =>
        Assert.Equal(["field_name1", "field name 2", "field,3"],
            (await ReadSheet.Header("field_name1,field name 2,\"field,3\"\r\naaa,bbb,ccc\r\n")).Names);

    [Fact]
    public async Task Rule_4_every_row_has_as_many_fields_as_the_header() =>
        Assert.Equal(["short-row 2:4", "long-row 3:7", "5|6|7"], await ReadSheet.Told("a,b,c\n1,2\n1,2,3,4\n5,6,7\n"));

    [Fact]
    public async Task Rule_4_spaces_are_part_of_a_field() =>
        Assert.Equal([" aaa | bbb|ccc "], await ReadSheet.Told("a,b,c\n aaa , bbb,ccc \n"));

    [Fact]
    public async Task Rule_4_the_last_field_is_followed_by_no_comma() =>
        Assert.Equal(["long-row 2:4", "1|"], await ReadSheet.Told("a,b\n1,,\n1,\n"));

    [Fact]
    public async Task Rule_5_fields_may_be_in_quotes_or_not() =>
        Assert.Equal(["aaa|bbb|ccc", "zzz|yyy|xxx"], await ReadSheet.Told("a,b,c\n\"aaa\",\"bbb\",\"ccc\"\nzzz,yyy,\"xxx\""));

    [Fact]
    public async Task Rule_5_a_field_that_does_not_begin_with_a_quote_holds_none() =>
        Assert.Equal(["malformed 2:2", "malformed 3:4", "3|4"], await ReadSheet.Told("a,b\n5\" bowl,1\n1, \"2\"\n3,4\n"));

    [Fact]
    public async Task Rule_6_line_breaks_quotes_and_commas_are_inside_quotes() =>
        Assert.Equal(["aaa|b\r\nbb|c,cc", "zzz|y\"y|x"], await ReadSheet.Told("a,b,c\r\n\"aaa\",\"b\r\nbb\",\"c,cc\"\r\nzzz,\"y\"\"y\",x"));

    [Fact]
    public async Task Rule_7_a_quote_inside_quotes_is_doubled() =>
        Assert.Equal(["aaa|b\"bb|\"", "\"\"|\",\"|"],
            await ReadSheet.Told("a,b,c\r\n\"aaa\",\"b\"\"bb\",\"\"\"\"\r\n\"\"\"\"\"\",\"\"\",\"\"\",\"\"\r\n"));

    [Fact]
    public async Task With_semicolons_a_comma_is_a_character_like_any_other() =>
        Assert.Equal(["RB-014|1,50|a;b"], await ReadSheet.Told("sku;price;note\nRB-014;1,50;\"a;b\"\n", SheetDialect.Semicolon));
}
