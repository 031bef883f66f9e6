using System.Globalization;
using System.IO.Compression;
using System.Text;
using PlatformForge.Geometry;

namespace PlatformForge.Tests.Exports;

/// <summary>3MF packages typed out by hand, right or wrong on purpose.</summary>
internal static class HandPackage
{
    public const string Namespace = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

    public const string Relationships =
        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"a\" Target=\"/3D/3dmodel.model\" "
        + "Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/></Relationships>";

    public const string ContentTypes =
        "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"model\" "
        + "ContentType=\"application/vnd.ms-package.3dmanufacturing-3dmodel+xml\"/><Default Extension=\"png\" ContentType=\"image/png\"/></Types>";

    public static string Tetrahedron { get; } = MeshText(HandSolids.Tetrahedron());

    public static string Model(string mesh, string items = "<item objectid=\"1\"/>", string type = "model") =>
        $"<model xmlns=\"{Namespace}\"><resources><object id=\"1\" type=\"{type}\">{mesh}</object></resources><build>{items}</build></model>";

    public static string MeshText(Mesh mesh)
    {
        var text = new StringBuilder("<mesh><vertices>");
        foreach (var v in mesh.Vertices)
        {
            text.Append(CultureInfo.InvariantCulture, $"<vertex x=\"{v.X}\" y=\"{v.Y}\" z=\"{v.Z}\"/>");
        }

        text.Append("</vertices><triangles>");
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            text.Append(CultureInfo.InvariantCulture, $"<triangle v1=\"{mesh.Triangles[i]}\" v2=\"{mesh.Triangles[i + 1]}\" v3=\"{mesh.Triangles[i + 2]}\"/>");
        }

        return text.Append("</triangles></mesh>").ToString();
    }

    /// <summary>A package of this model part; a null part is left out.</summary>
    public static byte[] With(string? model, string? relationships = Relationships, string? contentTypes = ContentTypes)
    {
        using var memory = new MemoryStream();
        using (var archive = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in new[] { ("3D/3dmodel.model", model), ("_rels/.rels", relationships), ("[Content_Types].xml", contentTypes) })
            {
                if (text is not null)
                {
                    using var stream = archive.CreateEntry(name).Open();
                    stream.Write(Encoding.UTF8.GetBytes(text));
                }
            }
        }

        return memory.ToArray();
    }
}
