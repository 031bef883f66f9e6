using System.IO.Compression;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>
/// Writes a package by the 3MF core specification 1.4.0. Nothing but the model decides the bytes: archive times are fixed,
/// numbers are in millionths of a mm, and the order is the model's.
/// </summary>
public static class ThreeMfWriter
{
    // The earliest time an archive can tell.
    private static readonly DateTimeOffset ArchiveTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>
    /// The whole package. Every object must have a mesh or components that stand before it, every paint a material, and the model
    /// at least one object and one item.
    /// </summary>
    public static byte[] ToBytes(ThreeMfModel model)
    {
        using var memory = new MemoryStream();
        Write(memory, model);
        return memory.ToArray();
    }

    /// <summary>The same bytes to a stream, which has to be one that can be sought: lengths of parts stand before them.</summary>
    public static void Write(Stream to, ThreeMfModel model)
    {
        ArgumentOutOfRangeException.ThrowIfZero(model.Objects.Count);
        ArgumentOutOfRangeException.ThrowIfZero(model.Items.Count);
        using var archive = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        Part(archive, ThreeMfNames.ContentTypesEntry, CompressionLevel.Optimal, WriteContentTypes);
        Part(archive, ThreeMfNames.RelationshipsEntry, CompressionLevel.Optimal, text => WriteRelationships(text, model.Thumbnail is not null));

        // The quickest level: it takes a third of the time of the usual one for files one tenth larger.
        Part(archive, ThreeMfNames.ModelEntry, CompressionLevel.Fastest, text => WriteModel(text, model));
        if (model.Thumbnail is { } picture)
        {
            Part(archive, ThreeMfNames.ThumbnailEntry, CompressionLevel.NoCompression, text => text.Raw(picture));
        }
    }

    private static void Part(ZipArchive archive, string name, CompressionLevel level, Action<Utf8Text> write)
    {
        var entry = archive.CreateEntry(name, level);
        entry.LastWriteTime = ArchiveTime;
        using var stream = entry.Open();
        using var text = new Utf8Text(stream);
        write(text);
    }

    private static void WriteContentTypes(Utf8Text text) => text
        .Raw("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<Types xmlns=\""u8).Escaped(ThreeMfNames.ContentTypeNamespace)
        .Raw("\">\n <Default Extension=\"rels\" ContentType=\""u8).Escaped(ThreeMfNames.RelationshipContentType)
        .Raw("\"/>\n <Default Extension=\"model\" ContentType=\""u8).Escaped(ThreeMfNames.ModelContentType)
        .Raw("\"/>\n <Default Extension=\"png\" ContentType=\"image/png\"/>\n</Types>\n"u8);

    private static void WriteRelationships(Utf8Text text, bool thumbnail)
    {
        text.Raw("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<Relationships xmlns=\""u8).Escaped(ThreeMfNames.RelationshipNamespace).Raw("\">\n"u8);
        Relationship(text, 1, ThreeMfNames.ModelRelationship, ThreeMfNames.ModelEntry);
        if (thumbnail)
        {
            Relationship(text, 2, ThreeMfNames.ThumbnailRelationship, ThreeMfNames.ThumbnailEntry);
        }

        text.Raw("</Relationships>\n"u8);
    }

    private static void Relationship(Utf8Text text, int number, string type, string entry) => text
        .Raw(" <Relationship Id=\"rel"u8).Whole(number).Raw("\" Type=\""u8).Escaped(type).Raw("\" Target=\"/"u8).Escaped(entry).Raw("\"/>\n"u8);

    private static void WriteModel(Utf8Text text, ThreeMfModel model)
    {
        text.Raw("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<model unit=\"millimeter\" xml:lang=\"en-GB\" xmlns=\""u8)
            .Escaped(ThreeMfNames.CoreNamespace).Raw("\">\n"u8);
        foreach (var (name, value) in model.Metadata)
        {
            text.Raw(" <metadata name=\""u8).Escaped(name).Raw("\">"u8).Escaped(value).Raw("</metadata>\n"u8);
        }

        // The materials take an id above those of the objects: ids are shared by all resources.
        int materials = model.Objects.Max(o => o.Id) + 1;
        text.Raw(" <resources>\n  <basematerials id=\""u8).Whole(materials).Raw("\">\n"u8);
        foreach (var material in model.Materials)
        {
            text.Raw("   <base name=\""u8).Escaped(material.Name).Raw("\" displaycolor=\""u8).Escaped(material.Colour.Hex).Raw("\"/>\n"u8);
        }

        text.Raw("  </basematerials>\n"u8);
        foreach (var thing in model.Objects)
        {
            WriteObject(text, thing, materials);
        }

        text.Raw(" </resources>\n <build>\n"u8);
        foreach (var item in model.Items)
        {
            WriteItem(text, item);
        }

        text.Raw(" </build>\n</model>\n"u8);
    }

