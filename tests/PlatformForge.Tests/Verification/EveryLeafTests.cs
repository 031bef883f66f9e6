using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.Projects;
using PlatformForge.Units;
using PlatformForge.Verification;
using PlatformForge.Verification.Rules;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>
/// Every word, figure and switch of the files that a folder is known by, changed one after another and by itself: each change is told, or stands on a list
/// with the reason.
/// </summary>
public class EveryLeafTests
{
    // What a manifest says and nothing is held to, each with why nothing is lost by it.
    private static readonly Dictionary<string, string> NotHeld = new(StringComparer.Ordinal)
    {
        ["proofs[].rides.chainage"] = "tells where the gauge was made for; where it stands is told by its place, which is held against rails and platform",
        ["proofs[].rides.rail_head"] = "how far across a rail's head the gauge is looked at: it lies on all of it",
        ["proofs[].to_layout[][]"] = "along a straight track a gauge or a slice fits 1 mm farther on as well, and what lies flat is held in plan",
    };

    // A short halt with an inlaid line, a strip of studs and gauges, so that a manifest has something of all that it can hold.
    private static readonly Lazy<WrittenFolder> Whole = new(() =>
    {
        using var folder = new TempFolder();
        folder.Write("halt.toml", Samples.Small + "line = { width = 1, form = \"inlay\" }\ntactile = {}\n");
        var run = CliRun.Of("build", folder["halt.toml"], "--sets", "prints,report,gauges");
        Assert.True(run.Exit == 0, run.Error);
        return FolderReader.Read(folder["halt"]).Value!;
    });

    [Fact]
    public void A_folder_of_all_kinds_of_files_is_sound()
    {
        Assert.Empty(FolderVerifier.Verify(Whole.Value).Findings.Select(f => f.Message));
    }

    /// <summary>A strip or a gauge that is no STL file is told with what is wrong with it, and the strip as held against nothing.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_strip_or_a_gauge_that_cannot_be_read_is_told(bool strip)
    {
        var manifest = ManifestForm.Read(Whole.Value[Manifest.FileName]!, Manifest.FileName).Value!;
        var (name, file) = strip ? (manifest.Lines[0].Name, manifest.Lines[0].Stl) : (manifest.Proofs[0].Name, manifest.Proofs[0].Stl);
        var verdict = FolderVerifier.Verify(Changed(file, Whole.Value[file]![..^70]));
        Assert.Contains(verdict.Findings, f => f.Code == "PF7101" && f.Message.Contains(file, StringComparison.Ordinal));
        Assert.Equal(strip ? [$"{name}, which could not be read"] : [], verdict.NotHeld);
    }

    /// <summary>A section with an inlaid line is its body and that line, each once: with the line twice, or without it, it is another thing.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_section_put_together_of_more_than_its_lines_is_told(bool more)
    {
        var manifest = ManifestForm.Read(Whole.Value[Manifest.FileName]!, Manifest.FileName).Value!;
        string plate = manifest.Sections[0].Plate;
        var model = ThreeMfReader.Read(Whole.Value[plate]!, plate).Value!;
        int line = manifest.Lines.First(l => l.IsInlay).ObjectId;
        ThreeMfObject Other(ThreeMfObject o) => o.Components.Count == 0 ? o
            : o with { Components = more ? [.. o.Components, o.Components.First(c => c.ObjectId == line)] : [.. o.Components.Where(c => c.ObjectId != line)] };
        var rule = new PlateRule(manifest, new Dictionary<string, Geometry.Mesh>());
        Assert.DoesNotContain(rule.Check([(plate, model)], null), f => f.Code == "PF8049");
        Assert.Contains(rule.Check([(plate, model with { Objects = [.. model.Objects.Select(Other)] })], null), f => f.Code == "PF8049");
    }

    [Fact]
    public void Every_leaf_of_a_manifest_is_held_or_listed()
    {
        // Where not every case is asked for, one leaf of each kind that is held: items of a list are read by the same lines.
        var leaves = Leaves(Manifest.FileName);
        var tried = Simulations.Long ? leaves : [.. leaves.DistinctBy(l => Kind(l.Path)), .. leaves.Where(l => NotHeld.ContainsKey(Kind(l.Path)))];
        var silent = tried.AsParallel().Where(l => IsSilent(l.Spoilt)).Select(l => Kind(l.Path)).Distinct().Order(StringComparer.Ordinal);
        Assert.Equal(string.Join(' ', NotHeld.Keys.Order(StringComparer.Ordinal)), string.Join(' ', silent));
    }

