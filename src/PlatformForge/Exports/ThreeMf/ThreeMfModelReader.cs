using System.Globalization;
using System.Xml;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>Reads the model part: one pass, nothing kept but what the model holds.</summary>
internal sealed class ThreeMfModelReader(XmlReader xml)
{
    private readonly List<ThreeMfMetadata> metadata = [];
    private readonly List<Material> materials = [];
    private readonly Dictionary<int, int> materialSets = []; // id to index of its first material
    private readonly HashSet<int> ids = [];
    private readonly Dictionary<int, (string Type, long Weight, int Depth)> known = []; // weight: triangles and corners, whichever are more, groups taken apart
    private readonly List<ThreeMfObject> objects = [];
    private readonly List<ThreeMfItem> items = [];
    private int members, corners, faces;

    /// <summary>Reads from the model element on.</summary>
    public ThreeMfModel Read()
    {
        if (!Is("model"))
        {
            throw new ThreeMfFault("the root is not a 'model' element");
        }

        double unit = ReadUnit();
        CheckExtensions();
        bool resources = false, build = false;
        foreach (string child in Children())
        {
            switch (child)
            {
                case "metadata":
                    ReadMetadata();
                    break;
                case "resources" when !resources:
                    resources = true;
                    ReadResources();
                    break;
                case "build" when resources && !build:
                    build = true;
                    ReadBuild();
                    break;
                default:
                    throw new ThreeMfFault(Invariant($"'{child}' has no place in a model, or not there"));
            }
        }

        if (!resources || !build)
        {
            throw new ThreeMfFault(Invariant($"the model has no '{(resources ? "build" : "resources")}' element"));
        }

        while (Next())
        {
            // To the very end, so that text after the root and a wrong checksum are found.
        }

        return new(metadata, materials, objects, items, null) { UnitMm = unit };
    }

    private double ReadUnit()
    {
        string name = xml.GetAttribute("unit") ?? "millimeter";
        var unit = Array.Find(ThreeMfNames.Units, u => u.Name == name);
        return unit.Name is not null ? unit.Mm : throw new ThreeMfFault(Invariant($"'{name}' is no unit"));
    }

