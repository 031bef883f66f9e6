using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Exports.Drawings.Elevations.Walls;

/// <summary>What is open in a wall as it was laid, mm.</summary>
/// <param name="Middle">Its middle along a slice, from where that begins.</param>
/// <param name="Width">Its width.</param>
/// <param name="Sill">Height of its sill over the baseboard.</param>
/// <param name="Springing">Height at which its sides end.</param>
/// <param name="Crown">Height of its crown.</param>
/// <param name="Number">Which of those of its plan it is; 0 for none of them.</param>
internal sealed record WallHole(double Middle, double Width, double Sill, double Springing, double Crown, int Number)
{
    // What a hole that lies in several parts of a wall's height shows twice is nearer than this, mm.
    private const double Same = 0.5;

    /// <summary>Whether it goes right through.</summary>
    public bool IsThrough { get; init; }

    /// <summary>Those whose middles lie in a slice, from left to right.</summary>
    public static IReadOnlyList<WallHole> Of(WallSlice slice)
    {
        var found = new List<WallHole>();
        foreach (var (part, at) in slice.Parts())
        {
            double round = part.Wall.Wall.IsRing ? part.Wall.Wall.Length : 0;
            foreach (var region in part.Wall.Regions.Where(r => r.Out < 0))
            {
                double left = region.Outline.Min(p => p.X), right = region.Outline.Max(p => p.X), middle = (left + right) / 2;
                middle -= middle >= part.To && round > 0 ? round : 0;
                double along = middle - part.From + at;
                if (along >= 0 && along < slice.Length && part.From <= middle && middle < part.To && !found.Exists(h => Math.Abs(h.Middle - along) < Same))
                {
                    found.Add(new(along, right - left, region.Outline.Min(p => p.Y), region.Outline.Where(p => p.X == left).Max(p => p.Y),
                        region.Outline.Max(p => p.Y), NumberAt(part.Wall, middle))
                    {
                        IsThrough = region.Behind is not null,
                    });
                }
            }
        }

        return [.. found.OrderBy(h => h.Middle)];
    }

    private static int NumberAt(FacedWall wall, double at) =>
        wall.Wall.Openings.Count > 0 ? wall.Wall.Openings.MinBy(o => Math.Abs(o.At - at)).Shape.Number : 0;
}
