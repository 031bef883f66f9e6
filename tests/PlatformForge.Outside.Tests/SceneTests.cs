using System.Text.Json;
using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// The scene for viewers, held against the validator of those who keep glTF 2.0 and read by a general loader: what it shows is what is printed, in its place.
/// </summary>
public sealed class SceneTests : IDisposable
{
    // Written in whole millionths of a metre's single precision, m.
    private const double Single = 1e-6;

    private readonly string folder = Directory.CreateTempSubdirectory("platformforge-scene-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>Bricks in two colours, an inlaid line and a tactile strip, which are bodies of their own.</summary>
    [Fact]
    public void Sections_lines_and_strips_stand_where_they_are_printed_for()
    {
        var said = WrittenSamples.CommandLine("build", WrittenSamples.SampleFile("emberlow"), "--output", folder, "--sets", "prints,scene", "--no-pictures",
            "--quiet");
        Assert.True(said.Exit == 0, said.All);
        var read = Written.Parse(Tool.Node("read-glb.mjs", Path.Combine(folder, "scene.glb"))[0]);
        Assert.Empty(read.GetProperty("issues").EnumerateArray());
        var nodes = read.GetProperty("nodes").EnumerateArray()
            .ToDictionary(n => string.Join('/', n.GetProperty("path").EnumerateArray().Skip(1).Select(p => p.GetString())));
        var manifest = Written.Parse(File.ReadAllText(Path.Combine(folder, "manifest.json")));
        JsonElement[] printed = [.. manifest.GetProperty("sections").EnumerateArray(), .. manifest.GetProperty("lines").EnumerateArray()];
        Assert.True(printed.Length > manifest.GetProperty("sections").GetArrayLength());
        foreach (var part in printed)
        {
            string name = $"{part.Text("platform")}/{part.Text("name")}";
            Assert.True(nodes.Remove(name, out var node), $"{name} is not among {string.Join(", ", nodes.Keys)}.");
            var triangles = WrittenSolid.Gauge(folder, part);
            Assert.True(node.GetProperty("flat").GetBoolean());
            double volume = triangles.Sum(t => Point3.Dot(t[0] - triangles[0][0], Point3.Cross(t[1] - triangles[0][0], t[2] - triangles[0][0]))) / 6;
            Assert.Equal(volume, 1e9 * node.Number("volume"), 1e-4 * volume);

            // Metres, y upwards: what is z on the layout, and what is y there goes towards the eye.
            Point3[] corners = [.. triangles.SelectMany(t => t)];
            double[] low = [corners.Min(p => p.X), corners.Min(p => p.Z), -corners.Max(p => p.Y)],
                high = [corners.Max(p => p.X), corners.Max(p => p.Z), -corners.Min(p => p.Y)];
            for (int i = 0; i < 3; i++)
            {
                Assert.Equal(low[i] / 1000, node.Numbers("low")[i], Single);
                Assert.Equal(high[i] / 1000, node.Numbers("high")[i], Single);
            }
        }

        // What is left is not printed, and says so.
        Assert.NotEmpty(nodes);
        Assert.All(nodes.Keys, name => Assert.StartsWith("not printed/", name, StringComparison.Ordinal));
    }
}
