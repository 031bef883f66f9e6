using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Stock;

/// <summary>
/// The strips along the platform, laid flat: as long as their outer face, which stays whole, as high as the deck's underside over them. They are drawn as
/// seen from
/// inside the platform, so that the places of the ribs can be marked and relief slots cut where both belong.
/// </summary>
internal sealed class WallParts(StockBody body)
{
    private readonly PlatformPlan plan = body.Plan;

    public IEnumerable<CutPart> Of(PlatformSection section)
    {
        yield return Strip(section, isFar: false);
        if (body.HasFarStrip)
        {
            yield return Strip(section, isFar: true);
        }
    }

    /// <summary>Chainages and lengths along a strip's outer face from the section's start, mm.</summary>
    public (double[] Stations, double[] Lengths) Developed(PlatformSection section, bool isFar)
    {
        double[] stations = body.Stations(section), lengths = new double[stations.Length];
        var outer = isFar ? plan.Body.FarWallFace : plan.WallFace;
        for (int i = 1; i < stations.Length; i++)
        {
            Point2 here = plan.ToLayout(stations[i], outer.At(stations[i])), before = plan.ToLayout(stations[i - 1], outer.At(stations[i - 1]));
            lengths[i] = lengths[i - 1] + (here - before).Length;
        }

        return (stations, lengths);
    }

    /// <summary>The line in plan that a strip's outer face is bent to.</summary>
    public Point2[] Bent(PlatformSection section, bool isFar)
    {
        var outer = isFar ? plan.Body.FarWallFace : plan.WallFace;
        return [.. body.Stations(section).Select(s => plan.ToLayout(s, outer.At(s)))];
    }

    private CutPart Strip(PlatformSection section, bool isFar)
    {
        var (stations, lengths) = Developed(section, isFar);
        var (outer, inner) = isFar ? (plan.Body.FarWallFace, body.FarInside) : (plan.WallFace, body.NearInside);
        double length = lengths[^1];
        bool right = body.RisesRight(isFar);
        double Across(double along) => right ? along : length - along;
        double HeightAt(double s) => Math.Max(0, Math.Min(body.UndersideAt(s, outer.At(s)), body.UndersideAt(s, inner.At(s))));
        Point2[] bent = Bent(section, isFar);

        Point2[] top = [.. stations.Zip(lengths, (s, l) => new Point2(Across(l), HeightAt(s)))];
        var lines = new List<CutLine> { new(CutLayer.Cut, Plain([new(0, 0), new(length, 0), .. right ? top.Reverse() : top])) };
        int slots = BendRule.Slots(bent, body.Stock.WallThickness, body.Stock.Slot, body.Stock.Versine);
        for (int i = 0; i < slots; i++)
        {
            double along = length * (i + 0.5) / slots, s = StationAt(stations, lengths, along);
            lines.Add(new(CutLayer.Score, [new(Across(along), 0), new(Across(along), HeightAt(s))], IsClosed: false));
        }

        foreach (double s in RibParts.Transverse(plan, section))
        {
            // Where the rib meets the inner face: an edge that leans against the ribs, as of an island, carries its outer face past that.
            double middle = FootOf(bent, lengths, plan.ToLayout(s, inner.At(s)));
            foreach (double side in (double[])[-0.5, 0.5])
            {
                // As far apart as the sheet is thick on the strip itself, which on a curve is longer or shorter than the track.
                double along = Math.Clamp(middle + (side * body.Stock.Thickness), 0, length);
                lines.Add(new(CutLayer.Mark, [new(Across(along), 0), new(Across(along), HeightAt(StationAt(stations, lengths, along)))], IsClosed: false));
            }
        }

        string name = isFar ? plan.Body.FarCopingBack is null ? "back wall" : "second front wall" : "front wall";
        string face = !isFar ? WallNames.FrontOf(1) : plan.Body.FarCopingBack is null ? WallNames.Back : WallNames.FrontOf(2);
        var outside = FacingScores.Of(plan, section, face, lines[0].Points, length);
        return new(Invariant($"{section.Number} {name}"), StockKind.Strip, lines)
        {
            Outside = outside,
            Words = [new(Invariant($"{section.Number}  {name}"), new(2, 0.8), 2)],
            Note = Note(isFar, slots, length / slots) + (outside.Count == 0 ? "" : "; its outer face is scored first, from the sheet that ends in outside"),
        };
    }

    private string Note(bool isFar, int slots, double pitch)
    {
        string bend = slots == 0 ? "bends as it is"
            : Invariant($"{slots} relief slots of {body.Stock.Slot:0.##} mm, two thirds deep, every {pitch:0.0} mm");
        return "inner face up; " + (isFar && plan.Bank is not null ? "the bank is laid against it, of plaster or foam; " : "")
            + (plan.Spec.Facing is { ProfileDepth: > 0 } ? "upright where plinth or corbelled courses stand out farthest, which are not cut; " : "")
            + string.Concat(plan.Fittings.Where(r => r.Places.Any(p => p.IsFar == isFar && p.Parts.Count > 0))
                .Select(r => $"upright where {r.Plural} stand out farthest, which are not cut; "))
            + bend;
    }

    // How far along a line the place of it is that is nearest to a point, mm.
    private static double FootOf(Point2[] line, double[] lengths, Point2 p)
    {
        double best = double.PositiveInfinity, found = 0;
        for (int i = 0; i + 1 < line.Length; i++)
        {
            var d = line[i + 1] - line[i];
            double share = d.Length > 0 ? Math.Clamp(Point2.Dot(p - line[i], d) / Point2.Dot(d, d), 0, 1) : 0, off = (p - line[i] - (d * share)).Length;
            (best, found) = off < best ? (off, lengths[i] + (share * d.Length)) : (best, found);
        }

        return found;
    }

    private static double StationAt(double[] stations, double[] lengths, double along)
    {
        int next = Math.Clamp(Array.FindIndex(lengths, l => l >= along), 1, lengths.Length - 1);
        return stations[next - 1] + ((stations[next] - stations[next - 1]) * (along - lengths[next - 1]) / (lengths[next] - lengths[next - 1]));
    }

    /// <summary>A ring without points that lie on one another, as at the foot of a ramp that runs down to the board.</summary>
    internal static IReadOnlyList<Point2> Plain(IEnumerable<Point2> ring)
    {
        var kept = new List<Point2>();
        foreach (var p in ring)
        {
            if (kept.Count == 0 || (p - kept[^1]).Length > Nil)
            {
                kept.Add(p);
            }
        }

        while (kept.Count > 1 && (kept[0] - kept[^1]).Length <= Nil)
        {
            kept.RemoveAt(kept.Count - 1);
        }

        return kept;
    }

    // No knife and no laser knows such a length, mm.
    private const double Nil = Tolerances.SameLength;
}
