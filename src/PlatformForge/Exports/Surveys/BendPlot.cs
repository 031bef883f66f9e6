using PlatformForge.Exports.Drawings.Gaps;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Track.Surveys.Results;
using static System.FormattableString;

namespace PlatformForge.Exports.Surveys;

/// <summary>Curvature along the track, elements below it.</summary>
internal sealed class BendPlot(SurveyedTrack track, PlotFrame frame)
{
    private const double PerMetre = 1000;

    /// <summary>Least and most curvature shown, 1/m.</summary>
    public static (double Low, double High) Range(SurveyedTrack track)
    {
        double low = Math.Min(0, track.Elements.Min(e => Math.Min(e.StartCurvature, e.EndCurvature))) * PerMetre;
        double high = Math.Max(0, track.Elements.Max(e => Math.Max(e.StartCurvature, e.EndCurvature))) * PerMetre;
        double room = 0.18 * Math.Max(0.2, high - low);
        return (low - room, high + room);
    }

    public void DrawOn(Sheet sheet)
    {
        frame.Grid(sheet);
        sheet.Line(frame.Of(frame.LeastX, 0), frame.Of(frame.MostX, 0), HouseStyle.Thin);
        sheet.Lines(track.Elements.SelectMany(e => new[] { frame.Of(e.From, e.StartCurvature * PerMetre), frame.Of(e.To, e.EndCurvature * PerMetre) }),
            new(0.7, HouseStyle.Swept));
        foreach (var kink in track.Line.Kinks)
        {
            double x = frame.X(kink.Chainage);
            sheet.Line(new(x, frame.Top), new(x, frame.Bottom), HouseStyle.Cut);
            sheet.Text(Invariant($"kink {Math.Abs(kink.Turn) * 180 / Math.PI:0.0}°"), new(x + 1.2, frame.Top + 3.6), HouseStyle.AccentLabel);
        }

        frame.LeftAxis(sheet, "curvature, 1/m");
        frame.Chainages(sheet, words: true);
        sheet.Text("chainage, mm", new(frame.Right, frame.Bottom + 7.6), HouseStyle.Label, TextAnchor.End);
        Strip(sheet, frame.Bottom + 10);
    }

    private void Strip(Sheet sheet, double top)
    {
        const double Depth = 5;
        for (int i = 0; i < track.Elements.Count; i++)
        {
            var e = track.Elements[i];
            double x = frame.X(e.From), width = frame.X(e.To) - x;
            sheet.Box(x, top, width, Depth, new(i % 2 == 0 ? HouseStyle.Deck : HouseStyle.White), HouseStyle.Thin);
            string words = SurveyPlan.Name(e);
            if (TextStyle.Length(words, HouseStyle.Small) < width - 2)
            {
                sheet.Text(words, new(x + (width / 2), top + 3.3), HouseStyle.Small with { Colour = HouseStyle.Ink }, TextAnchor.Middle);
            }
        }
    }
}
