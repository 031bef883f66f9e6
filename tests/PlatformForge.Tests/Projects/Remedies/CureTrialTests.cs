using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Remedies;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects.Remedies;

/// <summary>
/// Remedies over random faulty designs. PF_FAULTS and PF_SEED set how many and which; PF_FAULTS_REPORT names a file to write what each was told.
/// </summary>
public class CureTrialTests
{
    private const int FaultsInGate = 50;

    // A message is read at a glance: no more letters than this.
    private const int LongestSentence = 600;

    private static readonly TrialLimits NoClock = TrialLimits.Usual with { Time = TimeSpan.FromHours(1) };

    // The large sample comes up now and then: it is the one with everything on it.
    private static readonly string[] Designs =
    [
        .. Enumerable.Repeat(new[] { PresetShelf.Sample("straight-halt")!, Samples.Small }, 4).SelectMany(s => s), PresetShelf.Sample("pendlewick")!,
    ];

    private static readonly Lazy<(FaultyDesign Design, IReadOnlyList<Finding> Told)[]> Tried = new(() =>
    [
        .. FaultyDesign.From(Setting("PF_SEED", 7), Designs).Take(Setting("PF_FAULTS", FaultsInGate))
        .Select(d => (d, CureTrial.Of(d.Source, d.Findings, NoClock))),
    ]);

    /// <summary>A design that the program falls over mends nothing, and what was written is told all the same; who gives up is heard.</summary>
    [Fact]
    public void A_design_that_the_program_falls_over_is_no_cure()
    {
        var source = new ProjectSource(Samples.Small, "halt.toml");
        TrialBench Falling(Exception fault) => new(source, NoClock, CancellationToken.None, (_, _) => throw fault);
        var bench = Falling(new AggregateException(new ArgumentException("A field touches another."), new BrokenInvariantException("A mesh is open.")));
        bench.Begin();
        Assert.Null(bench.Errors([]));
        Assert.Null(bench.Errors([Cure.Set("layout.rail_top", 9)]));
        foreach (var heard in new Exception[] { new OperationCanceledException(), new AggregateException(new OperationCanceledException()), new IOException() })
        {
            bench = Falling(heard);
            bench.Begin();
            Assert.Same(heard, Record.Exception(() => bench.Errors([])));
        }
    }

    [Fact]
    public void Taking_a_tried_cure_removes_the_finding_and_brings_no_new_error()
    {
        foreach (var (design, told) in Tried.Value)
        {
            var before = ErrorsOf(design.Findings);
            var taken = new List<Cure>();
            foreach (var finding in told.Where(f => f.Cure is { Tried: true }).OrderBy(f => f.Cure!.Act != CureAct.Rename))
            {
                // Cures were tried one on another, as somebody would take them.
                if (!taken.Contains(finding.Cure!))
                {
                    taken.Add(finding.Cure!);
                }

                var after = ErrorsOf(FaultyDesign.FindingsOf(design.Source, [.. taken]));
                Assert.DoesNotContain((finding.Code, finding.Key), after);
                Assert.True(after.All(before.Contains), $"{design.Change}: {finding.Code} {finding.Key}, {finding.Cure}, "
                    + $"brings {string.Join(", ", after.Except(before))}");
            }
        }
    }

    [Fact]
    public void Of_a_hundred_single_faults_eighty_get_a_cure_that_was_tried()
    {
        var without = Tried.Value.Where(t => !t.Told.Any(f => f.Cure is { Tried: true })).ToArray();
        if (Environment.GetEnvironmentVariable("PF_FAULTS_REPORT") is { } report)
        {
            File.WriteAllLines(report, Tried.Value.SelectMany(Report)
                .Append(string.Create(CultureInfo.InvariantCulture,
                    $"{Tried.Value.Length - without.Length} of {Tried.Value.Length} have a cure that was tried")));
        }

        Assert.True(without.Length * 5 <= Tried.Value.Length, string.Join('\n', without.Select(t => t.Design.Change)));
    }

    [Fact]
    public void A_remedy_that_says_it_was_tried_has_a_cure_that_was_tried() => Assert.All(
        Tried.Value.SelectMany(t => t.Told).Where(f => f.Severity == Severity.Error),
        f => Assert.True(!f.Remedy.StartsWith("Tried: ", StringComparison.Ordinal) || f.Cure is { Tried: true }
            || f.Remedy.Contains(" comes next", StringComparison.Ordinal), f.Remedy));

    [Fact]
    public void Sentences_are_short_and_have_no_figures_that_nobody_reads()
    {
        foreach (var finding in Tried.Value.SelectMany(t => t.Told.Concat(t.Design.Findings)))
        {
            foreach (string sentence in new[] { finding.Message, finding.Remedy })
            {
                Assert.True(sentence.Length <= LongestSentence, sentence);
                Assert.DoesNotMatch(@"NaN|Infinity|∞|E\+\d{3}", sentence);
                Assert.DoesNotMatch(@"\d{12}|\.\d{7}", sentence);
                foreach (Match range in Regex.Matches(finding.Remedy, @"from (-?[\d.]+\d|-?\d) to (-?[\d.]+\d|-?\d)"))
                {
                    Assert.True(Number(range.Groups[1]) < Number(range.Groups[2]), finding.Remedy);
                }
            }
        }
    }

    private static double Number(Group digits) => double.Parse(digits.Value, CultureInfo.InvariantCulture);

    private static HashSet<(string Code, string Key)> ErrorsOf(IEnumerable<Finding> findings) =>
        [.. findings.Where(f => f.Severity == Severity.Error).Select(f => (f.Code, f.Key))];

    private static IEnumerable<string> Report((FaultyDesign Design, IReadOnlyList<Finding> Told) trial) =>
        trial.Told.Zip(trial.Design.Findings).Where(f => f.First.Severity == Severity.Error)
            .SelectMany(f => new[] { $"   {f.First.Code} {f.First.Key}: {f.First.Message}", $"      was: {f.Second.Remedy}",
                $"      now: {f.First.Remedy}   [{f.First.Cure}]" })
            .Prepend($"{(trial.Told.Any(f => f.Cure is { Tried: true }) ? "ok " : "BAD")} {trial.Design.Change}");

    private static int Setting(string name, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out int value) ? value : usual;
}
