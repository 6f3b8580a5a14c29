using PriceFloor.Api.Http;
using Xunit;

namespace PriceFloor.Api.Tests.Access;

public sealed class KeyTextTests
{
    [Fact]
    public async Task A_key_has_the_shape_that_scanners_look_for_and_one_wrong_letter_is_noticed()
    {
        await using var studio = new Studio();
        var key = (await studio.Post("/v1/keys", """{"name":"shop","scopes":["read"]}""")).Json.GetProperty("key").GetString()!;
        Assert.Matches($"^{KeyText.Pattern}$", key);
        Assert.Equal(200, (await studio.Get("/v1/profiles", studio.ClientWith(key))).Status);
        for (var at = "pf_".Length; at < key.Length; at++)
        {
            var wrong = key[..at] + (key[at] == 'x' ? 'y' : 'x') + key[(at + 1)..];
            Assert.True(KeyText.IsMistyped(wrong), wrong);
        }

        var told = (await studio.Get("/v1/profiles", studio.ClientWith(key[..^1] + (key[^1] == 'x' ? 'y' : 'x')))).IsProblem(401, "no-key");
        Assert.Contains("mistyped", told.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(key[..^1], told.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("mistyped", (await studio.Get("/v1/profiles", studio.ClientWith(KeyText.New()))).IsProblem(401, "no-key").Text,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Basic eA==")]
    [InlineData("Basic YTpi")]
    [InlineData("x")]
    [InlineData("Bearer")]
    [InlineData("Bearer ")]
    [InlineData("Bearer pf_")]
    [InlineData("Bearer pf_wrong")]
    [InlineData("Bearer " + Studio.AdminKey + "x")]
    [InlineData(Studio.AdminKey)]
    public async Task Only_a_known_key_is_accepted_and_anything_else_is_challenged(string authorization)
    {
        await using var studio = new Studio();
        var answer = (await studio.Get("/v1/profiles", studio.ClientWith(null), ("Authorization", authorization))).IsProblem(401, "no-key");
        Assert.StartsWith("Bearer", answer["WWW-Authenticate"], StringComparison.Ordinal);
        Assert.DoesNotContain(Studio.AdminKey, answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Keys_are_all_different_and_what_we_did_not_make_is_never_mistyped()
    {
        Assert.Equal(1000, Enumerable.Range(0, 1000).Select(_ => KeyText.New()).Distinct().Count());
        Assert.False(KeyText.IsMistyped("a-key-of-the-operators-own-choice-of-57-characters-at-all"));
        Assert.False(KeyText.IsMistyped(""));
    }
}
