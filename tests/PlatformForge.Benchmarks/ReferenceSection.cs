using PlatformForge.Geometry;
using PlatformForge.Solids;

namespace PlatformForge.Benchmarks;

/// <summary>
/// The benchmark solids B1 (plain) and B2 (brick) as blocks: a 300 mm section of a curved platform, centreline radius 600 mm,
/// with a ramp, hollow, ribs, post holes, sockets, dowel bores and, for B2, brick joints in the front wall. The same operands as
/// those given to the general kernels that it is measured against: same facets, same diagonals of the ramp's facets. Their
/// volumes, on which two general kernels agree: B1 53,198.31 mm³, B2 53,121.55 mm³, genus 21 for both.
/// </summary>
public static class ReferenceSection
{
    public const double PlainVolume = 53_198.31, BrickVolume = 53_121.55;
    public const int Genus = 21;

    /// <summary>Angle between one section of B3 and the next, radians.</summary>
    public const double Angle = 0.5;

    private const double CentrelineRadius = 600, RampAngle = 204.0 / 600, Front = 616, Back = 676, Wall = 619;
    private const double WallThickness = 1.5, DeckThickness = 1.5, ChordError = 0.01, Floor = -5, Sky = 40;

    public static IReadOnlyList<ColumnBlock> Blocks(bool brick, double turn = 0)
    {
        var blocks = new List<ColumnBlock>(brick ? 2500 : 700);
        double[] stations = Stations();
        Body(blocks, stations, turn);
        if (brick)
        {
            Bricks(blocks, stations, turn);
        }

        Hollow(blocks, stations, turn);
        Stiffen(blocks, stations, turn);
        for (int k = 0; k + 1 < stations.Length; k++)
        {
            // What the ribs and ends reach over the deck is taken off again.
            Facet(blocks, stations, k, turn, 600, 700, Top, Sky, BlockAction.Remove, fromInner: true, planeInner: Front, planeOuter: Back);
        }

        Holes(blocks, turn);
        Dowels(blocks, turn);
        return blocks;
    }

    private static double Top(double t) => t <= RampAngle ? 12 : 12 - (10 * (t - RampAngle) / (Angle - RampAngle));

    private static double Under(double t) => Top(t) - DeckThickness;

    private static double[] Stations()
    {
        double step = 2 * Math.Acos(1 - (ChordError / Back));
        int level = (int)Math.Ceiling(RampAngle / step), ramp = (int)Math.Ceiling((Angle - RampAngle) / step);
        return [.. Enumerable.Range(0, level).Select(i => RampAngle * i / level),
            .. Enumerable.Range(0, ramp + 1).Select(i => RampAngle + ((Angle - RampAngle) * i / ramp))];
    }

    private static Point2 Polar(double r, double t) => Point2.FromAngle(t) * r;

    private static void Body(List<ColumnBlock> blocks, double[] stations, double turn)
    {
        for (int k = 0; k + 1 < stations.Length; k++)
        {
            Facet(blocks, stations, k, turn, Front, Back, Top, 0, BlockAction.Add, fromInner: true);
        }

        for (int k = 0; k + 1 < stations.Length; k++)
        {
            Facet(blocks, stations, k, turn, Front, Wall, Under, Floor, BlockAction.Remove, fromInner: false);
        }
    }

    /// <summary>Joints 0.15 mm deep and wide, up to 0.05 mm under the coping.</summary>
    private static void Bricks(List<ColumnBlock> blocks, double[] stations, double turn)
    {
        const double depth = 0.15, half = 0.075, clipInner = 617, clipOuter = 620;
        for (int k = 0; k + 1 < stations.Length; k++)
        {
            for (int bed = 1; bed <= 10; bed++)
            {
                Quad(blocks, stations[k], stations[k + 1], turn, 618, Wall + depth, new(bed - half), new(bed + half), BlockAction.Remove);
            }
        }

        for (int course = 0; course <= 10; course++)
        {
            for (int j = 0; ; j++)
            {
                double u = (3 * j) + (course % 2 == 1 ? 1.5 : 0), t = u / Wall;
                if (u > (Angle * Wall) - 0.5)
                {
                    break;
                }

                if (u >= 0.5 && course <= Under(t) + 0.2)
                {
                    Box(blocks, t + turn, 618, Wall + depth, -half, half, course == 0 ? -1 : course, course + 1, BlockAction.Remove);
                }
            }
        }

        for (int k = 0; k + 1 < stations.Length; k++)
        {
            FacetUpwards(blocks, stations, k, turn, clipInner, clipOuter, t => Under(t) - 0.05, BlockAction.Add, fromInner: false);
        }

        for (int k = 0; k + 1 < stations.Length; k++)
        {
            Facet(blocks, stations, k, turn, Front, Wall, Under, Floor, BlockAction.Remove, fromInner: false);
        }
    }

