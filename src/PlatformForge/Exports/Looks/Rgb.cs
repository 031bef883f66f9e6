using PlatformForge.Geometry;
using PlatformForge.Solids;

namespace PlatformForge.Exports.Looks;

/// <summary>A colour of the sRGB space, 8 bits a channel.</summary>
public readonly record struct Rgb(byte R, byte G, byte B)
{
    /// <summary>In the form <c>#RRGGBB</c>.</summary>
    public string Hex => $"#{R:X2}{G:X2}{B:X2}";
}

/// <summary>A material as it shows.</summary>
public sealed record Material(string Name, Rgb Colour);

/// <summary>The colours in which files and pictures show a platform; lightness alone tells them apart, so that no one depends on hue.</summary>
public static class Palette
{
    /// <summary>One material a <see cref="Paint"/>, in its order.</summary>
    public static IReadOnlyList<Material> Materials { get; } =
    [
        new("Deck", new(0x6E, 0x72, 0x75)),
        new("Coping", new(0xB3, 0xA2, 0x82)),
        new("Line", new(0xFF, 0xFF, 0xFF)),
        new("Wall", new(0x9A, 0x5B, 0x45)),
        new("Mortar", new(0xC6, 0xBB, 0xA6)),
        new("Stone", new(0x84, 0x7B, 0x6A)),
        new("Timber", new(0x5F, 0x4C, 0x3A)),
        new("Concrete", new(0xA9, 0xA9, 0xA3)),
        new("Paver", new(0x8B, 0x62, 0x52)),
        new("Tactile strip", new(0xD8, 0xBE, 0x82)),
        new("Turf", new(0x6F, 0x7B, 0x4A)),
        new("Under sheet", new(0xCF, 0xD0, 0xCC)),
        new("Cast iron", new(0x33, 0x3A, 0x3C)),
        new("Coping bricks", new(0x5E, 0x3B, 0x38)),
        new("Render", new(0xE2, 0xDA, 0xC8)),
    ];

    // What is on every platform; what comes after it is told only where it is.
    private const int Usual = 4;

    /// <summary>The materials of a file: those that every platform may show, and further ones where a mesh shows them.</summary>
    public static IReadOnlyList<Material> Of(IEnumerable<Mesh> meshes) =>
        [.. Materials.Take(Math.Max(Usual, 1 + meshes.Max(m => m.Paints.Length == 0 ? 0 : (int?)m.Paints.Max()) ?? 0))];

    public static Rgb Of(Paint paint) => Materials[(int)paint].Colour;
}
