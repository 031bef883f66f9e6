using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Reading;
using PlatformForge.Projects.Schemas;
using PlatformForge.Tests.Cli;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>
/// Whatever <c>init</c> is asked for: either its file passes <c>check</c>, or it names the option that stands in the way and says what would do, and that does.
/// </summary>
public class FirstFileTests
{
    // Radii of the real railway in metres, from sharper than any coach takes to gentle; by --track at each scale.
    private static readonly double[] Radii = [6, 12, 20, 30, 45, 70, 120, 300];

    private static readonly string?[] Beds = [null, "180x180", "bed-256x256", "120x300"];

    private static readonly string[] Shapes = ["{0} left", "{0} right", "{0} left, {0} right", "straight, {0} right", "{0} left, straight, {0} left",
        "straight", ""];

    private static readonly Preset[] Scales = [.. PresetShelf.Of(PresetKind.Scales)], Vehicles = [.. PresetShelf.Of(PresetKind.Vehicles)];

    [Fact]
    public void What_init_is_asked_for_is_sound_or_is_refused_with_what_is()
    {
        // Steps that share no factor with the sizes of the grid: all of it is walked in the end, and a few cases see something of every side.
        int whole = Scales.Length * Vehicles.Length * Radii.Length;
        int refused = 0;
        Assert.All(Simulations.Cases(5, whole), k =>
        {
            string[] asked = Options(k);
            using var folder = new TempFolder();
            var first = Init(folder["halt.toml"], asked);
            if (first.Exit == 0)
            {
                Sound(folder["halt.toml"], asked);
                return;
            }

            Assert.True(first.Exit == 2, first.Error);
            Assert.False(File.Exists(folder["halt.toml"]));
            Assert.Contains("PF1088", first.Error, StringComparison.Ordinal);
            Interlocked.Increment(ref refused);
            string[] better = Followed(asked, first.Error);
            var second = Init(folder["halt.toml"], better);
            Assert.True(second.Exit == 0, string.Join(' ', asked) + "\n" + first.Error + "\n" + string.Join(' ', better) + "\n" + second.Error);
            Sound(folder["halt.toml"], better);
        });
        Assert.True(refused > 0);
    }

    [Theory]
    [InlineData("--vehicle", "coach-american-85ft", "--track", "610 left")]
    [InlineData("--vehicle", "coach-continental-26m4", "--track", "610 right")]
    [InlineData("--scale", "1-160", "--vehicle", "multiple-unit-two-car", "--track", "300 left, 300 right")]
    public void A_first_file_builds(params string[] asked)
    {
        using var folder = new TempFolder();
        Assert.Equal(0, Init(folder["halt.toml"], asked).Exit);
        Sound(folder["halt.toml"], asked);
        var build = CliRun.Of("build", folder["halt.toml"], "--output", folder["out"], "--no-pictures", "--quiet");
        Assert.True(build.Exit == 0, build.Out + build.Error);
    }

    [Fact]
    public void A_curve_that_a_vehicle_cannot_follow_is_named_with_the_sharpest_that_it_can()
    {
        using var folder = new TempFolder();
        var run = CliRun.Of("init", folder["halt.toml"], "--scale", "1-148", "--vehicle", "coach-american-85ft", "--track", "50 left");
        Assert.Equal(2, run.Exit);
        Assert.Contains("--track", run.Error, StringComparison.Ordinal);
        var offered = Regex.Match(run.Error, "--track \"([0-9]+) left\" works");
        Assert.True(offered.Success, run.Error);

        // 59 ft 6 in between pivots at 1:148 are 122.5 mm; a chord at which bogies turn by 45 degrees has a radius of 122.5 / √2 = 86.6 mm.
        Assert.InRange(double.Parse(offered.Groups[1].Value, CultureInfo.InvariantCulture), 86.6, 110);
    }

    private static CliRun Init(string file, string[] asked) => CliRun.Of(["init", file, .. asked]);

    private static void Sound(string file, string[] asked)
    {
        Assert.InRange(File.ReadAllLines(file).Length, 20, ShortFile.MostLines);
        var check = CliRun.Of("check", file);
        Assert.True(check.Exit == 0, string.Join(' ', asked) + "\n" + check.Out + check.Error);
    }

    private static string[] Options(int k)
    {
        var scale = Scales[k * 7 % Scales.Length];
        double ratio = ((TreeNumber)scale.Tree.Find("ratio")!.Value).Value;
        string radius = Math.Round(Math.Max(20, Radii[k * 5 % Radii.Length] * 1000 / ratio)).ToString(CultureInfo.InvariantCulture);
        string track = string.Format(CultureInfo.InvariantCulture, Shapes[k % Shapes.Length], radius);
        List<string> asked = ["--scale", scale.Name, "--vehicle", Vehicles[k * 11 % Vehicles.Length].Name];
        asked.AddRange(track.Length > 0 ? ["--track", track] : []);
        asked.AddRange(Beds[k * 3 % Beds.Length] is { } bed ? ["--bed", bed] : []);
        return [.. asked];
    }

    // What the message says to give in place of what was asked for.
    private static string[] Followed(string[] asked, string said)
    {
        var options = asked.Chunk(2).Select(o => (Option: o[0], Value: o[1])).ToList();
        if (said.Contains("Without it", StringComparison.Ordinal))
        {
            options.RemoveAll(o => o.Option == "--vehicle");
        }

        foreach (Match offered in Regex.Matches(said, "(--track) \"([^\"]+)\" w|(--bed|--scale) ([0-9a-z.x-]+?)(?: works|\\.(?:\\s|$))"))
        {
            string option = offered.Groups[1].Value + offered.Groups[3].Value, value = offered.Groups[2].Value + offered.Groups[4].Value;
            options.RemoveAll(o => o.Option == option);
            options.Add((option, value));
        }

        return [.. options.SelectMany(o => new[] { o.Option, o.Value })];
    }
}
