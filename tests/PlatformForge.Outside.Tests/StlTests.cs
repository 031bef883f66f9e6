using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace PlatformForge.Outside.Tests;

[Collection("samples")]
public class StlTests(WrittenSamples samples)
{
    // A 32-bit sum over some 10,000 facets, as the mesh checker makes it, strays this far from the true volume.
    private const double SingleSum = 2e-4;

    [Fact]
    public void Every_STL_is_watertight_to_the_last_bit()
    {
        var files = samples.Files(".stl");
        JsonElement[] read = [.. files.Select(WrittenSamples.ReadStl)];
        var inlays = samples.Names.Select(n => Path.Combine(samples.Folder, n))
            .SelectMany(folder => ThreeMfTests.Manifest(folder).TryGetProperty("lines", out var lines)
            ? lines.EnumerateArray().Where(l => l.GetProperty("is_inlay").GetBoolean()).Select(l => Path.GetFullPath(Path.Combine(folder, l.Text("stl"))))
            : []).ToHashSet();
        Assert.Equal(files.Count, read.Length);
        Assert.All(read, r =>
        {
            Assert.False(r.TryGetProperty("fault", out var fault), fault.ToString());
            Assert.Equal((r.Text("file"), 0, 0, 0, 0), (r.Text("file"), r.Number("openEdges"), r.Number("degenerate"), r.Number("attributes"),
                r.Number("slantedNormals")));
            Assert.False(r.GetProperty("beginsWithSolid").GetBoolean());
            Assert.True(r.Number("volume") > 0);
            // Each begins at its corner; an inlay lies on the bed within its section, in whose coordinates it is.
            var box = r.GetProperty("box");
            bool isInlay = inlays.Contains(Path.GetFullPath(r.Text("file")));
            Assert.All(Enumerable.Range(isInlay ? 2 : 0, isInlay ? 1 : 3), axis => Assert.Equal(0, box[axis][0].GetDouble(), 1e-3));
        });
    }

    [Fact]
    public void A_mesh_checker_finds_nothing_to_repair()
    {
        Assert.All(samples.Files(".stl"), file =>
        {
            var said = Tool.Run("admesh", file);
            Assert.Equal(0, said.Exit);
            foreach (string zero in new[] { "Total disconnected facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed", "Backwards edges",
                "Degenerate facets", "Normals fixed" })
            {
                // Disconnected facets have two columns, before and after repair: the first counts.
                var row = Regex.Match(said.Out, Regex.Escape(zero) + @"\s*:\s*(?<count>\d+)", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
                Assert.True(row.Success, $"no '{zero}' in\n{said.Out}");
                Assert.True(int.Parse(row.Groups["count"].Value, CultureInfo.InvariantCulture) == 0, $"{file}\n{said.Out}");
            }

            double volume = double.Parse(Regex.Match(said.Out, @"Volume\s*:\s*(?<volume>\S+)", RegexOptions.ExplicitCapture,
                TimeSpan.FromSeconds(5)).Groups["volume"].Value, CultureInfo.InvariantCulture);
            double strict = WrittenSamples.ReadStl(file).Number("volume");
            Assert.Equal(strict, volume, SingleSum * strict);
        });
    }

    [Fact]
    public void A_checker_from_beside_the_tree_agrees_where_there_is_one()
    {
        string script = Path.Combine(Tree.Root, "..", "shared", "tools", "stlcheck.mjs");
        var files = samples.Files(".stl");
        if (!File.Exists(script))
        {
            // Nothing else stands in for it: our own strict check has had the same files.
            Assert.NotEmpty(files);
            return;
        }

        var said = Tool.Run("node", [script, .. files]);
        Assert.Equal(0, said.Exit);
        Assert.Equal(files.Count, said.Lines.Length);
        Assert.All(said.Lines, line => Assert.Matches(@"zero-length 0 .* open edges 0 .* watertight$", line));
        Assert.DoesNotContain(said.Lines, line => line.Contains("NOT watertight", StringComparison.Ordinal));
    }
}
