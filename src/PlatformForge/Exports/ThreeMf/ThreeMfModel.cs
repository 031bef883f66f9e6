using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>What a 3MF package holds, as far as the core specification goes.</summary>
/// <param name="Metadata">Names and values, in the file's order.</param>
/// <param name="Materials">Base materials; the paints of the meshes are indices into them.</param>
/// <param name="Objects">Objects, each defined before it is used.</param>
/// <param name="Items">What is to be printed, and where it lies.</param>
/// <param name="Thumbnail">A PNG or JPEG picture of the package.</param>
public sealed record ThreeMfModel(
    IReadOnlyList<ThreeMfMetadata> Metadata,
    IReadOnlyList<Material> Materials,
    IReadOnlyList<ThreeMfObject> Objects,
    IReadOnlyList<ThreeMfItem> Items,
    byte[]? Thumbnail)
{
    /// <summary>Length of the file's unit in mm; what we write is in mm.</summary>
    public double UnitMm { get; init; } = 1;

    /// <summary>What the build prints, item by item, placed, in mm: the bodies of a group as one mesh, apart from one another.</summary>
    public IReadOnlyList<Mesh> PlacedItems()
    {
        var byId = Objects.ToDictionary(o => o.Id);
        return [.. Items.Select(item =>
        {
            var placed = new List<Mesh>();
            Place(item.ObjectId, item.Placement, byId, placed);
            return placed.Count == 1 ? placed[0] : Together(placed);
        })];
    }

    private static Mesh Together(List<Mesh> meshes)
    {
        var triangles = new List<int>();
        int first = 0;
        foreach (var mesh in meshes)
        {
            triangles.AddRange(mesh.Triangles.Select(v => v + first));
            first += mesh.Vertices.Length;
        }

        return new([.. meshes.SelectMany(m => m.Vertices)], [.. triangles], []);
    }

    private void Place(int id, AffineMotion motion, Dictionary<int, ThreeMfObject> byId, List<Mesh> placed)
    {
        var thing = byId[id];
        if (thing.Mesh is { } mesh)
        {
            placed.Add(mesh with { Vertices = Array.ConvertAll(mesh.Vertices, v => motion.Apply(v) * UnitMm) });
        }

        foreach (var component in thing.Components)
        {
            Place(component.ObjectId, component.Placement.Then(motion), byId, placed);
        }
    }
}

/// <summary>A line of a package's metadata.</summary>
public sealed record ThreeMfMetadata(string Name, string Value);

/// <summary>An object of a package: a mesh or a group of other objects.</summary>
/// <param name="Id">Its number in the file, from 1.</param>
/// <param name="Name">What slicers list it as.</param>
/// <param name="PartNumber">The maker's number of it.</param>
/// <param name="Mesh">Its triangles in the file's units; null for a group.</param>
/// <param name="Components">What it groups.</param>
public sealed record ThreeMfObject(int Id, string Name, string PartNumber, Mesh? Mesh, IReadOnlyList<ThreeMfComponent> Components);

/// <summary>A member of a group.</summary>
public sealed record ThreeMfComponent(int ObjectId, AffineMotion Placement);

/// <summary>A thing to print.</summary>
public sealed record ThreeMfItem(int ObjectId, AffineMotion Placement, string PartNumber);