    /// <summary>A changed byte of any other file is told by its hash: here each word and figure of three of them, and two by the whole of
    /// verification.</summary>
    [Theory]
    [InlineData(DesignCopy.FileName)]
    [InlineData("report.json")]
    [InlineData("gauges/figures.json")]
    public void Every_leaf_of_a_file_that_the_manifest_lists_is_told(string file)
    {
        var entry = ManifestForm.Read(Whole.Value[Manifest.FileName]!, Manifest.FileName).Value!.Files.Single(f => f.Path == file);
        var leaves = Leaves(file);
        Assert.True(leaves.Count > 50);
        Assert.All(leaves, l => Assert.Contains(FolderVerifier.Untouched(entry, l.Spoilt, null), f => f.Code == "PF8003"));
        Assert.All(leaves.Take(2), l => Assert.Contains(FolderVerifier.Verify(Changed(file, l.Spoilt)).Findings,
            f => f.Code == "PF8003" && f.Message.Contains(file, StringComparison.Ordinal)));
    }

    /// <summary>What manifest and another file tell alike is held though the hash was set right too, as by somebody who means it.</summary>
    [Theory]
    [InlineData("report.json", "project")]
    [InlineData("report.json", "version")]
    [InlineData("report.json", "input_hash")]
    [InlineData("report.json", "platforms[0].sections[0].name")]
    [InlineData("report.json", "platforms[0].sections[0].from")]
    [InlineData("report.json", "platforms[0].sections[0].to")]
    [InlineData("report.json", "platforms[0].lines[0].depth")]
    [InlineData(DesignCopy.FileName, "project")]
    [InlineData(DesignCopy.FileName, "platforms[0].name")]
    [InlineData(DesignCopy.FileName, "platforms[0].face.from")]
    [InlineData(DesignCopy.FileName, "platforms[0].face.to")]
    [InlineData("gauges/figures.json", "proofs[0].kind")]
    public void What_two_files_tell_otherwise_is_found_though_its_hash_is_right(string file, string leaf)
    {
        byte[] spoilt = Leaves(file).Single(l => l.Path == leaf).Spoilt;
        var manifest = ManifestForm.Read(Whole.Value[Manifest.FileName]!, Manifest.FileName).Value!;
        var other = Changed(file, spoilt);
        var listed = new ManifestFile(file, spoilt.Length, Convert.ToHexStringLower(SHA256.HashData(spoilt)));
        byte[] relisted = ManifestForm.ToBytes(manifest with { Files = [.. manifest.Files.Select(f => f.Path == file ? listed : f)] });
        var findings = FolderVerifier.Verify(new([.. other.Files.Where(f => f.Path != Manifest.FileName), new(Manifest.FileName, relisted)])).Findings;
        Assert.Contains(findings, f => f.Code is "PF8052" or "PF8053" or "PF8041" && f.Severity == Severity.Error);
        Assert.DoesNotContain(findings, f => f.Code == "PF8003");
    }

    [Fact]
    public void Figures_of_gauges_in_another_form_are_refused()
    {
        var findings = FolderVerifier.Verify(Changed("gauges/figures.json", "{\"proofs\": []}"u8.ToArray())).Findings;
        Assert.Contains(findings, f => f.Code == "PF8054" && f.Message.Contains("it lacks", StringComparison.Ordinal));
    }

    private static bool IsSilent(byte[] manifest) =>
        FolderVerifier.Verify(Changed(Manifest.FileName, manifest)).Findings.All(f => f.Severity != Severity.Error);

    private static WrittenFolder Changed(string path, byte[] bytes) => new([.. Whole.Value.Files.Where(f => f.Path != path), new(path, bytes)]);

    private static string Kind(string path) => Regex.Replace(path, @"\[\d+\]", "[]");

    private static List<(string Path, byte[] Spoilt)> Leaves(string file)
    {
        var root = JsonNode.Parse(Whole.Value[file]!)!;
        var spoilt = new List<(string, byte[])>();
        void Walk(JsonNode? node, string path, Action<JsonNode?> put)
        {
            switch (node)
            {
                case JsonObject inner:
                    foreach (var (name, value) in inner.ToArray())
                    {
                        Walk(value, path.Length == 0 ? name : path + "." + name, v => inner[name] = v);
                    }

                    break;
                case JsonArray row:
                    for (int i = 0; i < row.Count; i++)
                    {
                        int at = i;
                        Walk(row[at], $"{path}[{at}]", v => row[at] = v);
                    }

                    break;
                default:
                    put(Other(node, path));
                    spoilt.Add((path, JsonSerializer.SerializeToUtf8Bytes(root)));
                    put(node?.DeepClone());
                    break;
            }
        }

        Walk(root, "", _ => { });
        return spoilt;
    }

    // Another value of the same kind: a word with a letter more, a length 1 mm greater, a turn by half a degree.
    private static JsonNode Other(JsonNode? leaf, string path) => leaf?.GetValueKind() switch
    {
        JsonValueKind.String => leaf.GetValue<string>() + "x",
        JsonValueKind.True => false,
        JsonValueKind.False => true,
        JsonValueKind.Number => JsonValue.Create(leaf.GetValue<double>() + (Regex.IsMatch(path, @"to_layout\[\d\]\[[012]\]$") ? 0.01 : 1)),
        _ => "x",
    };
}
