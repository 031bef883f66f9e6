using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Track.Surveys.Readings;

/// <summary>Chord and versine, exactly, on any line.</summary>
public static class VersineOfLine
{
    private const int MostRounds = 20;

    // The chord's ends are found to this, mm.
    private const double Settled = Tolerances.CentrelinePosition;

    /// <summary>
    /// The versine that a chord laid to a line shows: its ends on the line, its length given, the place measured square to its
    /// middle. Positive where the line bends to the left.
    /// </summary>
    /// <param name="line">The centreline.</param>
    /// <param name="chainage">Chainage of the place under the chord's middle, mm.</param>
    /// <param name="chord">Length of the chord, mm.</param>
    /// <param name="offset">Offset of the measured line from the centreline, mm.</param>
    public static double Of(Centreline line, double chainage, double chord, double offset = 0)
    {
        var place = line.PointAt(chainage, offset);
        double u = chainage - (chord / 2), w = chainage + (chord / 2);
        for (int round = 0; round < MostRounds; round++)
        {
            TrackFrame a = line.At(u), b = line.At(w);
            Point2 from = a.At(offset), to = b.At(offset), join = to - from, middle = (from + to) * 0.5;
            Point2 da = a.Tangent * (1 - (a.Curvature * offset)), db = b.Tangent * (1 - (b.Curvature * offset));

            // Two conditions: the chord has its length, and its middle lies square over the place.
            double f = Point2.Dot(join, join) - (chord * chord), g = Point2.Dot(place - middle, join);
            double fu = -2 * Point2.Dot(join, da), fw = 2 * Point2.Dot(join, db);
            double gu = (-0.5 * Point2.Dot(da, join)) - Point2.Dot(place - middle, da), gw = (-0.5 * Point2.Dot(db, join)) + Point2.Dot(place - middle, db);
            double determinant = (fu * gw) - (fw * gu);
            double du = ((-f * gw) + (g * fw)) / determinant, dw = ((-g * fu) + (f * gu)) / determinant;
            (u, w) = (u + du, w + dw);
            if (Math.Abs(du) + Math.Abs(dw) < Settled)
            {
                break;
            }
        }

        return HeightOver(line.PointAt(u, offset), line.PointAt(w, offset), place);
    }

    /// <summary>Height of a place over the chord between two points, positive on its right, where a left-hand curve lies.</summary>
    internal static double HeightOver(Point2 from, Point2 to, Point2 place) => -Point2.Cross(to - from, place - from) / (to - from).Length;
}