    private static void Hollow(List<ColumnBlock> blocks, double[] stations, double turn)
    {
        for (int k = 0; k + 1 < stations.Length; k++)
        {
            Facet(blocks, stations, k, turn, Wall + WallThickness, Back - WallThickness, Under, Floor, BlockAction.Remove, fromInner: true);
        }
    }

    private static void Stiffen(List<ColumnBlock> blocks, double[] stations, double turn)
    {
        // The ribs end inside the walls, half way through.
        const double inner = Wall + (WallThickness / 2), outer = Back - (WallThickness / 2), middle = (Front + Back) / 2;
        for (int k = 0; k + 1 < stations.Length; k++)
        {
            Quad(blocks, stations[k], stations[k + 1], turn, middle - 0.75, middle + 0.75, new(0), new(13), BlockAction.Add);
        }

        for (int k = 1; k <= 14; k++)
        {
            Box(blocks, (20 * k / CentrelineRadius) + turn, inner, outer, -0.75, 0.75, 0, 13, BlockAction.Add);
        }

        Box(blocks, turn, inner, outer, 0, 2, 0, 14, BlockAction.Add);
        Box(blocks, Angle + turn, inner, outer, -2, 0, 0, 14, BlockAction.Add);
    }

    private static void Holes(List<ColumnBlock> blocks, double turn)
    {
        for (int k = 1; k <= 19; k++)
        {
            double t = 15 * k / CentrelineRadius;
            var ring = new Point2[32];
            for (int i = 0; i < ring.Length; i++)
            {
                ring[i] = Local(t + turn, Back - 3, Point2.FromAngle(2 * Math.PI * i / ring.Length) * 0.6);
            }

            blocks.Add(new(ring, new(Under(t) - 0.5), new(Top(t) + 1), BlockAction.Remove, Paint.Deck));
        }

        foreach (double s in new[] { 10.0, 290 })
        {
            double t = s / CentrelineRadius;
            Box(blocks, t + turn, 636 - 0.8, 636 + 0.8, -1.5, 1.5, Under(t) - 0.5, Top(t) + 1, BlockAction.Remove);
        }
    }

    private static void Dowels(List<ColumnBlock> blocks, double turn)
    {
        foreach (double r in new[] { 631.0, 661 })
        {
            Dowel(blocks, turn, r, 5.25, 1, -1, 6);
            Dowel(blocks, Angle + turn, r, 1, 0.5, -6, 1);
        }
    }

    /// <summary>A lying bore of 32 sides: sixteen strips with a sloping floor and roof.</summary>
    private static void Dowel(List<ColumnBlock> blocks, double angle, double r, double z, double radius, double from, double to)
    {
        for (int i = -8; i < 8; i++)
        {
            double w0 = Math.PI * i / 16, w1 = Math.PI * (i + 1) / 16;
            double x0 = i == -8 ? -radius : radius * Math.Sin(w0), x1 = i == 7 ? radius : radius * Math.Sin(w1);
            double h0 = i == -8 ? 0 : radius * Math.Cos(w0), h1 = i == 7 ? 0 : radius * Math.Cos(w1);
            Point2[] ring = [Local(angle, r, new(x0, from)), Local(angle, r, new(x1, from)), Local(angle, r, new(x1, to)), Local(angle, r, new(x0, to))];
            Point3 At(int corner, double height) => new(ring[corner].X, ring[corner].Y, height);
            var lower = HeightPlane.Through(At(0, z - h0), At(1, z - h1), At(3, z - h0));
            var upper = HeightPlane.Through(At(0, z + h0), At(1, z + h1), At(3, z + h0));
            blocks.Add(new(ring, lower, upper, BlockAction.Remove, Paint.Wall));
        }
    }

