using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>The codes that programs branch on are a closed list: one place makes a code, and each has its meaning and its cure.</summary>
public sealed partial class CodeTests
{
    [Fact]
    public void Each_section_has_a_word_once()
    {
        foreach (var section in new[] { Codes.Faults, Codes.Warnings, Codes.Remedies, Codes.Lines, Codes.LogLines })
            Assert.Equal(section.Select(code => code.Word).Order().Distinct(), section.Select(code => code.Word).Order());
    }

    [Fact]
    public void Each_code_is_a_word_of_small_letters_with_a_sentence_for_meaning_and_cure() => Assert.All(Codes.Lists.SelectMany(Code.In), code =>
    {
        Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", code.Word);
        Assert.All([code.Meaning, code.Cure], sentence => Assert.Matches(@"^[A-Z\x22].{5,}\.$", sentence));
    });

    [Fact]
    public void Only_the_lists_and_the_kinds_of_problems_make_codes()
    {
        var lists = Codes.Lists.Select(list => $"{list.Name}.cs").Append("ProblemTypes.cs").ToList();
        foreach (var file in Sources().Where(file => !lists.Contains(Path.GetFileName(file))))
            Assert.DoesNotMatch(MadeCode(), File.ReadAllText(file));
    }

    [Fact]
    public void Every_code_is_used()
    {
        var sources = string.Concat(Sources().Select(File.ReadAllText));
        Assert.All(Codes.Lists.SelectMany(list => list.GetFields().Where(field => field.FieldType == typeof(Code))), field =>
            Assert.Matches($@"\b(\w+Codes|RemedyReasons)\.{field.Name}\b", sources));
    }

    private static IEnumerable<string> Sources() => Directory.EnumerateFiles(Repository.File("src"), "*.cs", SearchOption.AllDirectories)
        .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal));

    [GeneratedRegex(@"new Code\(|\bCode\?? \w+ (\{[^}]*\} )?=>? new\(", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex MadeCode();
}
