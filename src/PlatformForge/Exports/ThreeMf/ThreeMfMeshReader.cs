using System.Xml;
using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>Reads one mesh of the model part.</summary>
/// <param name="model">The reader of the model around it.</param>
/// <param name="xml">Stands on the mesh element.</param>
/// <param name="objectSet">Id of the object's own set of materials, which triangles may name again or leave out.</param>
/// <param name="paint">The object's own material; null when it has none.</param>
/// <param name="solid">Whether the object must be a solid, which takes at least four triangles.</param>
internal sealed class ThreeMfMeshReader(ThreeMfModelReader model, XmlReader xml, string? objectSet, int? paint, bool solid)
{
    private const int LeastOfASolid = 4;

    private readonly List<Point3> vertices = [];
    private readonly List<int> triangles = [];
    private readonly List<byte> paints = [];
    private bool painted;

    public Mesh Read(int id)
    {
        bool corners = false, faces = false;
        foreach (string child in model.Children())
        {
            switch (child)
            {
                case "vertices" when !corners:
                    corners = true;
                    ReadVertices();
                    break;
                case "triangles" when corners && !faces:
                    faces = true;
                    ReadTriangles(id);
                    break;
                default:
                    throw new ThreeMfFault(Invariant($"'{child}' has no place in the mesh of object {id}, or not there"));
            }
        }

        if (solid && triangles.Count < 3 * LeastOfASolid)
        {
            throw new ThreeMfFault(Invariant($"the mesh of object {id} has {triangles.Count / 3} triangles, too few to enclose anything"));
        }

        return new([.. vertices], [.. triangles], painted ? [.. paints] : []);
    }

    private void ReadVertices()
    {
        foreach (string child in model.Children())
        {
            if (child != "vertex" || !ThreeMfNumber.TryParse(xml.GetAttribute("x"), out double x)
                || !ThreeMfNumber.TryParse(xml.GetAttribute("y"), out double y) || !ThreeMfNumber.TryParse(xml.GetAttribute("z"), out double z))
            {
                throw new ThreeMfFault(Invariant($"vertex {vertices.Count} is not three numbers of at most {InputLimits.MeshCoordinate:0}"));
            }

            model.CountCorner();
            vertices.Add(new(x, y, z));
        }
    }

    private void ReadTriangles(int id)
    {
        foreach (string child in model.Children())
        {
            if (child != "triangle")
            {
                throw new ThreeMfFault(Invariant($"'{child}' stands among the triangles of object {id}"));
            }

            int a = model.Index("v1"), b = model.Index("v2"), c = model.Index("v3");
            if (Math.Max(a, Math.Max(b, c)) >= vertices.Count || a == b || b == c || c == a)
            {
                throw new ThreeMfFault(Invariant($"triangle {triangles.Count / 3} of object {id} joins the corners {a}, {b} and {c}, of {vertices.Count}"));
            }

            model.CountTriangle();
            triangles.AddRange([a, b, c]);
            paints.Add(PaintOf(id));
        }
    }

    private byte PaintOf(int id)
    {
        string? set = xml.GetAttribute("pid"), first = xml.GetAttribute("p1"), second = xml.GetAttribute("p2"), third = xml.GetAttribute("p3");
        if (set is null && first is null)
        {
            painted |= paint is not null;
            return (byte)(paint ?? 0);
        }

        if (paint is null)
        {
            throw new ThreeMfFault(Invariant($"triangles of object {id} have materials, but the object itself has none"));
        }

        if ((second is not null && second != first) || (third is not null && third != first))
        {
            throw new ThreeMfFault(Invariant($"a triangle of object {id} mixes base materials at its corners"));
        }

        int index = model.Paint(set ?? objectSet, first, "a triangle");
        if (index > byte.MaxValue)
        {
            throw new ThreeMfFault(Invariant($"more than {byte.MaxValue + 1} materials are not read here"));
        }

        painted = true;
        return (byte)index;
    }
}
