using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Track.Surveys.Results;
using static System.FormattableString;

namespace PlatformForge.Exports.Surveys;

/// <summary>
/// One sheet that tells how good a survey is: the line with its readings, their misses drawn out of scale; the misses along the
/// track beside how far the line may be off; the curvature with the elements it is made of.
/// </summary>
public static class SurveyDrawing
{
    private const double Width = 420, Height = 297; // A3
    private const double PlotLeft = 28, PlotWidth = 276, ColumnLeft = 322;
    private const double PlanTop = 30, PlanHeight = 84, MissTop = 124, MissHeight = 58, BendTop = 192, BendHeight = 46;

    // Share of the track's length by which the plots go on at either end, so that no reading's mark lies on the frame.
    private const double BeyondEnds = 0.015;

    /// <summary>Draws a survey.</summary>
    /// <param name="track">The survey.</param>
    /// <param name="origin">Up to three short lines on whose survey it is and what drew it.</param>
    public static Sheet Draw(SurveyedTrack track, params IReadOnlyList<string> origin)
    {
        var sheet = new Sheet(Width, Height, $"{track.Line.Name}: survey") { Description = Describe(track) };
        sheet.Text("The track as it was measured, and the line that fits it", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        var plan = new SurveyPlan(track, PlotLeft, PlanTop, PlotWidth, PlanHeight);
        sheet.Text(Invariant($"Readings are drawn {plan.Exaggeration} times as far from the line as they are. Chainage runs along the line from its first ")
            + "reading.",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        plan.DrawOn(sheet);
        double length = track.Line.Length, beyond = length * BeyondEnds;
        new MissPlot(track, new(PlotLeft, MissTop, PlotWidth, MissHeight, -beyond, length + beyond, -MissPlot.Range(track), MissPlot.Range(track)))
            .DrawOn(sheet);
        var (low, high) = BendPlot.Range(track);
        new BendPlot(track, new(PlotLeft, BendTop, PlotWidth, BendHeight, -beyond, length + beyond, low, high)).DrawOn(sheet);
        new SurveyColumn(track, ColumnLeft, PlanTop, Width - TitleBlock.Inset - ColumnLeft).DrawOn(sheet);
        TitleBlock.Draw(sheet, track.Line.Name, "Survey of the track", Invariant($"Plan about 1:{1 / plan.Scale:0.#} of the model; plots as figured"),
            Notes(track), origin);
        return sheet;
    }

    private static string[] Notes(SurveyedTrack track) =>
    [
        Invariant($"Ruler error {Figures.Fine(track.RulerError)} mm, taken as the most by which a careful reading is off."),
        "How far the line may be off is a bound that 19 surveys in 20 keep over their whole length.",
    ];

    private static string Describe(SurveyedTrack track)
    {
        string least = track.LeastRadius is { } r ? Invariant($"least radius {Figures.Mm(r.Radius)} mm at chainage {r.Chainage:0}") : "straight";
        return Invariant($"Survey of {track.Line.Name}: {track.Residuals.Count} readings, {track.Outliers.Count()} left out, {track.Elements.Count} ")
            + Invariant($"elements, {track.Line.Kinks.Count} kinks, {least}.");
    }
}