    private static void WriteObject(Utf8Text text, ThreeMfObject thing, int materials)
    {
        if (thing.Mesh is not { } mesh)
        {
            WriteGroup(text, thing);
            return;
        }

        int main = CommonestPaint(mesh);
        text.Raw("  <object id=\""u8).Whole(thing.Id).Raw("\" type=\"model\" name=\""u8).Escaped(thing.Name)
            .Raw("\" partnumber=\""u8).Escaped(thing.PartNumber).Raw("\" pid=\""u8).Whole(materials).Raw("\" pindex=\""u8).Whole(main)
            .Raw("\">\n   <mesh>\n    <vertices>\n"u8);
        foreach (var v in mesh.Vertices)
        {
            text.Raw("<vertex x=\""u8).Length(v.X).Raw("\" y=\""u8).Length(v.Y).Raw("\" z=\""u8).Length(v.Z).Raw("\"/>\n"u8);
        }

        text.Raw("    </vertices>\n    <triangles>\n"u8);
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            text.Raw("<triangle v1=\""u8).Whole(mesh.Triangles[3 * i]).Raw("\" v2=\""u8).Whole(mesh.Triangles[(3 * i) + 1])
                .Raw("\" v3=\""u8).Whole(mesh.Triangles[(3 * i) + 2]);
            int paint = mesh.Paints.Length == 0 ? main : mesh.Paints[i];
            if (paint != main)
            {
                text.Raw("\" pid=\""u8).Whole(materials).Raw("\" p1=\""u8).Whole(paint);
            }

            text.Raw("\"/>\n"u8);
        }

        text.Raw("    </triangles>\n   </mesh>\n  </object>\n"u8);
    }

    private static void WriteGroup(Utf8Text text, ThreeMfObject thing)
    {
        ArgumentOutOfRangeException.ThrowIfZero(thing.Components.Count);
        text.Raw("  <object id=\""u8).Whole(thing.Id).Raw("\" type=\"model\" name=\""u8).Escaped(thing.Name)
            .Raw("\" partnumber=\""u8).Escaped(thing.PartNumber).Raw("\">\n   <components>\n"u8);
        foreach (var part in thing.Components)
        {
            text.Raw("    <component objectid=\""u8).Whole(part.ObjectId).Raw("\" transform=\""u8);
            WriteMotion(text, part.Placement);
            text.Raw("\"/>\n"u8);
        }

        text.Raw("   </components>\n  </object>\n"u8);
    }

    // What most triangles show is the object's own material; only the others name theirs.
    private static int CommonestPaint(Mesh mesh)
    {
        var counts = new int[byte.MaxValue + 1];
        foreach (byte paint in mesh.Paints)
        {
            counts[paint]++;
        }

        return Array.IndexOf(counts, counts.Max());
    }

    private static void WriteItem(Utf8Text text, ThreeMfItem item)
    {
        text.Raw("  <item objectid=\""u8).Whole(item.ObjectId).Raw("\" partnumber=\""u8).Escaped(item.PartNumber).Raw("\" transform=\""u8);
        WriteMotion(text, item.Placement);
        text.Raw("\"/>\n"u8);
    }

    private static void WriteMotion(Utf8Text text, AffineMotion motion)
    {
        var (x, y, z, shift) = motion;
        foreach (var row in (ReadOnlySpan<Point3>)[x, y, z])
        {
            text.Ratio(row.X).Raw(" "u8).Ratio(row.Y).Raw(" "u8).Ratio(row.Z).Raw(" "u8);
        }

        text.Length(shift.X).Raw(" "u8).Length(shift.Y).Raw(" "u8).Length(shift.Z);
    }
}
