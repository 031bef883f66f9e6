using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using static System.FormattableString;

namespace PlatformForge.Exports.Surveys;

/// <summary>The line in plan, turned so that its ends lie level, with the readings beside it.</summary>
internal sealed class SurveyPlan
{
    private const double DrawnMiss = 7; // mm of paper for the largest miss that is not an outlier
    private const double Rim = 9;
    private const int MostReadings = 400;
    private const double LongestMiss = 14;

    private readonly SurveyedTrack track;
    private readonly Point2 across, origin, corner;
    private readonly double left, top, width, height;

    public SurveyPlan(SurveyedTrack track, double left, double top, double width, double height)
    {
        (this.track, this.left, this.top, this.width, this.height) = (track, left, top, width, height);
        Point2 first = track.Line.At(0).Position, last = track.Line.At(track.Line.Length).Position;
        double turn = Math.Atan2(last.Y - first.Y, last.X - first.X);
        (across, origin) = (Point2.FromAngle(turn), first);
        var points = Along().Select(Turned).ToArray();
        double x0 = points.Min(p => p.X), x1 = points.Max(p => p.X), y0 = points.Min(p => p.Y), y1 = points.Max(p => p.Y);
        Scale = Math.Min((width - (2 * Rim)) / Math.Max(1, x1 - x0), (height - (2 * Rim)) / Math.Max(1, y1 - y0));
        corner = new((x0 + x1) / 2, (y0 + y1) / 2);
        double most = track.Residuals.Where(r => !r.IsOutlier).Select(r => Math.Abs(r.Miss)).DefaultIfEmpty(0).Max();
        Exaggeration = Nice(DrawnMiss / (Scale * Math.Max(most, track.RulerError / 10)));
    }

    /// <summary>Mm of paper to a mm of the model.</summary>
    public double Scale { get; }

    /// <summary>How many times too far from the line the readings are drawn.</summary>
    public int Exaggeration { get; }

    public void DrawOn(Sheet sheet)
    {
        sheet.Box(left, top, width, height, null, HouseStyle.Hairline);
        var labels = new Labels(sheet);
        sheet.Lines(Along().Select(Place), new(0.5, HouseStyle.Ink));
        int every = Math.Max(1, track.Residuals.Count / MostReadings);
        for (int i = 0; i < track.Residuals.Count; i++)
        {
            var r = track.Residuals[i];
            if (i % every == 0 || r.IsOutlier)
            {
                Reading(sheet, labels, r);
            }
        }

        for (int i = 0; i < track.Elements.Count; i++)
        {
            Joint(sheet, track.Elements[i].From);
            var at = track.Line.At((track.Elements[i].From + track.Elements[i].To) / 2);
            var side = Sheetward(at.Tangent.Left);
            double[] far = [5.5, -7.5, 10, -12];
            labels.PutOver(Name(track.Elements[i]), HouseStyle.Small, Patch, far.Select(f => (Place(at.Position) + (side * f), TextAnchor.Middle, 0.0)));
        }

        Joint(sheet, track.Line.Length);
        foreach (var kink in track.Line.Kinks)
        {
            var at = Place(track.Line.At(kink.Chainage).Position);
            sheet.Circle(at, 1.6, null, new(0.4, HouseStyle.Accent));
            labels.PutOver(Invariant($"kink {Math.Abs(kink.Turn) * 180 / Math.PI:0.0}°"), HouseStyle.AccentLabel, Patch, Around(at, -4, 6, -8, 10));
        }
    }

    internal static string Name(FittedElement e) => e.Kind switch
    {
        FittedKind.Straight => Invariant($"straight {e.To - e.From:0}"),
        FittedKind.Curve => Invariant($"R {1 / Math.Abs(e.StartCurvature):0} {(e.StartCurvature > 0 ? "left" : "right")}"),
        _ => Invariant($"transition {e.To - e.From:0}"),
    };

    private void Reading(Sheet sheet, Labels labels, ReadingResidual r)
    {
        var frame = track.Line.At(r.Chainage);
        double drawn = Math.Clamp(r.Miss * Exaggeration * Scale, -LongestMiss, LongestMiss);
        Point2 foot = Place(frame.Position), head = foot + (Sheetward(frame.Tangent.Left) * drawn);
        if (r.IsOutlier)
        {
            sheet.Line(foot, head, new(0.3, HouseStyle.Accent, 1.6, 0.8));
            sheet.Circle(head, 1.3, new(HouseStyle.Accent));
            labels.PutOver(Invariant($"{r.Reading.Whereabouts}: {Figures.Mm(Math.Abs(r.Miss))} off"), HouseStyle.AccentLabel, Patch,
                Around(head, 4.4, -2.6, 8, -6));
            return;
        }

        sheet.Line(foot, head, new(0.18, HouseStyle.Swept));
        sheet.Circle(head, 0.75, new(HouseStyle.Swept));
    }

    private static Fill Patch => new(HouseStyle.Paper, 0.85);

    private static IEnumerable<(Point2 At, TextAnchor Anchor, double Angle)> Around(Point2 at, params double[] ups) =>
        ups.Select(up => (at + new Point2(0, up), TextAnchor.Middle, 0.0));

    private void Joint(Sheet sheet, double chainage)
    {
        var frame = track.Line.At(chainage);
        Point2 at = Place(frame.Position), tick = Sheetward(frame.Tangent.Left) * 2.4;
        sheet.Line(at - tick, at + tick, HouseStyle.Thin);
    }

    private IEnumerable<Point2> Along()
    {
        int steps = (int)Math.Clamp(track.Line.Length / 4, 50, 2000);
        return Enumerable.Range(0, steps + 1).Select(i => track.Line.At(track.Line.Length * i / steps).Position);
    }

    private Point2 Turned(Point2 p) => new(Point2.Dot(p - origin, across), Point2.Cross(across, p - origin));

    private Point2 Place(Point2 p)
    {
        var turned = Turned(p) - corner;
        return new(left + (width / 2) + (turned.X * Scale), top + (height / 2) - (turned.Y * Scale));
    }

    // A unit direction of the layout as it shows on the sheet, whose y runs down.
    private Point2 Sheetward(Point2 direction) => new(Point2.Dot(direction, across), -Point2.Cross(across, direction));

    private static int Nice(double factor)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(1, factor)))), lead = factor / power;
        return (int)Math.Max(1, power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1));
    }
}