    private void CheckExtensions()
    {
        foreach (string prefix in (xml.GetAttribute("requiredextensions") ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            throw new ThreeMfFault(Invariant($"it requires the extension '{xml.LookupNamespace(prefix) ?? prefix}', which is not read here"));
        }
    }

    private void ReadMetadata()
    {
        string name = xml.GetAttribute("name") ?? throw new ThreeMfFault("a metadata element has no name");
        bool plain = !name.Contains(':', StringComparison.Ordinal);
        if (plain ? !ThreeMfNames.PlainMetadata.Contains(name) : xml.LookupNamespace(name[..name.IndexOf(':', StringComparison.Ordinal)]) is null)
        {
            throw new ThreeMfFault(Invariant($"the metadata name '{name}' is not one of the specification's and has no declared prefix"));
        }

        if (metadata.Any(m => m.Name == name))
        {
            throw new ThreeMfFault(Invariant($"the metadata '{name}' is there twice"));
        }

        Count(metadata.Count, InputLimits.ModelMetadata, "lines of metadata");
        metadata.Add(new(name, Content()));
    }

    // The text inside the element that the reader stands on, which it leaves behind it.
    private string Content()
    {
        var text = new System.Text.StringBuilder();
        int depth = xml.Depth;
        bool empty = xml.IsEmptyElement;
        while (Next() && !empty && xml.Depth > depth)
        {
            if (xml.NodeType == XmlNodeType.Element)
            {
                throw new ThreeMfFault("a metadata element holds another element");
            }

            text.Append(xml.Value);
            if (text.Length > InputLimits.ModelText)
            {
                throw new ThreeMfFault(Invariant($"a line of metadata is longer than {InputLimits.ModelText} letters, which is the limit"));
            }
        }

        if (!empty)
        {
            Next();
        }

        return text.ToString();
    }

    private static void Count(int there, int most, string what)
    {
        if (there >= most)
        {
            throw new ThreeMfFault(Invariant($"it has more than {most} {what}, which is the limit"));
        }
    }

    private void ReadResources()
    {
        foreach (string child in Children())
        {
            if (child is not ("basematerials" or "object"))
            {
                throw new ThreeMfFault(Invariant($"'{child}' is no resource"));
            }

            int id = Index("id");
            Count(ids.Count, InputLimits.ModelObjects, "objects");
            if (id == 0 || !ids.Add(id))
            {
                throw new ThreeMfFault(Invariant($"the resource id {id} is nil or used twice"));
            }

            if (child == "object")
            {
                ReadObject(id);
            }
            else
            {
                ReadMaterials(id);
            }
        }
    }

    private void ReadMaterials(int id)
    {
        materialSets.Add(id, materials.Count);
        foreach (string child in Children())
        {
            string colour = xml.GetAttribute("displaycolor") ?? "", name = xml.GetAttribute("name") ?? "";
            if (child != "base" || name.Length == 0 || colour.Length is not (7 or 9) || colour[0] != '#'
                || !uint.TryParse(colour.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out uint value))
            {
                throw new ThreeMfFault("a base material has no name or no colour of the form #RRGGBB");
            }

            value = colour.Length == 9 ? value >> 8 : value;
            Count(materials.Count, InputLimits.ModelObjects, "materials");
            materials.Add(new(name, new((byte)(value >> 16), (byte)(value >> 8), (byte)value)));
            Skip();
        }
    }

    private void ReadObject(int id)
    {
        string type = xml.GetAttribute("type") ?? "model", name = xml.GetAttribute("name") ?? "", number = xml.GetAttribute("partnumber") ?? "";
        if (!ThreeMfNames.ObjectTypes.Contains(type))
        {
            throw new ThreeMfFault(Invariant($"'{type}' is no type of object"));
        }

        string? set = xml.GetAttribute("pid");
        var paint = ObjectPaint();
        Mesh? mesh = null;
        List<ThreeMfComponent>? components = null;
        (long weight, int depth) = (0, 0);
        foreach (string child in Children())
        {
            if (child == "metadatagroup" && mesh is null && components is null)
            {
                Skip();
            }
            else if (child == "mesh" && mesh is null && components is null)
            {
                mesh = new ThreeMfMeshReader(this, xml, set, paint, type == "model").Read(id);
                weight = Math.Max(mesh.TriangleCount, mesh.Vertices.Length);
            }
            else if (child == "components" && mesh is null && components is null && paint is null)
            {
                (components, weight, depth) = ReadComponents(id);
            }
            else
            {
                throw new ThreeMfFault(Invariant($"'{child}' has no place in object {id}, or not there"));
            }
        }

        if (mesh is null && components is null)
        {
            throw new ThreeMfFault(Invariant($"object {id} has neither a mesh nor components"));
        }

        objects.Add(new(id, name, number, mesh, components ?? []));
        known.Add(id, (type, weight, depth));
    }

    private int? ObjectPaint()
    {
        string? set = xml.GetAttribute("pid"), index = xml.GetAttribute("pindex");
        return set is null && index is null ? null : Paint(set, index, "an object");
    }

    /// <summary>Index of a material told by the id of its set and its place there.</summary>
    internal int Paint(string? set, string? index, string who)
    {
        if (!ThreeMfNumber.TryIndex(set, out int id) || !materialSets.TryGetValue(id, out int first)
            || !ThreeMfNumber.TryIndex(index, out int place) || place >= materials.Count - first)
        {
            throw new ThreeMfFault(Invariant($"{who} has pid '{set}' and index '{index}', where no material is"));
        }

        return first + place;
    }

    private (List<ThreeMfComponent> Components, long Weight, int Depth) ReadComponents(int id)
    {
        var components = new List<ThreeMfComponent>();
        (long weight, int depth) = (0, 0);
        foreach (string child in Children())
        {
            int target = Index("objectid");
            if (child != "component" || !known.TryGetValue(target, out var part))
            {
                throw new ThreeMfFault(Invariant($"object {id} groups object {target}, which is not defined before it"));
            }

            Count(members++, InputLimits.ModelObjects, "members of groups");
            weight = Math.Min(InputLimits.ModelTriangles, weight + part.Weight) + 1;
            depth = Math.Max(depth, part.Depth + 1);
            Count(depth, InputLimits.ModelDepth, "groups inside one another");
            components.Add(new(target, Placement()));
            Skip();
        }

        return components.Count > 0 ? (components, weight, depth) : throw new ThreeMfFault(Invariant($"object {id} groups nothing"));
    }

    private void ReadBuild()
    {
        long triangles = 0;
        foreach (string child in Children())
        {
            int target = Index("objectid");
            if (child != "item" || !known.TryGetValue(target, out var part))
            {
                throw new ThreeMfFault(Invariant($"the build has an item of object {target}, which is not defined"));
            }

            if (part.Type == "other")
            {
                throw new ThreeMfFault(Invariant($"the build has an item of object {target}, whose type 'other' is not to be printed"));
            }

            triangles += part.Weight;
            Count(items.Count, InputLimits.ModelItems, "things on the plate");
            if (triangles > InputLimits.ModelTriangles)
            {
                throw new ThreeMfFault(Invariant($"the build comes to more than {InputLimits.ModelTriangles} triangles or corners, which is the limit"));
            }

            items.Add(new(target, Placement(), xml.GetAttribute("partnumber") ?? ""));
            Skip();
        }
    }

    private AffineMotion Placement()
    {
        if (xml.GetAttribute("transform") is not { } text)
        {
            return AffineMotion.Identity;
        }

        var words = text.Split([' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries);
        var m = new double[12];
        bool good = words.Length == m.Length;
        for (int i = 0; i < m.Length && good; i++)
        {
            good = ThreeMfNumber.TryParse(words[i], out m[i], InputLimits.MotionCoordinate);
        }

        AffineMotion motion = new(new(m[0], m[1], m[2]), new(m[3], m[4], m[5]), new(m[6], m[7], m[8]), new(m[9], m[10], m[11]));
        return good && motion.Determinant != 0
            ? motion
            : throw new ThreeMfFault(Invariant($"a transform is not twelve numbers of at most {InputLimits.MotionCoordinate:0}, or flattens what it moves"));
    }

    /// <summary>Counts another corner or triangle of a mesh of the model.</summary>
    internal void CountCorner() => Count(corners++, InputLimits.ModelTriangles, "corners");

    /// <inheritdoc cref="CountCorner"/>
    internal void CountTriangle() => Count(faces++, InputLimits.ModelTriangles, "triangles");

    /// <summary>A whole number that an attribute must hold.</summary>
    internal int Index(string attribute) => ThreeMfNumber.TryIndex(xml.GetAttribute(attribute), out int value)
        ? value
        : throw new ThreeMfFault(Invariant($"a '{xml.LocalName}' element has {attribute} '{xml.GetAttribute(attribute)}', where a whole number belongs"));

    /// <summary>
    /// Names of the core elements inside the one that the reader stands on. The body of the loop must leave the reader on the child's
    /// start, on its end, or just behind it. Elements of other namespaces are passed over, as extensions that are not required.
    /// </summary>
    internal IEnumerable<string> Children()
    {
        if (xml.IsEmptyElement)
        {
            yield break;
        }

        int depth = xml.Depth;
        Next();
        while (xml.Depth > depth)
        {
            if (xml.NodeType == XmlNodeType.Element && xml.NamespaceURI == ThreeMfNames.CoreNamespace)
            {
                var (line, column) = Place();
                yield return xml.LocalName;
                if (Place() == (line, column))
                {
                    Skip();
                }
            }
            else if (xml.NodeType == XmlNodeType.Element)
            {
                Skip();
            }
            else
            {
                Next();
            }
        }
    }

    // One node on, and never deeper than anything of ours goes: the framework's reader keeps a record of every element it is inside of.
    private bool Next()
    {
        bool more = xml.Read();
        return xml.Depth <= InputLimits.ModelElementsDeep
            ? more
            : throw new ThreeMfFault(Invariant($"its XML has more than {InputLimits.ModelElementsDeep} elements inside one another, which is the limit"));
    }

    /// <summary>Passes over the element the reader stands on, which must hold nothing of the core.</summary>
    internal void Skip()
    {
        int depth = xml.Depth;
        bool empty = xml.IsEmptyElement;
        while (Next() && !empty && xml.Depth > depth)
        {
        }

        if (!empty)
        {
            Next();
        }
    }

    private (int Line, int Column) Place() => xml is IXmlLineInfo info ? (info.LineNumber, info.LinePosition) : default;

    private bool Is(string name) => xml.NodeType == XmlNodeType.Element && xml.LocalName == name && xml.NamespaceURI == ThreeMfNames.CoreNamespace;
}
