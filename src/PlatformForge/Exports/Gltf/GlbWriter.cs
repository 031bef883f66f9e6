using System.Buffers.Binary;
using System.Text.Json;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Pictures.Light;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Gltf;

/// <summary>
/// Writes a scene as one binary file by the glTF 2.0 specification of the Khronos Group (ISO/IEC 12113:2022): metres, y upwards, so the root turns and
/// shrinks what is told in mm with z upwards. No normals are written: viewers must then shade flat (3.7.2.1), as printed faces are. Nothing but the scene
/// decides the bytes.
/// </summary>
internal static class GlbWriter
{
    private const uint Magic = 0x46546C67, Version = 2, JsonChunk = 0x4E4F534A, BinaryChunk = 0x004E4942;

    // Codes of the standard: single precision, two and four bytes, places, indices (5.1.3, 5.11.5).
    private const int Single = 5126, Short = 5123, Whole = 5125, ArrayBuffer = 34962, ElementArrayBuffer = 34963;

    private const double Rough = 0.9;

    /// <summary>The whole file.</summary>
    /// <param name="to">Where it goes.</param>
    /// <param name="root">What is shown; at least one triangle.</param>
    /// <param name="generator">The program and its version.</param>
    /// <param name="notes">What a viewer shows beside it, by name.</param>
    public static void Write(Stream to, SceneNode root, string generator, IReadOnlyDictionary<string, string> notes)
    {
        var listed = new Listed(root);
        byte[] json = Json(listed, generator, notes);
        long binary = listed.Meshes.Sum(m => m.PlacesLength + m.IndicesLength);
        var buffered = new BufferedStream(to, 1 << 16);
        Words(buffered, Magic, Version, checked((uint)(12 + 8 + json.Length + 8 + binary)));
        Words(buffered, (uint)json.Length, JsonChunk);
        buffered.Write(json);
        Words(buffered, (uint)binary, BinaryChunk);
        foreach (var mesh in listed.Meshes)
        {
            mesh.Write(buffered);
        }

        // The stream is its owner's to close, and with it would go whoever buffers it.
        buffered.Flush();
    }

    private static void Words(Stream to, params ReadOnlySpan<uint> words)
    {
        byte[] bytes = new byte[4];
        foreach (uint word in words)
        {
            BinaryPrimitives.WriteUInt32LittleEndian(bytes, word);
            to.Write(bytes);
        }
    }

    private static byte[] Json(Listed listed, string generator, IReadOnlyDictionary<string, string> notes)
    {
        using var memory = new MemoryStream();
        using (var json = new Utf8JsonWriter(memory))
        {
            json.WriteStartObject();
            json.WriteStartObject("asset");
            json.WriteString("version", "2.0");
            json.WriteString("generator", generator);
            json.WriteEndObject();
            json.WriteNumber("scene", 0);
            WriteScene(json, listed, notes);
            WriteNodes(json, listed);
            WriteMeshes(json, listed);
            WriteMaterials(json, listed);
            WriteData(json, listed);
            json.WriteEndObject();
        }

        // A chunk of text is filled up to a multiple of four bytes with spaces.
        while (memory.Length % 4 != 0)
        {
            memory.WriteByte((byte)' ');
        }

        return memory.ToArray();
    }

