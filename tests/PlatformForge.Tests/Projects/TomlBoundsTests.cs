using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Projects.Remedies;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>What a project file may hold at most, and that nothing in it is dropped in silence.</summary>
public class TomlBoundsTests
{
    private static readonly Dictionary<string, (Func<string> Text, double Limit)> Beyond = new()
    {
        ["dots"] = (() => "x = 1\n" + string.Join('.', Enumerable.Repeat("a", 20_000)) + " = 1", InputLimits.ProjectNames),
        ["dots in a heading"] = (() => "[" + string.Join('.', Enumerable.Repeat("a", 20_000)) + "]", InputLimits.ProjectNames),
        ["lists"] = (() => "a = " + new string('[', 100_000), InputLimits.ProjectDepth),
        ["tables"] = (() => "a = " + string.Concat(Enumerable.Repeat("{ a = ", 100_000)), InputLimits.ProjectDepth),
        ["headings"] = (() => string.Concat(Enumerable.Range(0, 100_000).Select(i => $"[a{i}]\n")), InputLimits.ProjectHeadings),
        ["tables of a list"] = (() => string.Concat(Enumerable.Repeat("[[vehicle]]\n", 90_000)), InputLimits.ProjectHeadings),
        ["values"] = (() => string.Concat(Enumerable.Range(0, 120_000).Select(i => $"a{i}=1\n")), InputLimits.ProjectValues),
        ["entries"] = (() => "a = [" + string.Concat(Enumerable.Repeat("1,", 400_000)) + "]", InputLimits.ProjectValues),
        ["a number of many digits"] = (() => "a = " + new string('9', 900_000), InputLimits.ProjectWord),
        ["a key of many letters"] = (() => new string('a', 900_000) + " = 1", InputLimits.ProjectWord),
    };

    public static TheoryData<string> BeyondNames => [.. Beyond.Keys];

    [Theory]
    [MemberData(nameof(BeyondNames))]
    public void What_goes_beyond_a_limit_is_one_fault_with_the_limit_and_the_place(string what)
    {
        var (text, limit) = Beyond[what];
        var finding = Assert.Single(Samples.Read(text()).Findings);
        Assert.Equal("PF1041", finding.Code);
        Assert.True(finding.Message.Contains(limit.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal),
            $"{what}: {finding.Message}");
        Assert.True(finding.Line >= 1 && finding.Column >= 1 && finding.Message.Length < 200);
        Assert.NotEqual("", finding.Remedy);
    }

    [Theory]
    [InlineData("a = \"[[[[[[[[[[[[[[[[[[[[[[\" # [[[[[[[[[[[[[[[[[[[[[[[[\nb = '{{{{{{{{{{{{{{{{{{{{{{{{'")]
    [InlineData("a = \"\"\"\n[[[[[[[[[[[[[[[[[[\n[[[[[[[[[[[[[[[[[[[[\\\"\"\"\n\"\"\"\nb = '''\n{{{{{{{{{{{{{{{{{{{{{{{{{'''")]
    [InlineData("a = \"\\\"[[[[[[[[[[[[[[[[[[[[[[[[[[[\"\n\n[a.b.c.d.e.f.g]\n[a.b.c.d.e.f.g.h]\n[a.b.c.d.e.f.g.i]\nx = 1.5\ny = [1.5, 2.5, 3.5, 4.5, 5.5, 6.5, "
        + "7.5, 8.5, 9.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5, 9.5]")]
    public void Signs_in_texts_and_comments_count_for_nothing(string text) => Assert.Null(TomlBounds.Fault(text, "x"));

