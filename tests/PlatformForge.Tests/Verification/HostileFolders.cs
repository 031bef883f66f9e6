using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;

namespace PlatformForge.Tests.Verification;

/// <summary>Folders that were built and then spoilt by somebody who sets the manifest right again: each for <c>verify</c>.</summary>
internal static class HostileFolders
{
    private const string Section = "stl/halt-01.stl", Plate = "3mf/halt-plate-01.3mf", Design = "design.json", Drawing = "drawings/halt-plan.svg";

    private const long LargestHashed = 100_000_000;

    /// <summary>Names of the cases, and what spoils a copy of a folder built from the sample of a straight halt.</summary>
    /// <param name="less">What is large is smaller by this.</param>
    public static IEnumerable<(string Name, Action<string> Spoil)> Cases(int less = 1)
    {
        yield return ("coordinates times 1,000,000 in an STL", f => ScaleMesh(f, 1e6));
        yield return ("coordinates times 40 in an STL", f => ScaleMesh(f, 40));
        yield return ("coordinates times 1,000,000 in a 3MF", f => EditModel(f, m => ScaleModel(m, 1e6)));
        yield return ("coordinates times 40 in a 3MF", f => EditModel(f, m => ScaleModel(m, 40)));
        yield return ("a place 900,000 mm off",
            f => Edit(f, "manifest.json", t => t.Replace("          350\n", "          900000\n", StringComparison.Ordinal)));
        yield return ("track of 1e9 mm in the design copy",
            f => Edit(f, Design, t => t.Replace("\"length\": 900,", "\"length\": 1000000000,", StringComparison.Ordinal)));
        yield return ("track of 900 m in the design copy",
            f => Edit(f, Design, t => t.Replace("\"length\": 900,", "\"length\": 900000,", StringComparison.Ordinal)));
        yield return ("vehicle of 1e15 mm in the design copy", f => Edit(f, Design, t => t.Replace("114", "1000000000000000", StringComparison.Ordinal)));
        yield return ("null among the vehicles", f => Edit(f, Design, t => t.Replace("\"vehicles\": [", "\"vehicles\": [null,", StringComparison.Ordinal)));
        yield return ("an outline without area", f => Edit(f, Design, t => Regex.Replace(t, @"-?114,", "114,")));
        yield return ("900 MB of metadata in a 3MF", f => WriteModel(f, s => Metadata(s, 900 / less)));
        yield return ("3,000 items on a plate", f => EditModel(f, Crowd));
        yield return ("100,000 slivers in an STL", f => Save(f, Section, StlWriter.ToBytes(Slivers(100_000 / less, 200), "slivers", threads: 1)));
        yield return ("100,000 slivers of 15 mm in an STL", f => Save(f, Section, StlWriter.ToBytes(Slivers(100_000 / less, 15), "slivers", threads: 1)));
        yield return ("300,000 triangles in an STL", f => Save(f, Section, StlWriter.ToBytes(Slivers(300_000, 200), "slivers", threads: 1)));
        yield return ("a listed file of 1.9 GB", f => Grow(f, Drawing, 1_900_000_000));
        yield return ("a manifest of 19 MB", f => File.WriteAllText(Path.Combine(f, "manifest.json"),
            "{\"a\": [" + string.Concat(Enumerable.Repeat("1,", 9_500_000 / less)) + "1]}"));
        yield return ("a design copy of 19 MB of brackets", f => Save(f, Design, Encoding.UTF8.GetBytes(new string('[', 19_000_000 / less))));
    }

    private static void ScaleMesh(string folder, double by)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(folder, Section));
        for (int at = 84; at + 50 <= bytes.Length; at += 50)
        {
            for (int k = 12; k < 48; k += 4)
            {
                BitConverter.TryWriteBytes(bytes.AsSpan(at + k), (float)(BitConverter.ToSingle(bytes, at + k) * by));
            }
        }

        Save(folder, Section, bytes);
    }

    private static string ScaleModel(string model, double by) => Regex.Replace(model, "([xyz])=\"([-0-9.]+)\"", m =>
        FormattableString.Invariant($"{m.Groups[1].Value}=\"{double.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture) * by}\""));

    private static string Crowd(string model)
    {
        int at = model.IndexOf("<item ", StringComparison.Ordinal), end = model.IndexOf("/>", at, StringComparison.Ordinal) + 2;
        return model.Insert(at, string.Concat(Enumerable.Repeat(model[at..end], 3000)));
    }

    private static void Metadata(Stream model, int megabytes)
    {
        model.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>"u8);
        model.Write("<model unit=\"millimeter\" xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\"><metadata name=\"Title\">"u8);
        byte[] block = [.. Enumerable.Repeat((byte)'a', 1 << 20)];
        for (int i = 0; i < megabytes; i++)
        {
            model.Write(block);
        }

        model.Write("</metadata></model>"u8);
    }

    // Long thin triangles, each with a corner of its own.
    private static Mesh Slivers(int count, double length)
    {
        var vertices = new Point3[count + 2];
        vertices[1] = new(length, 0, 0);
        for (int i = 0; i < count; i++)
        {
            vertices[i + 2] = new(length, 60.0 * i / count, 12.0 * (i % 97) / 97);
        }

        return new(vertices, [.. Enumerable.Range(0, count).SelectMany(i => new[] { 0, 1 + i, 2 + i })], []);
    }

    private static void EditModel(string folder, Func<string, string> edit) => WriteModel(folder, null, edit);

    private static void WriteModel(string folder, Action<Stream>? write, Func<string, string>? edit = null)
    {
        string path = Path.Combine(folder, Plate);
        using (var archive = ZipFile.Open(path, ZipArchiveMode.Update))
        {
            var entry = archive.Entries.Single(e => e.FullName.EndsWith(".model", StringComparison.Ordinal));
            string name = entry.FullName;
            if (edit is not null)
            {
                using var reader = new StreamReader(entry.Open());
                byte[] text = Encoding.UTF8.GetBytes(edit(reader.ReadToEnd()));
                write = s => s.Write(text);
            }

            entry.Delete();
            using var stream = archive.CreateEntry(name, CompressionLevel.Fastest).Open();
            write!(stream);
        }

        List(folder, Plate);
    }

    private static void Grow(string folder, string path, long length)
    {
        using (var file = File.OpenWrite(Path.Combine(folder, path)))
        {
            file.SetLength(length);
        }

        List(folder, path);
    }

    private static void Edit(string folder, string path, Func<string, string> edit)
    {
        string before = File.ReadAllText(Path.Combine(folder, path)), after = edit(before);
        if (after == before)
        {
            throw new InvalidOperationException($"{path} has nothing to spoil.");
        }

        Save(folder, path, Encoding.UTF8.GetBytes(after));
    }

    private static void Save(string folder, string path, byte[] bytes)
    {
        File.WriteAllBytes(Path.Combine(folder, path), bytes);
        List(folder, path);
    }

    // The manifest is set right, as by somebody who means it.
    private static void List(string folder, string path)
    {
        string manifest = Path.Combine(folder, "manifest.json");
        var root = JsonNode.Parse(File.ReadAllText(manifest))!;
        if (root["files"]!.AsArray().FirstOrDefault(f => (string?)f!["path"] == path) is { } entry)
        {
            using var file = File.OpenRead(Path.Combine(folder, path));
            (entry["bytes"], entry["sha256"]) = (file.Length, file.Length > LargestHashed ? new string('0', 64)
                : Convert.ToHexStringLower(SHA256.HashData(file)));
            File.WriteAllText(manifest, root.ToJsonString());
        }
    }
}
