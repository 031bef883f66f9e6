using System.IO.Compression;
using System.Xml;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>The parts of a package, found by its content types and root relationships (sections 2.1 and C).</summary>
internal sealed class ThreeMfParts
{
    private const long LargestList = 4_000_000;
    private const string Package = "PF7202";

    private readonly Dictionary<string, ZipArchiveEntry> entries = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, string> defaults = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, string> overrides = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, string> roots = new(StringComparer.Ordinal);

    public ThreeMfParts(ZipArchive archive)
    {
        if (archive.Entries.Count > InputLimits.ModelParts)
        {
            throw new ThreeMfFault(Package, Invariant($"it has {archive.Entries.Count} parts, over the limit of {InputLimits.ModelParts}"));
        }

        foreach (var entry in archive.Entries)
        {
            if (!entries.TryAdd(entry.FullName, entry))
            {
                throw new ThreeMfFault(Package, Invariant($"part '{entry.FullName}' is there twice"));
            }
        }

        ReadContentTypes(Entry(ThreeMfNames.ContentTypesEntry));
        ReadRelationships(Entry(ThreeMfNames.RelationshipsEntry));
        Model = Target(ThreeMfNames.ModelRelationship) ?? throw new ThreeMfFault(Package, "no root relationship points at a model part");
        if (TypeOf(Model.FullName) != ThreeMfNames.ModelContentType)
        {
            throw new ThreeMfFault(Package, Invariant($"the content type of '{Model.FullName}' is not that of a model part"));
        }

        Thumbnail = Target(ThreeMfNames.ThumbnailRelationship);
        if (Thumbnail is { } picture && TypeOf(picture.FullName) is not ("image/png" or "image/jpeg"))
        {
            throw new ThreeMfFault(Package, "the thumbnail is neither PNG nor JPEG");
        }
    }

    public ZipArchiveEntry Model { get; }

    public ZipArchiveEntry? Thumbnail { get; }

    private ZipArchiveEntry Entry(string name) => entries.TryGetValue(name, out var entry)
        ? entry
        : throw new ThreeMfFault(Package, Invariant($"part '{name}' is missing"));

    private ZipArchiveEntry? Target(string type) => roots.TryGetValue(type, out var target) ? Entry(target) : null;

    private string? TypeOf(string name) =>
        overrides.TryGetValue("/" + name, out var type) || defaults.TryGetValue(name[(name.LastIndexOf('.') + 1)..], out type) ? type : null;

    private void ReadContentTypes(ZipArchiveEntry entry)
    {
        using var xml = ThreeMfReader.Open(entry, LargestList);
        do
        {
            if (xml.NodeType != XmlNodeType.Element || xml.NamespaceURI != ThreeMfNames.ContentTypeNamespace)
            {
                continue;
            }

            var (map, key) = xml.LocalName switch
            {
                "Default" => (defaults, xml.GetAttribute("Extension")),
                "Override" => (overrides, xml.GetAttribute("PartName")),
                _ => (null, null),
            };
            if (map is not null && (key is null || !map.TryAdd(key, xml.GetAttribute("ContentType") ?? "")))
            {
                throw new ThreeMfFault(Package, "the list of content types names a kind of part twice or not at all");
            }
        }
        while (xml.Read());
    }

    private void ReadRelationships(ZipArchiveEntry entry)
    {
        using var xml = ThreeMfReader.Open(entry, LargestList);
        do
        {
            if (xml.NodeType != XmlNodeType.Element || xml.LocalName != "Relationship" || xml.NamespaceURI != ThreeMfNames.RelationshipNamespace)
            {
                continue;
            }

            string type = xml.GetAttribute("Type") ?? "", target = xml.GetAttribute("Target") ?? "";
            if (xml.GetAttribute("TargetMode") == "External" || target.Contains("://", StringComparison.Ordinal))
            {
                throw new ThreeMfFault(Package, "a relationship points outside the package");
            }

            string name = target.TrimStart('/');
            if (name.Length == 0 || name.Split('/').Any(step => step.Length == 0 || step[0] == '.'))
            {
                throw new ThreeMfFault(Package, Invariant($"a relationship has the target '{target}', which is no part name"));
            }

            if (!roots.TryAdd(type, name))
            {
                throw new ThreeMfFault(Package, Invariant($"two root relationships have the type '{type}'"));
            }
        }
        while (xml.Read());
    }
}
