using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Trestles;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Track;

namespace PlatformForge.Exports.Workshop;

/// <summary>What is seen of a platform, and so is painted, from the triangles of its sections: mm² for each <see cref="Paint"/>.</summary>
internal static class SurfaceAreas
{
    // Up to here a surface counts as part of the top, mm below it: chamfers and a line's groove do, the floor of a socket does not.
    private const double TopDepth = 1;

    // A surface that leans more than this is no top: the cosine of 60 degrees.
    internal const double Level = 0.5;

    // An upright surface leans less, as a cosine.
    internal const double Upright = 0.3;

    // What looks down more than this, the cosine of some 25 degrees, is an underside.
    private const double Underside = 0.9;

    /// <summary>Areas by paint, in the order of <see cref="Paint"/>.</summary>
    public static double[] Of(SectionSet set)
    {
        double[] areas = new double[Enum.GetValues<Paint>().Length];
        foreach (var section in set.Sections)
        {
            AddSeen(set.Plan, section, areas);
            foreach (var (shown, area) in LedgeAreas.Of(set.Plan, section))
            {
                areas[(int)shown] += area;
            }
        }

        // Sheet is laid over what is left bare, in its own colours.
        areas[(int)Paint.Bare] = 0;

        foreach (var mesh in set.Lines.Pieces.Where(p => p.Made.Name == LineMake.Bank).Select(p => p.Solid.Mesh))
        {
            areas[(int)Paint.Turf] += TurfOf(mesh);
        }

        StripAreas.Add(set, areas);

        LeavePrinted(set.Plan, areas);
        return areas;
    }

