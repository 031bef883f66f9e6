using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>Where another track crosses a cross-section.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Reach">Its middle, from that of the faced track to the platform's side, mm.</param>
/// <param name="Cosine">Cosine of the angle between both tracks there.</param>
internal sealed record TrackCrossing(string Name, double Reach, double Cosine)
{
    // A track at more than this to the faced one (60 degrees) is none that runs along it.
    private const double LeastCosine = 0.5;

    private const double Closeness = Tolerances.SameLength;
    private const int MostRounds = 20;

    // mm: nearer than this to the faced track it runs on the same rails.
    private const double Shared = 0.5;

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
                return u < 0 || u > ride.Length ? null : new(ride.Name, plan.Side.Reach(Point2.Cross(frame.Tangent, at.Position - frame.Position)),
                    Math.Abs(cosine));
            }

            u -= along / cosine;
        }

        return null;
    }

    /// <summary>Draws ballast, sleeper and rails, and its middle with its name.</summary>
    /// <param name="sheet">Where to draw.</param>
    /// <param name="of">From reach and height to the sheet.</param>
    /// <param name="dossier">Gauge, scale and height of the rails.</param>
    /// <param name="upTo">Height to which its middle is drawn, mm.</param>
    public void DrawOn(Sheet sheet, Func<double, double, Point2> of, Dossier dossier, double upTo)
    {
        if (Math.Abs(Reach) < Shared)
        {
            Middle(sheet, of, upTo); // the same rails still
            return;
        }

        double ratio = dossier.Scale.Ratio, half = 2590 / ratio / 2 / Cosine,
            foot = Math.Max(dossier.RailTopOf(Name) - (145 / ratio), dossier.RailTopOf(Name) / 2), bed = foot * 0.8, head = dossier.RailHead;
        sheet.Area([of(Reach - half, bed), of(Reach + half, bed), of(Reach + half, foot), of(Reach - half, foot)], new(HouseStyle.Hair, 0.6), HouseStyle.Fine);
        foreach (int side in (int[])[-1, 1])
        {
            double inner = Reach + (side * dossier.Gauge / 2 / Cosine), outer = inner + (side * head / Cosine);
            sheet.Area([of(inner, foot), of(outer, foot), of(outer, dossier.RailTopOf(Name)), of(inner, dossier.RailTopOf(Name))], new(HouseStyle.Hair),
                HouseStyle.Fine);
        }

        Middle(sheet, of, upTo);
    }

    private void Middle(Sheet sheet, Func<double, double, Point2> of, double upTo)
    {
        sheet.Line(of(Reach, 0), of(Reach, upTo), HouseStyle.Centre with { Colour = HouseStyle.Accent });
        sheet.Text(Invariant($"track '{Name}'"), of(Reach, upTo) + new Point2(0, -1), HouseStyle.Small with { Colour = HouseStyle.Accent }, TextAnchor.Middle);
    }
}
