using System.Buffers.Binary;
using System.Text.Json;
using PlatformForge.Exports.Gltf;
using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Exports.Pictures.Light;
using PlatformForge.Geometry;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Binary files of glTF 2.0 (Khronos Group; ISO/IEC 12113:2022), taken apart by hand by its sections 3.6, 3.7 and 4.4.</summary>
public class SceneTests
{
    private static readonly IReadOnlyDictionary<string, string> NoNotes = new Dictionary<string, string>();

    /// <summary>A box of 30 x 20 x 10 mm far from the origin, its top in another colour: lengths, alignment, bounds, places, indices by colour.</summary>
    [Theory]
    [InlineData(1, 2)]
    [InlineData(9000, 4)]
    public void A_box_is_found_again_in_its_file(int copies, int indexSize)
    {
        var box = Box(new(2000.4, -1000, 8), new(30, 20, 10));
        var body = new SceneBody(box with { Paints = [.. Enumerable.Range(0, 12).Select(t => (byte)(t < 2 ? 1 : 0))] }, [new(10, 20, 30), new(255, 255, 255)]);
        var root = SceneNode.Group("layout", [SceneNode.Group("nothing to see", []),
            SceneNode.Group("platform", [SceneNode.Leaf("box", Enumerable.Repeat(body, copies))])]);
        byte[] file = Written(root);

        Assert.Equal([0x46546C67u, 2u, (uint)file.Length], Words(file, 0, 3));
        int json = (int)Words(file, 12, 1)[0], binary = 20 + json;
        Assert.Equal([0x4E4F534Au], Words(file, 16, 1));
        Assert.Equal([(uint)(file.Length - binary - 8), 0x004E4942u], Words(file, binary, 2));
        Assert.Equal(0, json % 4);
        Assert.Equal(0, file.Length % 4);
        using var told = JsonDocument.Parse(file.AsMemory(20, json));
        var all = told.RootElement;
        Assert.Equal("2.0", all.GetProperty("asset").GetProperty("version").GetString());
        Assert.Equal(["layout", "platform", "box"], all.GetProperty("nodes").EnumerateArray().Select(n => n.GetProperty("name").GetString()!));

        var views = all.GetProperty("bufferViews");
        ReadOnlySpan<byte> data = file.AsSpan(binary + 8);
        var places = all.GetProperty("accessors")[0];
        Assert.Equal(8 * copies, places.GetProperty("count").GetInt32());
        var shift = all.GetProperty("nodes")[2].GetProperty("translation");
        for (int i = 0; i < 8; i++)
        {
            foreach (var (axis, wanted) in new[] { (0, box.Vertices[i].X), (1, box.Vertices[i].Y), (2, box.Vertices[i].Z) })
            {
                float place = BinaryPrimitives.ReadSingleLittleEndian(data[((12 * i) + (4 * axis))..]);
                Assert.Equal(wanted, place + shift[axis].GetDouble(), 1e-5);
                Assert.InRange(place, places.GetProperty("min")[axis].GetSingle(), places.GetProperty("max")[axis].GetSingle());
            }
        }

        var parts = all.GetProperty("meshes")[0].GetProperty("primitives").EnumerateArray().ToArray();
        Assert.Equal(2, parts.Length);
        foreach (var (part, triangles, light) in parts.Zip([10, 2], [LinearColour.Of(new(10, 20, 30)).R, 1.0]).Select(p => (p.First, p.Second, p.Third)))
        {
            var indices = all.GetProperty("accessors")[part.GetProperty("indices").GetInt32()];
            Assert.Equal(3 * triangles * copies, indices.GetProperty("count").GetInt32());
            Assert.Equal(indexSize == 2 ? 5123 : 5125, indices.GetProperty("componentType").GetInt32());
            int at = views[1].GetProperty("byteOffset").GetInt32() + indices.GetProperty("byteOffset").GetInt32();
            uint first = indexSize == 2 ? BinaryPrimitives.ReadUInt16LittleEndian(data[at..]) : BinaryPrimitives.ReadUInt32LittleEndian(data[at..]);
            Assert.Equal((uint)box.Triangles[triangles == 2 ? 0 : 6], first);
            double red = all.GetProperty("materials")[part.GetProperty("material").GetInt32()].GetProperty("pbrMetallicRoughness")
                .GetProperty("baseColorFactor")[0].GetDouble();
            Assert.Equal(light, red, 1e-5);
        }

        // The standard wants views and indices at multiples of their size, and the last byte of the last view within the buffer.
        int end = views.EnumerateArray().Max(v => v.GetProperty("byteOffset").GetInt32() + v.GetProperty("byteLength").GetInt32());
        Assert.Equal(end, all.GetProperty("buffers")[0].GetProperty("byteLength").GetInt32());
        Assert.All(views.EnumerateArray(), v => Assert.Equal(0, v.GetProperty("byteOffset").GetInt32() % 4));
    }

    private static uint[] Words(byte[] file, int at, int count) =>
        [.. Enumerable.Range(0, count).Select(i => BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(at + (4 * i))))];

    private static byte[] Written(SceneNode root)
    {
        using var to = new MemoryStream();
        GlbWriter.Write(to, root, "a test", NoNotes);
        Assert.True(to.CanWrite);
        return to.ToArray();
    }

    // Top first, then the other sides; counterclockwise seen from outside.
    private static Mesh Box(Point3 low, Point3 size) => new(
        [.. Enumerable.Range(0, 8).Select(i => low + new Point3((i & 1) * size.X, ((i >> 1) & 1) * size.Y, (i >> 2) * size.Z))],
        [4, 5, 7, 4, 7, 6, 0, 3, 1, 0, 2, 3, 0, 1, 5, 0, 5, 4, 2, 7, 3, 2, 6, 7, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5],
        []);
}