    // Adds the triangles of a section that are seen.
    private static void AddSeen(PlatformPlan plan, PlatformSection section, double[] areas)
    {
        bool hasHeads = plan.Fittings.Any(r => r.Head is not null);
        byte[] standing = [.. plan.Fittings.Where(r => r.Painting is not null).Select(r => (byte)FittingBlocks.PaintOf(r.Face))];
        Paint? trestle = plan.Spec.Trestle is { } spec ? TrestleBlocks.PaintOf(spec) : null;
        var mesh = section.Solid.Mesh;
        HeightPlane[] planes = [.. plan.Surface.Breaks.Where(b => b > section.From && b < section.To).Append(section.To)
            .Select(b => plan.Surface.At(Math.BitDecrement(b)))];
        var outline = Outline(plan, section.From, section.To);
        OuterSide[] cuts = trestle is null ? [] : [.. Cuts(plan, section)];
        var covered = StripAreas.Covered(plan, section.From, section.To);
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * i]], b = mesh.Vertices[mesh.Triangles[(3 * i) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * i) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            double twice = normal.Length;
            if (twice <= 0)
            {
                continue;
            }

            var (middle, way) = ((a + b + c) * (1.0 / 3), normal * (1 / twice));
            bool bent = trestle is { } paint && mesh.Paints.Length > 0 && mesh.Paints[i] == (byte)paint
                && IsOfBent(middle, way, planes, plan.Spec.Deck.Thickness)
                && !cuts.Any(cut => cut.Share([a, b, c], new(middle.X, middle.Y), new(way.X, way.Y)) > 0);
            if (way.Z > Level && covered.Any(r => PlatformNeighbours.Inside(r, new(middle.X, middle.Y))))
            {
                continue;
            }

            bool whole = bent || IsBank(mesh, i, normal) || IsStanding(mesh, i, way, standing) || (hasHeads && IsWeathering(middle, way, planes));
            areas[mesh.Paints.Length > 0 ? mesh.Paints[i] : 0] += twice / 2 * (whole ? 1 : Seen([a, b, c], way, planes, outline));
        }
    }

    // What is printed in its own colour wants no paint: the floors of its rebate are covered.
    private static void LeavePrinted(PlatformPlan plan, double[] areas)
    {
        foreach (var name in new[] { LineMake.White, LineMake.Tactile })
        {
            LineBand[] own = [.. plan.Body.Lines.Where(l => l.Made.Name == name)];
            if (own.Length > 0 && Array.TrueForAll(own, l => l.Made.IsPrinted))
            {
                areas[(int)LineBlocks.PaintOf(own[0].Made, plan.Spec)] = 0;
            }
        }
    }

    /// <summary>The face of a bank that is a print of its own, mm²: what of it looks up.</summary>
    private static double TurfOf(Mesh mesh)
    {
        double area = 0;
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * i]], b = mesh.Vertices[mesh.Triangles[(3 * i) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * i) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            area += normal.Z > OuterSide.Hair * normal.Length ? normal.Length / 2 : 0;
        }

        return area;
    }

    // The face of a bank, which no other upper side is turfed as.
    private static bool IsBank(Mesh mesh, int triangle, Point3 normal) => mesh.Paints.Length > 0 && (Paint)mesh.Paints[triangle] == Paint.Turf && normal.Z > 0;

    // What stands before walls is painted all round, but for what it stands on and its undersides.
    private static bool IsStanding(Mesh mesh, int triangle, Point3 way, byte[] standing) =>
        mesh.Paints.Length > 0 && standing.Contains(mesh.Paints[triangle]) && way.Z > -Underside;

    // The slope of a front's head, which lies between what is level and what is upright, under the deck.
    private static bool IsWeathering(Point3 middle, Point3 way, HeightPlane[] planes) =>
        way.Z is > Steepest and < Flattest && planes.Min(t => t.At(new(middle.X, middle.Y))) - middle.Z > TopDepth;

    // Cosines of slopes a little steeper than 80 degrees, which heads have at most, and flatter than 45.
    private const double Steepest = 0.15, Flattest = 0.75;

    // Bents are painted all round, but for what they stand on and the undersides of caps.
    private static bool IsOfBent(Point3 middle, Point3 normal, HeightPlane[] top, double deck) =>
        top.Min(t => t.At(new(middle.X, middle.Y))) - middle.Z > deck && normal.Z > -Underside;

    // How much of a triangle is seen, as a share.
    private static double Seen(Point3[] corners, Point3 normal, HeightPlane[] planes, OuterSide[] outline)
    {
        var middle = (corners[0] + corners[1] + corners[2]) * (1.0 / 3);
        Point2 p = new(middle.X, middle.Y), way = new(normal.X, normal.Y);

        // Ramps fall away from the level deck, so the lowest plane is the walking surface.
        double deep = planes.Min(t => t.At(p)) - middle.Z;
        if (normal.Z > Level || Math.Abs(normal.Z) >= Upright)
        {
            return normal.Z > Level && deep < TopDepth ? 1 : 0;
        }

        double? most = null;
        foreach (ref readonly var side in outline.AsSpan())
        {
            if (deep > side.Below)
            {
                double share = side.Share(corners, p, way);
                most = !(share <= most) ? share : most;
            }
        }

        return most ?? 0;
    }

    // The outer sides in plan from one chainage to another: wall's foot, coping edge, back, and the platform's own ends.
    private static OuterSide[] Outline(PlatformPlan plan, double from, double to)
    {
        var body = plan.Body;
        var sides = new List<OuterSide>();
        double inward = plan.Side.Outward(1);
        void Along(PlanLine line, double turn, double below = double.NegativeInfinity)
        {
            for (int i = 0; i + 1 < line.Stations.Length; i++)
            {
                if (line.Stations[i + 1] > from && line.Stations[i] < to)
                {
                    sides.Add(OuterSide.Of(plan.ToLayout(line.Stations[i], line.Reach[i]), plan.ToLayout(line.Stations[i + 1], line.Reach[i + 1]),
                        turn) with
                    { Below = below, Near = OuterSide.OutlineNear + (plan.Spec.Facing?.ProfileDepth ?? 0) });
                }
            }
        }

        // Towards higher chainage the platform lies to the left of its front where it stands left of the track.
        // Walls are seen under their copings; what stands over them higher up is the side of a groove.
        double under = plan.Spec.Coping.Thickness;
        Along(body.WallFace, -inward, under);
        if (plan.Spec.Facing is { } facing)
        {
            // Walls between fronts, and what stands out of both along a part of their height.
            foreach (double back in WallProfiles.Of(plan).Zones.Select(z => z.Out))
            {
                Along(plan.Panels(false).Shifted(-back), -inward, under);
                Along(plan.Panels(true).Shifted(back), inward, under);
            }
        }

        Along(body.CopingFront, -inward);
        Along(body.FarWallFace, inward, body.FarCopingBack is null ? double.NegativeInfinity : under);
        Along(body.Back, inward);
        sides.AddRange(Ends(plan, from, to));
        sides.AddRange(FrontSides(plan, from, to, under));
        return [.. sides];
    }

    // The platform's own ends between two chainages.
    private static IEnumerable<OuterSide> Ends(PlatformPlan plan, double from, double to)
    {
        var body = plan.Body;
        double inward = plan.Side.Outward(1);
        foreach (var (s, ahead) in new[] { (body.Stations[0], -1), (body.Stations[^1], 1) })
        {
            double over = plan.Spec.Coping.EndOverhang(ahead > 0);
            if (s >= from && s <= to)
            {
                yield return OuterSide.Of(plan.ToLayout(s, body.CopingFront.At(s)), plan.ToLayout(s, body.Back.At(s)), -ahead * inward) with
                { Near = OuterSide.OutlineNear + (plan.Spec.Facing?.EndsBack ?? 0) + over };
            }
        }
    }

    // The planes of cuts, where another section stands.
    private static IEnumerable<OuterSide> Cuts(PlatformPlan plan, PlatformSection section)
    {
        double inward = plan.Side.Outward(1);
        foreach (var (s, ahead) in new[] { (section.From, -1), (section.To, 1) }.Where(e => e.Item1 > plan.Stations[0] && e.Item1 < plan.Stations[^1]))
        {
            yield return OuterSide.Of(plan.ToLayout(s, plan.CopingFront.At(s)), plan.ToLayout(s, plan.Back.At(s)), -ahead * inward) with { Near = AtCut };
        }
    }

    // Sections are trimmed by less than this at a cut, mm.
    private const double AtCut = 0.3;

    // Both sides of each front that steps out, from it to the face of the panel beside it: bricks may stand out of them as far as joints are deep.
    private static IEnumerable<OuterSide> FrontSides(PlatformPlan plan, double from, double to, double under)
    {
        double inward = plan.Side.Outward(1);
        foreach (var fitting in plan.Fittings.Where(r => r.StepsOut).SelectMany(r => r.Places).Where(p => p.From < to && p.To > from))
        {
            var (front, panel) = (fitting.IsFar ? plan.Body.FarWallFace : plan.Body.WallFace, plan.Panels(fitting.IsFar));
            foreach (var (s, ahead) in new[] { (fitting.From, -1), (fitting.To, 1) })
            {
                double near = Math.Min(front.At(s), panel.At(s)), far = Math.Max(front.At(s), panel.At(s));
                yield return OuterSide.Of(plan.ToLayout(s, near), plan.ToLayout(s, far), -ahead * inward) with
                {
                    Below = under,
                    Near = plan.Spec.Facing!.FaceDepth(fitting.IsFar && !plan.Spec.IsIsland) + OuterSide.Hair,
                    Before = plan.Spec.Facing!.ProfileDepth + OuterSide.Hair,
                    EndsThere = true,
                };
            }
        }
    }
}
