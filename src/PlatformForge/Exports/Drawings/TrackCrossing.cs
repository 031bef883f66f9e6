using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Track;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

/// <summary>Where another track crosses a cross-section.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Reach">Its middle, from that of the faced track to the platform's side, mm.</param>
/// <param name="Cosine">Cosine of the angle between both tracks there.</param>
internal sealed record TrackCrossing(string Name, double Reach, double Cosine)
{
    // A track at more than this to the faced one (60 degrees) is none that runs along it.
    private const double LeastCosine = 0.5;

    private const double Closeness = 1e-6; // mm
    private const int MostRounds = 20;

    /// <summary>The place where a ride line crosses the square to a plan's chart at a chainage in mm; null where it does not.</summary>
    public static TrackCrossing? At(Centreline ride, PlatformPlan plan, double chainage)
    {
        var frame = plan.Chart.At(chainage);
        double u = ride.Locate(frame.Position).Chainage;
        for (int round = 0; round < MostRounds; round++)
        {
            var at = ride.At(u);
            double cosine = Point2.Dot(at.Tangent, frame.Tangent), along = Point2.Dot(at.Position - frame.Position, frame.Tangent);
            if (Math.Abs(cosine) < LeastCosine)
            {
                return null;
            }

            if (Math.Abs(along) < Closeness)
            {
                return u < 0 || u > ride.Length ? null : new(ride.Name, (int)plan.Side * Point2.Cross(frame.Tangent, at.Position - frame.Position), Math.Abs(cosine));
            }

            u -= along / cosine;
        }

        return null;
    }

    /// <summary>Draws its rails and its middle with its name.</summary>
    /// <param name="sheet">Where to draw.</param>
    /// <param name="of">From reach and height to the sheet.</param>
    /// <param name="gauge">Between the running edges, mm.</param>
    /// <param name="railTop">Height of the rails, mm.</param>
    /// <param name="upTo">Height to which its middle is drawn, mm.</param>
    public void DrawOn(Sheet sheet, Func<double, double, Point2> of, double gauge, double railTop, double upTo)
    {
        foreach (double rail in (double[])[-gauge / 2 / Cosine, gauge / 2 / Cosine])
        {
            sheet.Line(of(Reach + rail, railTop * 0.7), of(Reach + rail, railTop), new(0.5, HouseStyle.Hair));
        }

        sheet.Line(of(Reach, 0), of(Reach, upTo), HouseStyle.Centre with { Colour = HouseStyle.Accent });
        var top = of(Reach, upTo);
        sheet.Text(Invariant($"middle of track '{Name}'"), top + new Point2(1, 1), HouseStyle.Small with { Colour = HouseStyle.Accent });
    }
}