    /// <summary>A point given by radial and tangential distance from the place at radius r.</summary>
    private static Point2 Local(double angle, double r, Point2 offset)
    {
        var radial = Point2.FromAngle(angle);
        return (radial * (r + offset.X)) + (radial.Left * offset.Y);
    }

    private static void Box(List<ColumnBlock> blocks, double angle, double r0, double r1, double u0, double u1, double z0, double z1, BlockAction action) =>
        blocks.Add(new([Local(angle, 0, new(r0, u0)), Local(angle, 0, new(r1, u0)), Local(angle, 0, new(r1, u1)), Local(angle, 0, new(r0, u1))], new(z0),
            new(z1), action, Paint.Wall));

    private static void Quad(List<ColumnBlock> blocks, double t0, double t1, double turn, double r0, double r1, HeightPlane lower, HeightPlane upper,
        BlockAction action) =>
        blocks.Add(new([Polar(r0, t0 + turn), Polar(r1, t0 + turn), Polar(r1, t1 + turn), Polar(r0, t1 + turn)], lower, upper, action, Paint.Deck));

    /// <summary>A facet between a curved surface and a level one.</summary>
    private static void Facet(List<ColumnBlock> blocks, double[] stations, int k, double turn, double r0, double r1, Func<double, double> curved, double flat,
        BlockAction action, bool fromInner, double planeInner = 0, double planeOuter = 0)
    {
        bool over = flat > 20;
        _ = (planeInner, planeOuter);
        if (over)
        {
            (r0, r1) = (planeInner, planeOuter);
        }

        double t0 = stations[k], t1 = stations[k + 1];
        if (curved(t0) == curved(t1))
        {
            HeightPlane a = new(curved(t0)), b = new(flat);
            Quad(blocks, t0, t1, turn, r0, r1, over ? a : b, over ? b : a, action);
            return;
        }

        foreach (var (ring, plane) in Triangles(t0, t1, turn, r0, r1, curved, fromInner))
        {
            blocks.Add(new(ring, over ? plane : new(flat), over ? new(flat) : plane, action, Paint.Deck));
        }
    }

    /// <summary>All that is over a curved surface; what this leaves over the top is taken off later.</summary>
    private static void FacetUpwards(List<ColumnBlock> blocks, double[] stations, int k, double turn, double r0, double r1, Func<double, double> lower,
        BlockAction action, bool fromInner)
    {
        double t0 = stations[k], t1 = stations[k + 1];
        if (lower(t0) == lower(t1))
        {
            Quad(blocks, t0, t1, turn, r0, r1, new(lower(t0)), new(Sky), action);
            return;
        }

        foreach (var (ring, plane) in Triangles(t0, t1, turn, r0, r1, lower, fromInner))
        {
            blocks.Add(new(ring, plane, new(Sky), action, Paint.Deck));
        }
    }

    /// <summary>The two triangles of a twisted facet; the diagonal starts at the inner or at the outer radius of the first station.</summary>
    private static IEnumerable<(Point2[] Ring, HeightPlane Plane)> Triangles(double t0, double t1, double turn, double r0, double r1,
        Func<double, double> height, bool fromInner)
    {
        Point3 P(double r, double t)
        {
            var p = Polar(r, t + turn);
            return new(p.X, p.Y, height(t));
        }

        Point3 a = P(r0, t0), b = P(r1, t0), c = P(r1, t1), d = P(r0, t1);
        (Point3 A, Point3 B, Point3 C)[] corners = fromInner ? [(a, b, c), (a, c, d)] : [(a, b, d), (b, c, d)];
        foreach (var (p, q, s) in corners)
        {
            yield return ([new(p.X, p.Y), new(q.X, q.Y), new(s.X, s.Y)], HeightPlane.Through(p, q, s));
        }
    }
}