    private static void WriteScene(Utf8JsonWriter json, Listed listed, IReadOnlyDictionary<string, string> notes)
    {
        json.WriteStartArray("scenes");
        json.WriteStartObject();
        json.WriteString("name", listed.Nodes[0].Node.Name);
        WriteNumbers(json, "nodes", 0);
        json.WriteStartObject("extras");
        foreach (var (name, text) in notes)
        {
            json.WriteString(name, text);
        }

        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static void WriteNodes(Utf8JsonWriter json, Listed listed)
    {
        json.WriteStartArray("nodes");
        for (int i = 0; i < listed.Nodes.Count; i++)
        {
            var (node, mesh, children) = listed.Nodes[i];
            json.WriteStartObject();
            json.WriteString("name", node.Name);
            if (i == 0)
            {
                // A quarter turn about x takes z upwards to y upwards.
                WriteNumbers(json, "rotation", -Math.Sqrt(0.5), 0, 0, Math.Sqrt(0.5));
                WriteNumbers(json, "scale", 0.001, 0.001, 0.001);
            }

            if (mesh is { } own)
            {
                var middle = listed.Meshes[own].Middle;
                json.WriteNumber("mesh", own);
                if (i > 0)
                {
                    WriteNumbers(json, "translation", middle.X, middle.Y, middle.Z);
                }
            }

            if (children.Count > 0)
            {
                WriteNumbers(json, "children", [.. children.Select(c => (double)c)]);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteMeshes(Utf8JsonWriter json, Listed listed)
    {
        json.WriteStartArray("meshes");
        int accessor = 0;
        for (int m = 0; m < listed.Meshes.Count; m++)
        {
            var mesh = listed.Meshes[m];
            int places = accessor++;
            json.WriteStartObject();
            json.WriteString("name", listed.Nodes.First(n => n.Mesh == m).Node.Name);
            json.WriteStartArray("primitives");
            foreach (var colour in mesh.Colours)
            {
                json.WriteStartObject();
                json.WriteStartObject("attributes");
                json.WriteNumber("POSITION", places);
                json.WriteEndObject();
                json.WriteNumber("indices", accessor++);
                json.WriteNumber("material", listed.Colours.IndexOf(colour));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteMaterials(Utf8JsonWriter json, Listed listed)
    {
        json.WriteStartArray("materials");
        foreach (var colour in listed.Colours)
        {
            // Colours are told as light, not as sRGB (3.9.2).
            var light = LinearColour.Of(colour);
            json.WriteStartObject();
            json.WriteString("name", Palette.Materials.FirstOrDefault(m => m.Colour == colour)?.Name ?? colour.Hex);
            json.WriteStartObject("pbrMetallicRoughness");
            WriteNumbers(json, "baseColorFactor", Math.Round(light.R, 5), Math.Round(light.G, 5), Math.Round(light.B, 5), 1);
            json.WriteNumber("metallicFactor", 0);
            json.WriteNumber("roughnessFactor", Rough);
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // Of each mesh one view of places and one of indices, and an accessor for the places and for each colour's part of the indices.
    private static void WriteData(Utf8JsonWriter json, Listed listed)
    {
        json.WriteStartArray("accessors");
        for (int m = 0; m < listed.Meshes.Count; m++)
        {
            WriteAccessors(json, listed.Meshes[m], 2 * m);
        }

        json.WriteEndArray();
        json.WriteStartArray("bufferViews");
        long at = 0;
        foreach (var mesh in listed.Meshes)
        {
            at = WriteView(json, at, mesh.PlacesLength, ArrayBuffer);
            at = WriteView(json, at, mesh.IndicesLength, ElementArrayBuffer);
        }

        json.WriteEndArray();
        json.WriteStartArray("buffers");
        json.WriteStartObject();
        json.WriteNumber("byteLength", at);
        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static void WriteAccessors(Utf8JsonWriter json, GlbMesh mesh, int view)
    {
        json.WriteStartObject();
        json.WriteNumber("bufferView", view);
        json.WriteNumber("componentType", Single);
        json.WriteNumber("count", mesh.Places);
        json.WriteString("type", "VEC3");
        WriteSingles(json, "min", mesh.Low);
        WriteSingles(json, "max", mesh.High);
        json.WriteEndObject();
        int from = 0;
        foreach (int count in mesh.Counts)
        {
            json.WriteStartObject();
            json.WriteNumber("bufferView", view + 1);
            json.WriteNumber("byteOffset", from * mesh.IndexSize);
            json.WriteNumber("componentType", mesh.IndexSize == 2 ? Short : Whole);
            json.WriteNumber("count", count);
            json.WriteString("type", "SCALAR");
            json.WriteEndObject();
            from += count;
        }
    }

    private static long WriteView(Utf8JsonWriter json, long at, long length, int target)
    {
        json.WriteStartObject();
        json.WriteNumber("buffer", 0);
        json.WriteNumber("byteOffset", at);
        json.WriteNumber("byteLength", length);
        json.WriteNumber("target", target);
        json.WriteEndObject();
        return at + length;
    }

    // Bounds are those of what is written, to the last bit.
    private static void WriteSingles(Utf8JsonWriter json, string name, Point3 p)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue((float)p.X);
        json.WriteNumberValue((float)p.Y);
        json.WriteNumberValue((float)p.Z);
        json.WriteEndArray();
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, params ReadOnlySpan<double> numbers)
    {
        json.WriteStartArray(name);
        foreach (double number in numbers)
        {
            json.WriteNumberValue(number);
        }

        json.WriteEndArray();
    }

    /// <summary>The nodes in order, each before its children; the meshes in theirs.</summary>
    private sealed class Listed
    {
        public Listed(SceneNode root)
        {
            Add(root);
            Colours = [.. Meshes.SelectMany(m => m.Colours).Distinct().OrderBy(c => c.Hex, StringComparer.Ordinal)];
        }

        public List<(SceneNode Node, int? Mesh, List<int> Children)> Nodes { get; } = [];

        public List<GlbMesh> Meshes { get; } = [];

        public List<Rgb> Colours { get; }

        private int Add(SceneNode node)
        {
            int? mesh = null;
            if (node.Bodies.Any(b => b.Mesh.TriangleCount > 0))
            {
                mesh = Meshes.Count;
                Meshes.Add(new(node.Bodies));
            }

            int at = Nodes.Count;
            Nodes.Add((node, mesh, []));
            foreach (var child in node.Children.Where(c => c.HasAny))
            {
                Nodes[at].Children.Add(Add(child));
            }

            return at;
        }
    }
}
