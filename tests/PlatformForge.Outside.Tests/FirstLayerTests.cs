using System.Globalization;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Prints that lie flat: an independent slicer, which cuts a layer at half its height, puts the whole walking surface into the first layer.
/// PLATFORMFORGE_FLAT_DESIGNS says how many random designs are sliced; the gate does a few, and of the samples those whose platforms differ, every second
/// section; 30 and all are a run of their own.
/// </summary>
public class FirstLayerTests
{
    private const double LeastHeld = 0.99;

    private const int Few = 3;

    private static readonly int Designs = int.TryParse(Environment.GetEnvironmentVariable("PLATFORMFORGE_FLAT_DESIGNS"), NumberStyles.None,
        CultureInfo.InvariantCulture, out int asked) ? asked : Few;

    public static TheoryData<string> Samples =>
        [.. Directory.EnumerateFiles(Path.Combine(Tree.Root, "presets", "samples"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)!)
            .Where(n => Designs > Few || WrittenSamples.IsDifferent(n)).Order(StringComparer.Ordinal)];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, Designs)];

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_first_layer_of_every_sample_holds_its_walking_surface(string name) => Slice(ProjectReader.ReadFile(WrittenSamples.SampleFile(name)).Value!);

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_first_layer_of_random_designs_holds_their_walking_surface(int seed)
    {
        string text = RandomDesign.Text(seed);
        var read = ProjectReader.Read(text, "random.toml");
        Assert.True(read.Value is not null, text + string.Join("\n", read.Findings.Select(f => f.Code + " " + f.Message)));
        Slice(read.Value);
    }

    private static void Slice(ProjectSpec project)
    {
        var design = DesignRun.Design(project, RunWatch.None);
        Assert.True(design.Value is not null, string.Join("\n", design.Findings.Select(f => f.Code + " " + f.Key + " " + f.Message)));
        foreach (var platform in design.Value.Platforms)
        {
            var fit = DeckFit.Of(platform.Plan);
            Assert.True(fit.Keeps || design.Findings.Any(f => f.Code == "PF6020"));
            foreach (var section in platform.Sections.Sections.Where(s => Designs > Few || s.Number % 2 == 1))
            {
                Assert.Equal(PrintPose.DeckDown, section.Pose);
                double held = FirstLayer.Held(platform.Plan, section, project.Sections.Joint);
                Told(FormattableString.Invariant($"1:{design.Value.Scale.Ratio} {platform.Name} section {section.Number} of {section.Count}: {held:P2} held, ")
                    + FormattableString.Invariant($"coping within {fit.CopingOff:F3}, fall within {fit.FallOff:F4} of {fit.FallAsked:F3} mm"));
                Assert.True(held >= LeastHeld, FormattableString.Invariant($"{section.Name}: {held:P2}"));
            }
        }
    }

    private static void Told(string line)
    {
        if (Environment.GetEnvironmentVariable("PLATFORMFORGE_FLAT_LOG") is { Length: > 0 } log)
        {
            File.AppendAllText(log, line + "\n");
        }
    }
}
