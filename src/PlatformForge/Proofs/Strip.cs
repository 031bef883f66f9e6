using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using static System.FormattableString;

namespace PlatformForge.Proofs;

/// <summary>
/// Three blocks in an angle, their middles 100 mm apart along the bed and across it. Half the sum of the measure over two of them and of that between them is
/// their distance
/// whatever the width of the printer's lines, since what one gains the other loses.
/// </summary>
internal static class Strip
{
    /// <summary>Length of the side of a block.</summary>
    public const double Block = 10;

    // Sizes in mm: heights of blocks and legs, least and greatest width of a leg, chamfer at the foot of blocks.
    private const double High = 10, Leg = 3, LeastWide = 8, MostWide = Block - 0.2, Relief = 0.5;

    public static (IReadOnlyList<ColumnBlock> Blocks, IReadOnlyList<ProofFigure> Figures, IReadOnlyList<string> Engraved) Made(PrinterSpec printer)
    {
        const double length = PrinterSpec.StripLength, half = Block / 2;
        double wide = Math.Clamp(Lettering.Room(["X"], printer).Y + 2.1, LeastWide, MostWide);
        Point2[] middles = [default, new(length, 0), new(0, length)];
        List<ColumnBlock> blocks = [Shape.Added(Shape.Box(0, -wide / 2, length, wide / 2), 0, Leg),
            Shape.Added(Shape.Box(-wide / 2, 0, wide / 2, length), 0, Leg)];
        blocks.AddRange(middles.Select(m => Shape.Added(Shape.Box(m.X - half, m.Y - half, m.X + half, m.Y + half), 0, High)));
        foreach (var m in middles)
        {
            var ring = Shape.Box(m.X - half, m.Y - half, m.X + half, m.Y + half);
            blocks.AddRange(Enumerable.Range(0, ring.Length).Select(k => Shape.Relieved(ring[k], ring[(k + 1) % ring.Length], Relief)));
        }

        // The legs run on through the chamfers.
        blocks.Add(Shape.Added(Shape.Box(half - 1, -wide / 2, half + 1, wide / 2), 0, Leg));
        blocks.Add(Shape.Added(Shape.Box(length - half - 1, -wide / 2, length - half + 1, wide / 2), 0, Leg));
        blocks.Add(Shape.Added(Shape.Box(-wide / 2, half - 1, wide / 2, half + 1), 0, Leg));
        blocks.Add(Shape.Added(Shape.Box(-wide / 2, length - half - 1, wide / 2, length - half + 1), 0, Leg));
        string made = printer.MeasuredStrip is { } m0 ? Invariant($"{m0.X:0.##} {m0.Y:0.##}") : "PLAIN";
        Point2 low = new(half + 2, (-wide / 2) + 1), high = new(length - half - 2, (wide / 2) - 1);
        string x = Invariant($"X {length:0}  {made}"), y = Invariant($"Y {length:0}  {made}");
        blocks.AddRange(Lettering.Cut([x], low, high, Leg, printer));
        blocks.AddRange(Lettering.Cut([y], low, high, Leg, printer).Select(b =>
            b with { Outline = Array.ConvertAll(b.Outline, p => p.Left) }));
        return (blocks, [new("between the blocks' middles, along the bed", length), new("between the blocks' middles, across it", length),
            new("over both blocks", length + Block), new("between both blocks", length - Block)],
            [.. Lettering.Kept([x], high - low, printer), .. Lettering.Kept([y], high - low, printer)]);
    }
}
