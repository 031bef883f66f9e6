using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Meshing.Polygons;

namespace PlatformForge.Solids.Kernel.Meshing.Reliefs;

/// <summary>What a field that comes out behind its wall takes out, by Gauss's theorem over its mouth, its sides as they are meshed and where it comes
/// out.</summary>
/// <param name="places">Places of all vertices.</param>
/// <param name="field">The field.</param>
internal sealed class ThroughVolume(GrowingArray<Point3> places, ReliefOutline field)
{
    private readonly Point3 origin = places[field.Corners[0].Vertex];

    /// <summary>The volume, mm³.</summary>
    /// <param name="mouth">Flat pieces of the wall, each with the area of the mouth on it, mm².</param>
    public double Of(IEnumerable<(ReliefPiece Piece, double Area)> mouth) =>
        mouth.Sum(m => Flux(m.Piece, m.Area)) + Flux(field.Behind!, OutArea()) - Sides();

    // A third of a flat area by its distance from the origin.
    private double Flux(ReliefPiece piece, double area) => Point2.Dot(piece.Left - new Point2(origin.X, origin.Y), piece.Outward) * area / 3;

    // The area where it comes out, seen from behind: there the outline runs clockwise.
    private double OutArea()
    {
        double twice = 0;
        for (int i = 0; i < field.Corners.Count; i++)
        {
            twice -= Point2.Cross(Out(field.Corners[i]), Out(field.After(i)));
        }

        return twice / 2;
    }

    private Point2 Out(OutlineCorner corner)
    {
        var p = places[corner.Vertex + 1];
        return new(Point2.Dot(new Point2(p.X, p.Y) - field.Behind!.Left, field.Behind.Ahead), p.Z);
    }

    private double Sides()
    {
        double six = 0;
        for (int i = 0; i < field.Corners.Count; i++)
        {
            int a = field.Corners[i].Vertex, b = field.After(i).Vertex;
            six += Point3.Dot(From(a), Point3.Cross(From(b), From(b + 1))) + Point3.Dot(From(a), Point3.Cross(From(b + 1), From(a + 1)));
        }

        return six / 6;
    }

    private Point3 From(int vertex) => places[vertex] - origin;
}
