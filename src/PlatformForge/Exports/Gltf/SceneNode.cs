using PlatformForge.Exports.Pictures.Bodies;

namespace PlatformForge.Exports.Gltf;

/// <summary>Something of a scene with a name: bodies of its own, or further nodes, or both.</summary>
/// <param name="Name">What a viewer lists it as.</param>
/// <param name="Bodies">Its meshes in the layout's coordinates, mm; drawn as one.</param>
/// <param name="Children">What belongs to it.</param>
internal sealed record SceneNode(string Name, IReadOnlyList<SceneBody> Bodies, IReadOnlyList<SceneNode> Children)
{
    public static SceneNode Leaf(string name, IEnumerable<SceneBody> bodies) => new(name, [.. bodies], []);

    public static SceneNode Group(string name, IEnumerable<SceneNode> children) => new(name, [], [.. children]);

    /// <summary>Whether there is anything to show in it.</summary>
    public bool HasAny => Bodies.Any(b => b.Mesh.TriangleCount > 0) || Children.Any(c => c.HasAny);
}
