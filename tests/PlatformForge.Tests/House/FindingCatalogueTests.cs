using System.Text.RegularExpressions;
using PlatformForge.Projects.Catalogue;
using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>Every code that the source raises is known, is raised for one thing, and stands on the page of findings.</summary>
public class FindingCatalogueTests
{
    private const string Home = "src/PlatformForge/Projects/Catalogue";

    private static readonly (string File, string Code)[] Raised =
    [
        .. from file in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src"), "*.cs", SearchOption.AllDirectories)
           let path = Path.GetRelativePath(SourceTree.Root, file).Replace('\\', '/')
           where !path.Contains("/obj/", StringComparison.Ordinal) && !path.Contains("/bin/", StringComparison.Ordinal)
           && !path.StartsWith(Home, StringComparison.Ordinal)
           from Match code in Regex.Matches(RaisedIn(File.ReadAllText(file)), @"""(PF\d{4})""")
           orderby path
           select (path, code.Groups[1].Value),
    ];

    [Fact]
    public void Every_code_that_the_source_raises_has_its_entry() => Assert.Empty(
        from raised in Raised
        where FindingCatalogue.Find(raised.Code) is null
        select $"{raised.File} raises {raised.Code}: give it a line in {Home}, what it is raised for and what mends it, then run 'platformforge findings "
            + "--markdown > docs/findings.md'");

    [Fact]
    public void Every_entry_is_raised_somewhere() => Assert.Empty(
        FindingCatalogue.Entries.Select(e => e.Code).Except(Raised.Select(r => r.Code)).Select(c => $"{c} is raised nowhere: take its line out of {Home}"));

    [Fact]
    public void A_code_is_raised_in_one_place_or_its_entry_says_why_it_is_one_thing()
    {
        var places = Raised.GroupBy(r => r.Code).ToDictionary(g => g.Key, g => g.Count());
        Assert.Empty(
            from entry in FindingCatalogue.Entries
            where places.GetValueOrDefault(entry.Code) > 1 && entry.OneThing is null
            select $"{entry.Code} is raised in {places[entry.Code]} places: give each thing a code of its own, or tell in OneThing why they are one thing");
        Assert.Empty(
            from entry in FindingCatalogue.Entries
            where places.GetValueOrDefault(entry.Code) <= 1 && entry.OneThing is not null
            select $"{entry.Code} is raised in one place: OneThing has nothing to explain");
    }

    [Fact]
    public void Codes_are_distinct_and_every_entry_is_two_plain_sentences()
    {
        Assert.Equal(FindingCatalogue.Entries.Count, FindingCatalogue.Entries.Select(e => e.Code).Distinct().Count());
        Assert.All(FindingCatalogue.Entries, e => Assert.All(new[] { e.RaisedFor, e.Cure, e.NoValue ?? "So.", e.OneThing ?? "So." },
            s => Assert.Matches(@"^[A-Z][^|]*\.$", s)));
    }

    [Fact]
    public void The_page_of_findings_is_whole() =>
        Assert.True(
            FindingCatalogue.Page() == File.ReadAllText(Path.Combine(SourceTree.Root, "docs", "findings.md")).ReplaceLineEndings("\n"),
            "docs/findings.md is not what the program makes: run 'dotnet run -c Release --project src/PlatformForge.Cli -- findings --markdown > "
                + "docs/findings.md'");

    /// <summary>Codes that no test hears, each with the reason. The list only gets shorter.</summary>
    private static readonly (string Code, string Why)[] Unheard =
    [
        ("PF4130", "a guard behind PF4021, which refuses a platform that reaches too near to the centre of its second track's curve"),
        ("PF7511", "a guard for gauges and proofs to come: of what is drawn today nothing hangs as it lies"),
    ];

    [Fact]
    public void Every_code_is_named_by_a_test_or_listed_with_the_reason()
    {
        var named = Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "tests"), "*.cs", SearchOption.AllDirectories)
            .Where(f => Path.GetFileName(f) != nameof(FindingCatalogueTests) + ".cs")
            .SelectMany(f => Regex.Matches(File.ReadAllText(f), @"""PF\d{4}").Select(m => m.Value[1..])).ToHashSet(StringComparer.Ordinal);
        var listed = Unheard.Select(u => u.Code).ToArray();
        Assert.Empty(FindingCatalogue.Entries.Select(e => e.Code).Except(named).Except(listed)
            .Select(c => $"{c} is heard in no test: give it a row in CodesHeardTests"));
        Assert.Empty(listed.Intersect(named).Select(c => $"{c} is named by a test: take it off the list"));
    }

    // A code that is compared with or matched on is not raised there.
    private static string RaisedIn(string text) => Regex.Replace(text, @"(==|is|or|case)\s+""PF\d{4}""|""PF\d{4}""\s*=>", "");
}
