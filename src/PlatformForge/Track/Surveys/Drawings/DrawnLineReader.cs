using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Tables;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>Takes one line out of a drawing and makes it into places on the track, in millimetres.</summary>
internal static class DrawnLineReader
{
    /// <summary>Places are taken along a drawn curve this far apart, mm, at least <see cref="FewestPlaces"/> of them; farther apart on
    /// long lines, so that each can be held against the line by itself, but never farther than <see cref="WidestSpacing"/>.</summary>
    public const double Spacing = 10, WidestSpacing = 40;

    private const int FewestPlaces = 24;

    private const int MostPlaces = 20_000;

    // A polyline that nowhere turns by more than this at a point is points placed along a curve, not straight pieces.
    private const double PlacedTurn = 20 * Math.PI / 180;

    public static IReadOnlyList<PlaceReading> Read(DrawingSpec spec, SurveySource source, List<Finding> findings)
    {
        Finding At(Finding finding, int line = 1) => finding with { File = source.File, Line = line };
        if (PlainText.Fault(source.Text) is { } unfit)
        {
            findings.Add(At(Finding.Error("PF2101", spec.Key, unfit, "Save the plan as SVG or as an ASCII DXF."), 1));
            return [];
        }

        try
        {
            var drawing = spec.Format == DrawingFormat.Svg ? SvgDrawingReader.Read(source.Text) : DxfDrawingReader.Read(source.Text);
            if (drawing.Skipped.Count > 0)
            {
                string list = string.Join(", ", drawing.Skipped.Select(s => Invariant($"{s.Value} {TableNumber.Shown(s.Key)}")));
                findings.Add(At(Finding.Note("PF2115", spec.Key, $"Not read from the drawing: {list}.")));
            }

            foreach (string remark in drawing.Remarks)
            {
                findings.Add(At(Finding.Note("PF2132", spec.Key, remark)));
            }

            var line = TrackLineChoice.Of(spec, drawing, (f, at) => findings.Add(At(f, at)));
            double? scale = DrawingScale.Of(spec, drawing, (f, at) => findings.Add(At(f, at)));
            return line is null || scale is not { } unit ? [] : Places(spec, source, line, unit, f => findings.Add(At(f, line.Line)));
        }
        catch (UnreadableDrawingException fault)
        {
            findings.Add(At(Finding.Error("PF2112", spec.Key, fault.Message, "Save the plan again as plain SVG or ASCII DXF."), Math.Max(1, fault.Line)));
            return [];
        }
    }

    private static IReadOnlyList<PlaceReading> Places(DrawingSpec spec, SurveySource source, DrawnPiece line, double scale, Action<Finding> fault)
    {
        Point2[] points = [.. line.Points.Select(p => p * scale)];
        double length = line.Length * scale;
        if (!(length > 0 && length <= SurveyTable.Longest))
        {
            string message = double.IsFinite(length)
                ? Invariant($"The line is {length:G4} mm long; at most {SurveyTable.Longest:0} mm is taken.") : "The line is too long to be reckoned with.";
            fault(Finding.Error("PF2114", spec.Key, message, "Check the scale of the drawing."));
            return [];
        }

        if (line.Straights && points.Length >= RunRule.FewestPlaces && SharpestTurn(points) <= PlacedTurn)
        {
            fault(Finding.Note("PF2125", spec.Key, Invariant($"The line is drawn with {points.Length} points; they are taken for places on a curve.")));
        }
        else
        {
            points = Spread(points, length);
        }

        return [.. points.Select((p, i) => new PlaceReading(source.File, i + 1, LengthUnit.Millimetre, p, source.Measured.FromCentre) { DrawnAt = line.Line })];
    }

    private static double SharpestTurn(Point2[] points)
    {
        double sharpest = 0;
        for (int i = 2; i < points.Length; i++)
        {
            Point2 a = points[i - 1] - points[i - 2], b = points[i] - points[i - 1];
            sharpest = Math.Max(sharpest, Math.Abs(Math.Atan2(Point2.Cross(a, b), Point2.Dot(a, b))));
        }

        return sharpest;
    }

    /// <summary>Points at even distances along a polyline.</summary>
    private static Point2[] Spread(Point2[] line, double length)
    {
        double farthest = Math.Min(length / Spacing, Math.Max(Fitting.PlaceFitter.MostSingle - 1, length / WidestSpacing));
        int steps = (int)Math.Clamp(Math.Ceiling(farthest), FewestPlaces, MostPlaces);
        var points = new Point2[steps + 1];
        int at = 1;
        double passed = 0, step = (line[1] - line[0]).Length;
        for (int i = 0; i <= steps; i++)
        {
            double want = length * i / steps;
            while (at < line.Length - 1 && passed + step < want)
            {
                passed += step;
                at++;
                step = (line[at] - line[at - 1]).Length;
            }

            points[i] = line[at - 1] + ((line[at] - line[at - 1]) * Math.Min(1, (want - passed) / step));
        }

        return points;
    }
}