    /// <summary>Every table and list of tables of the key model, written closed in brackets first and then gone on with under a heading.</summary>
    [Property(MaxTest = 200)]
    public Property What_is_closed_in_brackets_cannot_be_gone_on_with_under_a_heading() =>
        Prop.ForAll(Arb.From(from inner in Gen.Elements(Inner().ToArray())
                             from list in Gen.Elements(true, false)
                             from body in Gen.Elements("x = 1", "thickness = \"no\"", "", "straight = 5")
                             select (inner, list, body)), given =>
                         {
                             var (inner, list, body) = given;
                             string path = $"{inner.Home}.{inner.Key}", heading = list ? $"[[{path}]]" : $"[{path}]";
                             string text = $"[[{inner.Home}]]\n{inner.Key} = {(inner.IsList ? "[{ y = 1 }]" : "{ y = 1 }")}\n{heading}\n{body}\n";
                             var read = TreeReader.Read(text, "x.toml");
                             return read.Value is null && read.Findings.Any(f => f.Line == 3 && f.Code is "PF1042" or "PF1005");
                         });

    private static IEnumerable<(string Home, string Key, bool IsList)> Inner() =>
        from home in ProjectKeys.Root.Keys.OfType<ListRule>()
        from key in ((TableRule)home.Item).Keys
        where key is TableRule or ListRule { Item: TableRule } or EitherRule
        select (home.Name, key.Name, key is ListRule);

    [Property(MaxTest = 100)]
    public bool Messages_of_one_kind_beyond_ten_are_counted(ushort many)
    {
        int count = many % 3000;
        Finding[] findings = [.. Enumerable.Range(0, count).Select(i => Finding.Error("PF1006", $"k{i}", $"m{i}", "r")),
            Finding.Warning("PF1006", "w", "m", "r")];
        var told = FindingTally.Shortened(findings);
        int errors = told.Count(f => f.Severity == Severity.Error), beyond = Math.Max(0, count - InputLimits.MessagesOfAKind);
        return told.Count(f => f.Severity == Severity.Warning) == 1
            && errors == Math.Min(count, InputLimits.MessagesOfAKind) + (beyond > 0 ? 1 : 0)
            && (beyond == 0 || told.Any(f => f.Message.StartsWith($"{beyond} more", StringComparison.Ordinal)));
    }

    [Fact]
    public void Only_errors_that_are_told_one_by_one_have_their_remedies_tried()
    {
        const int Keys = 3000;
        var source = new ProjectSource(string.Concat(Enumerable.Range(0, Keys).Select(i => $"key{i} = 1\n")), "x.toml");
        var told = CureTrial.Of(source, source.Read([]).Findings, TrialLimits.Usual with { Time = TimeSpan.FromHours(1) }).Where(f => f.Code == "PF1006")
            .ToArray();
        Assert.Equal(Keys, told.Length);
        Assert.Equal(InputLimits.MessagesOfAKind, told.Count(f => f.Cure!.Tried));
        Assert.All(told.Take(InputLimits.MessagesOfAKind), f => Assert.True(f.Cure!.Tried));
    }

    [Fact]
    public void What_there_were_no_runs_left_for_is_told_as_not_tried()
    {
        var source = new ProjectSource(string.Concat(Enumerable.Range(0, 3000).Select(i => $"key{i} = 1\n")), "x.toml");
        var told = CureTrial.Of(source, source.Read([]).Findings, TrialLimits.Brief with { Time = TimeSpan.FromHours(1) }).Where(f => f.Code == "PF1006")
            .Take(InputLimits.MessagesOfAKind).ToArray();
        Assert.Contains(told, f => f.Cure!.Tried);
        Assert.All(told.Where(f => !f.Cure!.Tried), f => Assert.EndsWith("(Not tried: it would take too long.)", f.Remedy, StringComparison.Ordinal));
        Assert.Contains(told, f => !f.Cure!.Tried);
    }

    [Fact]
    public void A_list_of_unknown_keys_ends_in_eleven_messages()
    {
        using var folder = new Cli.TempFolder();
        string file = folder.Write("halt.toml", string.Concat(Enumerable.Range(0, 5000).Select(i => $"key{i} = 1\n")));
        var run = Cli.CliRun.Of("check", file);
        Assert.Equal(3, run.Exit);
        Assert.Equal(11, run.Error.Split("error PF1006").Length - 1);
        Assert.Contains("4990 more", run.Error, StringComparison.Ordinal);
    }
}
