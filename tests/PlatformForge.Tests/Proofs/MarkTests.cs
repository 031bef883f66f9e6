using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Proofs;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Proofs;

/// <summary>Every gauge of a build is told from every other by what is cut into it, however long names are and however small the scale.</summary>
public class MarkTests
{
    private static readonly string[] Words =
        ["Saint", "Wetherdown", "junction", "lower", "upper", "goods", "and", "harbour", "side", "1", "Oberunterwaldkirchenbrückl", "Žďárovice", "X"];

    public static TheoryData<string> Samplings => ["pendlewick", "thornhithe", "quillhaven"];

    [Theory]
    [MemberData(nameof(Samplings))]
    public void Gauges_of_the_samples_are_told_apart(string sample) => ToldApart(PresetShelf.Sample(sample)!);

    [Fact]
    public void Gauges_are_told_apart_whatever_names_are()
    {
        var random = new Random(2711);
        Assert.All(Enumerable.Range(0, 4), _ =>
        {
            string Name() => string.Join(' ', Enumerable.Range(0, random.Next(1, 9)).Select(_ => Words[random.Next(Words.Length)]));
            string text = PresetShelf.Sample("thornhithe")!,
                renamed = System.Text.RegularExpressions.Regex.Replace(text, "(?<=\\[\\[platform\\]\\]\\s*\\nname = \")[^\"]+", Name());
            Assert.NotEqual(text, renamed);
            ToldApart(renamed);
        });
    }

    [Theory]
    [InlineData("1-220", 0.4)]
    [InlineData("2mm", 0.6)]
    [InlineData("4mm", 0.8)]
    [InlineData("1-32", 0.4)]
    public void Gauges_are_told_apart_and_their_figures_are_whole_at_every_scale_and_nozzle(string scale, double nozzle)
    {
        string text = PlatformForge.Projects.Schemas.ShortFile.Write(new(PresetShelf.Find(PresetKind.Scales, scale)!, [], (256, 256), []))
            + $"nozzle = {nozzle.ToString(System.Globalization.CultureInfo.InvariantCulture)}\n";
        var set = ToldApart(text);
        foreach (var gauge in set.Proofs.Where(p => p.Kind == ProofKind.SlideGauge))
        {
            double Figure(string what) => gauge.Figures.FirstOrDefault(f => f.What == what).Value;
            foreach (string whole in (string[])[FormattableString.Invariant($"H{Figure("coping's top above rail top"):0.00}"),
                FormattableString.Invariant($"O{Figure("coping from the track's middle"):0.00}")])
            {
                Assert.Contains(whole, string.Concat(gauge.Engraved), StringComparison.Ordinal);
            }
        }
    }

    private static ProofSet ToldApart(string text)
    {
        var project = Samples.Read(text);
        Assert.True(project.Value is not null, string.Join("; ", project.Findings.Select(f => f.Message)));
        var design = DesignRun.Design(project.Value!, RunWatch.None);
        Assert.True(design.Value is not null, string.Join("; ", design.Findings.Select(f => f.Message)));
        var made = ProofRun.Of(project.Value!, design.Value!);
        var set = made.Value!;

        // Pins, strips over joints and shoes of one board are alike and do the same: they need not be told apart.
        var marked = set.Proofs.Where(p => p.Engraved.Count > 0).ToArray();
        Assert.True(marked.Length > 5);
        foreach (var alike in marked.GroupBy(p => string.Join('\n', p.Engraved)))
        {
            Assert.True(alike.Select(p => Math.Round(p.Solid.ColumnVolume, 3)).Distinct().Count() == 1,
                string.Join(" and ", alike.Select(p => p.Name)) + " are both marked " + alike.Key);
            Assert.True(alike.Count() == 1 || alike.All(p => p.Kind == ProofKind.ThrowShoe), alike.Key);
        }

        foreach (var proof in set.Proofs.Where(p => p.Mark.Length > 0))
        {
            Assert.Contains(proof.Engraved, l => l.StartsWith(proof.Mark, StringComparison.Ordinal));
        }

        Assert.DoesNotContain(made.Findings, f => f.Code == "PF7513");
        Assert.AllOrNone(set.Proofs.Where(p => p.Mark.Length == 0 && p.Engraved.Count == 0),
            p => Assert.Contains("strip over the joint", p.Name, StringComparison.Ordinal));
        return set;
    }
}
