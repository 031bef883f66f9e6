using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;

namespace PlatformForge.Tests.Exports;

/// <summary>Bodies of a package one by one, each placed by itself.</summary>
internal static class PlacedBodies
{
    /// <summary>Every mesh that the build prints, placed, in mm, in the order of the items and of the members of groups.</summary>
    public static Mesh[] PlacedMeshes(this ThreeMfModel model) => [.. model.Items.SelectMany(i => model.Below(i.ObjectId, i.Placement))];

    private static IEnumerable<Mesh> Below(this ThreeMfModel model, int id, AffineMotion motion)
    {
        var thing = model.Objects.Single(o => o.Id == id);
        Mesh[] own = thing.Mesh is { } mesh ? [mesh with { Vertices = [.. mesh.Vertices.Select(v => motion.Apply(v) * model.UnitMm)] }] : [];
        return own.Concat(thing.Components.SelectMany(c => model.Below(c.ObjectId, c.Placement.Then(motion))));
    }
}
