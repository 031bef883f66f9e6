using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Sections;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Track;

namespace PlatformForge.Exports.Workshop;

/// <summary>What is seen of a platform, and so is painted, from the triangles of its sections: mm² for each <see cref="Paint"/>.</summary>
internal static class SurfaceAreas
{
    // Up to here a surface counts as part of the top, mm below it: chamfers and a line's groove do, the floor of a socket does not.
    private const double TopDepth = 1;

    // A surface that leans more than this is no top: the cosine of 60 degrees.
    private const double Level = 0.5;

    // An upright surface so near to the outline, mm, and turned as it is, is an outer one; reliefs lie within.
    private const double OutlineNear = 1;
    private const double SameWay = 0.9;
    private const double Upright = 0.3;

    // What looks down more than this, the cosine of some 25 degrees, is an underside.
    private const double Underside = 0.9;

    /// <summary>Areas by paint, in the order of <see cref="Paint"/>.</summary>
    public static double[] Of(SectionSet set)
    {
        double[] areas = new double[Enum.GetValues<Paint>().Length];
        Paint? trestle = set.Plan.Spec.Trestle is { } spec ? TrestleBlocks.PaintOf(spec) : null;
        foreach (var section in set.Sections)
        {
            var mesh = section.Solid.Mesh;
            var plane = set.Plan.Surface.At((section.From + section.To) / 2);
            var outline = Outline(set.Plan, section.From, section.To);
            for (int i = 0; i < mesh.TriangleCount; i++)
            {
                Point3 a = mesh.Vertices[mesh.Triangles[3 * i]], b = mesh.Vertices[mesh.Triangles[(3 * i) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * i) + 2]];
                var normal = Point3.Cross(b - a, c - a);
                double twice = normal.Length;
                bool bent = twice > 0 && trestle is { } paint && mesh.Paints.Length > 0 && mesh.Paints[i] == (byte)paint
                    && IsOfBent((a + b + c) * (1.0 / 3), normal * (1 / twice), plane, set.Plan.Spec.Deck.Thickness);
                if (bent || (twice > 0 && (IsBank(mesh, i, normal) || IsSeen((a + b + c) * (1.0 / 3), normal * (1 / twice), plane, outline))))
                {
                    areas[mesh.Paints.Length > 0 ? mesh.Paints[i] : 0] += twice / 2;
                }
            }
        }

        // What is printed in its own colour wants no paint: the floors of its rebate are covered.
        foreach (var name in new[] { LineMake.White, LineMake.Tactile })
        {
            LineBand[] own = [.. set.Plan.Body.Lines.Where(l => l.Made.Name == name)];
            if (own.Length > 0 && Array.TrueForAll(own, l => l.Made.IsPrinted))
            {
                areas[(int)LineBlocks.PaintOf(own[0].Made)] = 0;
            }
        }

        return areas;
    }

    // The face of a bank, which no other upper side is turfed as.
    private static bool IsBank(Mesh mesh, int triangle, Point3 normal) => mesh.Paints.Length > 0 && (Paint)mesh.Paints[triangle] == Paint.Turf && normal.Z > 0;

    // Bents are painted all round, but for what they stand on and the undersides of caps.
    private static bool IsOfBent(Point3 middle, Point3 normal, HeightPlane top, double deck) =>
        top.At(new(middle.X, middle.Y)) - middle.Z > deck && normal.Z > -Underside;

    private static bool IsSeen(Point3 middle, Point3 normal, HeightPlane top, OuterSide[] outline)
    {
        Point2 p = new(middle.X, middle.Y), way = new(normal.X, normal.Y);
        double deep = top.At(p) - middle.Z;
        return normal.Z > Level ? deep < TopDepth : Math.Abs(normal.Z) < Upright && Array.Exists(outline, o => deep > o.Below && o.Faces(p, way));
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
                    { Below = below });
                }
            }
        }

        // Towards higher chainage the platform lies to the left of its front where it stands left of the track.
        // Walls are seen under their copings; what stands over them higher up is the side of a groove.
        double under = plan.Spec.Coping.Thickness;
        Along(body.WallFace, -inward, under);
        if (plan.Spec.Facing is { } facing)
        {
            // Walls between piers, and what stands out of both along a part of their height.
            foreach (double back in WallProfiles.Of(plan).Zones.Select(z => z.Out))
            {
                Along(plan.Panels(false).Shifted(-back), -inward, under);
                Along(plan.Panels(true).Shifted(back), inward, under);
            }
        }

        Along(body.CopingFront, -inward);
        Along(body.FarWallFace, inward, body.FarCopingBack is null ? double.NegativeInfinity : under);
        Along(body.Back, inward);
        foreach (var (s, ahead) in new[] { (body.Stations[0], -1), (body.Stations[^1], 1) })
        {
            if (s >= from && s <= to)
            {
                sides.Add(OuterSide.Of(plan.ToLayout(s, body.CopingFront.At(s)), plan.ToLayout(s, body.Back.At(s)), -ahead * inward));
            }
        }

        return [.. sides];
    }

    // A straight piece of the outline and the way that is out.
    private readonly record struct OuterSide(Point2 A, Point2 Along, double Length, Point2 Out)
    {
        /// <summary>How far under the top, mm, what belongs to it begins.</summary>
        public double Below { get; init; } = double.NegativeInfinity;

        public static OuterSide Of(Point2 a, Point2 b, double turn)
        {
            double length = (b - a).Length;
            var along = (b - a) * (1 / length);
            return new(a, along, length, along.Left * turn);
        }

        public bool Faces(Point2 p, Point2 way)
        {
            if (Point2.Dot(Out, way) < SameWay)
            {
                return false;
            }

            double at = Point2.Dot(p - A, Along);
            return Math.Abs(Point2.Dot(p - A, Out)) < OutlineNear && at > -OutlineNear && at < Length + OutlineNear;
        }
    }
}
