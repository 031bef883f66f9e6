using PlatformForge.Exports.Drawings.Gaps;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using static System.FormattableString;

namespace PlatformForge.Exports.Surveys;

/// <summary>Misses of the readings along the track, between the ruler error and how far the line may be off.</summary>
internal sealed class MissPlot(SurveyedTrack track, PlotFrame frame)
{
    private const int MostReadings = 1200;

    // A wider band than this many ruler errors runs off the plot, lest it flatten the misses.
    private const double MostBand = 8;

    /// <summary>Half the height of the plot, mm of the model.</summary>
    public static double Range(SurveyedTrack track)
    {
        double most = track.Residuals.Where(r => !r.IsOutlier).Select(r => Math.Abs(r.Miss)).DefaultIfEmpty(0).Max();
        double band = track.Versines.Count > 0 ? 0 : Math.Min(track.Movement.Likely.Max(), MostBand * track.RulerError);
        return 1.3 * Math.Max(1.2 * track.RulerError, Math.Max(most, band));
    }

    public void DrawOn(Sheet sheet)
    {
        frame.Grid(sheet);
        if (track.Versines.Count == 0)
        {
            Band(sheet);
        }

        foreach (double error in new[] { track.RulerError, -track.RulerError })
        {
            sheet.Line(frame.Of(frame.LeastX, error), frame.Of(frame.MostX, error), HouseStyle.Hidden);
        }

        sheet.Line(frame.Of(frame.LeastX, 0), frame.Of(frame.MostX, 0), HouseStyle.Thin);
        var labels = new Labels(sheet);
        int every = Math.Max(1, track.Residuals.Count / MostReadings);
        for (int i = 0; i < track.Residuals.Count; i++)
        {
            var r = track.Residuals[i];
            var at = frame.Of(Math.Clamp(r.Chainage, frame.LeastX, frame.MostX), r.Miss);
            if (r.IsOutlier)
            {
                Cross(sheet, at);
                Put(labels, Words(r), at);
            }
            else if (track.IsInDoubt(r.Reading))
            {
                sheet.Circle(at, 0.9, new(HouseStyle.Ink));
                sheet.Circle(at, 2, null, new(0.4, HouseStyle.Accent));
                Put(labels, "in doubt", at);
            }
            else if (i % every == 0)
            {
                sheet.Circle(at, 0.9, new(HouseStyle.Ink));
            }
        }

        frame.LeftAxis(sheet, track.Versines.Count > 0 ? "miss of the versine, mm" : "miss, mm, left up");
        frame.Chainages(sheet, words: false);
    }

    private static void Put(Labels labels, string words, Point2 at)
    {
        Point2[] beside = [new(3, 3.4), new(-3, 3.4), new(3, -2), new(-3, -2)];
        labels.PutOver(words, HouseStyle.AccentLabel, new(HouseStyle.Paper, 0.85),
            beside.Select(p => (at + p, p.X > 0 ? TextAnchor.Start : TextAnchor.End, 0.0)));
    }

    private void Band(Sheet sheet)
    {
        var m = track.Movement;
        Point2[] upper = [.. m.Chainages.Select((s, k) => frame.Of(s, m.Likely[k]))], lower = [.. m.Chainages.Select((s, k) => frame.Of(s, -m.Likely[k]))];
        sheet.Area(upper.Concat(lower.Reverse()), new(HouseStyle.Swept, 0.14));
        sheet.Lines(upper, new(0.35, HouseStyle.Swept));
        sheet.Lines(lower, new(0.35, HouseStyle.Swept));
    }

    private static string Words(ReadingResidual r)
    {
        double unit = r.Reading.Unit.Millimetres();
        return r.Fitting is { } fits
            ? Invariant($"{r.Reading.Whereabouts}: {fits / unit:0.0#} {r.Reading.Unit.Sign()} would fit")
            : Invariant($"{r.Reading.Whereabouts}: {Figures.Mm(Math.Abs(r.Miss))} mm off");
    }

    private static void Cross(Sheet sheet, Point2 at)
    {
        var pen = new Pen(0.5, HouseStyle.Accent);
        sheet.Line(at + new Point2(-1.3, -1.3), at + new Point2(1.3, 1.3), pen);
        sheet.Line(at + new Point2(-1.3, 1.3), at + new Point2(1.3, -1.3), pen);
    }
}
